"""An integer program by rows and columns, solved by HiGHS through SciPy."""

import math

import numpy
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csr_array


class Found:
    """Whole values of the columns, and the objective."""

    def __init__(self, result):
        self.values = [round(value) for value in result.x]
        self.value, self.proved = result.fun, result.status == 0

    def __getitem__(self, column):
        return self.values[column]


class Program:
    """Columns of whole numbers from zero to their most, and rows."""

    def __init__(self):
        self.most, self.rows = [], []

    def whole(self, most):
        self.most.append(most)
        return len(self.most) - 1

    def row(self, terms, least=-math.inf, most=math.inf):
        self.rows.append((terms, least, most))

    def least(self, objective, seconds=300):
        data, row, column = [], [], []
        for at, (terms, _, _) in enumerate(self.rows):
            for which, factor in terms:
                data.append(float(factor))
                row.append(at)
                column.append(which)
        shape = (len(self.rows), len(self.most))
        matrix = csr_array((data, (row, column)), shape=shape)
        costs = numpy.zeros(len(self.most))
        for which, factor in objective:
            costs[which] += factor
        result = milp(
            costs, integrality=numpy.ones(len(self.most)),
            bounds=Bounds(0, numpy.array(self.most, dtype=float)),
            constraints=LinearConstraint(
                matrix, [r[1] for r in self.rows], [r[2] for r in self.rows]),
            options={"mip_rel_gap": 0.0, "time_limit": seconds})
        if result.x is None:
            raise RuntimeError(f"no solution: {result.message}")
        return Found(result)
