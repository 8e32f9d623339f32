"""The cheapest order under the Gulf reef fish rule, worked out once more.

Reads the same vessels and catalogues as `kitmuster quote --profile
us-gulf-reef-fish-2019` by itself, finds which item serves which requirement
with the checker beside this file, writes the order down as an integer program
of its own and solves it with HiGHS (through SciPy). Sums are whole cents and
lengths exact fractions; only the solver uses floating point, and what it
finds is reckoned again.

    cheapest.py REQUIREMENTS ORDERED CASE...     one line of JSON a case

A case is a folder with `vessels/*.yaml` and `suppliers/*.yaml`.

As many vessels as possible are made ready, then as many findings met, then
the least is paid. It knows packs, least orders, stock, delivery, free
delivery, tax, time of delivery, how long prices hold, sets, spares, pieces
that lengthen a tool and repairs. It looks at the highest freeboard of a
vessel alone, where this rule asks the most; a vessel whose freeboard nobody
knows, inspection records and recommendations are not for it.
"""

import copy
import json
import sys
import time
from calendar import monthrange
from datetime import date, timedelta
from fractions import Fraction
from pathlib import Path

from audit import load
from judge import Gulf, Scene
from lengths import length
from program import Program
from vessel import Tool, read_vessel

FREE = {"number", "description", "tool", "tools", "lengthens", "service", "price", "pack",
        "least order", "stock", "lead", "price holds until"}
OF_GOODS = {"name", "conforms", "inspected", "lasts", "fits"}


def cents(text):
    whole, _, part = text.partition(".")
    return int(whole) * 100 + int(part.ljust(2, "0"))


def days(text):
    return int(text.split()[0]) if text else 0


def good_through(start, text):
    """The last day of so many days, months or years from a day on."""
    count, unit = text.split()
    if unit.startswith("day"):
        return start + timedelta(days=int(count) - 1)
    months = int(count) * (12 if unit.startswith("year") else 1)
    years, month = divmod(start.year * 12 + start.month - 1 + months, 12)
    last = monthrange(years, month + 1)[1]
    return date(years, month + 1, min(start.day, last)) - timedelta(days=1)


class Item:
    """An item of a catalogue."""

    def __init__(self, supplier, entry, data, ordered, words):
        assert not set(entry) - FREE, entry
        self.supplier, self.number, self.words = supplier, entry["number"], words
        self.price, self.pack = cents(entry["price"]), int(entry.get("pack", 1))
        self.least = int(entry.get("least order", 1))
        self.stock = int(entry["stock"]) if "stock" in entry else None
        self.arrives = ordered + timedelta(days=days(entry.get("lead", data.get("lead"))))
        holds = entry.get("price holds until", data.get("prices hold until"))
        self.sold = (holds is None or date.fromisoformat(holds) >= ordered) and (
            self.stock is None or self.stock >= self.least)
        tools = entry.get("tools") or ([entry["tool"]] if "tool" in entry else [])
        self.tools = [self.tool(one, ordered) for one in tools]
        more, work = entry.get("lengthens"), entry.get("service")
        self.longer = more and (
            {words.kind(k) for k in more["kinds"]}, length(more["by"]), int(more.get("per tool", 1)))
        self.mends = {words.kind(k) for k in work["kinds"]} if work and (
            {"repair", "sharpening"} & set(work["does"])) else set()

    def tool(self, entry, ordered):
        document = self.words.classes[self.words.kind(entry["kind"])] == "document"
        plain = {k: v for k, v in entry.items() if k not in OF_GOODS}
        tool = Tool(plain | {"mark": self.number}, document, {"condition": "serviceable"}, self.words)
        tool.acquired = self.arrives
        tool.conforms = [(clause, min(ordered, self.arrives)) for clause in entry.get("conforms", [])]
        if "lasts" in entry:
            tool.expires = good_through(self.arrives, entry["lasts"])
        tool.fits = entry.get("fits", [])
        return tool


class Supplier:
    """A catalogue."""

    def __init__(self, path, ordered, words):
        data = load(path)
        delivery = data.get("delivery", "0")
        if not isinstance(delivery, dict):
            delivery = {"charge": delivery}
        self.name = data["supplier"]
        self.charge = cents(delivery["charge"])
        self.free_from = cents(delivery["free from"]) if "free from" in delivery else None
        self.tax = Fraction(data.get("tax", "0%").removesuffix("%")) / 100
        self.items = [Item(self, entry, data, ordered, words) for entry in data["items"]]

    def costs(self, goods):
        if goods == 0:
            return 0
        free = self.free_from is not None and goods >= self.free_from
        sum_ = goods + (0 if free else self.charge)
        return sum_ + int(self.tax * sum_ + Fraction(1, 2))


class Source:
    """Where a tool that could serve comes from: as many as `there`, plus so
    many for each one of the columns."""

    def __init__(self, tool, there=0, columns=(), own=None, item=None):
        self.tool, self.there, self.columns, self.own, self.item = tool, there, columns, own, item


class Order:
    """All vessels and suppliers as one program."""

    def __init__(self, gulf, vessels, suppliers):
        self.gulf, self.vessels, self.suppliers = gulf, vessels, suppliers
        self.items = [item for supplier in suppliers for item in supplier.items if item.sold]
        self.program = Program()
        self.pieces = {item: [] for item in self.items}
        self.met, self.ready = [], []
        self.top = max(vessel.departure for vessel in vessels)
        for number, vessel in enumerate(vessels):
            self.vessel(number, vessel)
        self.packs = {}
        self.cost = [term for supplier in suppliers for term in self.supplier(supplier)]

    # What one vessel can have.

    def vessel(self, number, vessel):
        sources = self.own(vessel) + self.bought(vessel)
        ready = self.program.whole(1)
        met = {}
        for day in self.days(vessel, sources):
            self.scene(vessel, day, sources, met)
        for finding, column in met.items():
            self.program.row([(ready, 1), (column, -1)], most=0)
            self.met.append(((number, finding), column))
        self.ready.append(ready)

    def own(self, vessel):
        """The tools aboard, and each of them mended or lengthened."""
        sources = []
        for index, tool in enumerate(vessel.kit):
            changed = []
            for works, new in self.changes(vessel, tool):
                column = self.program.whole(tool.count)
                for item, count in works:
                    self.pieces[item].append((column, count))
                changed.append(Source(new, 0, [(column, 1)], index))
            less = [(c, -n) for source in changed for c, n in source.columns]
            if less:
                # No more are changed than there are.
                self.program.row([(c, -n) for c, n in less], most=tool.count)
            sources += [Source(tool, tool.count, less, index), *changed]
        return sources

    def changes(self, vessel, tool):
        if tool.place != "aboard" or tool.document:
            return
        here = [i for i in self.items if i.arrives <= vessel.departure]
        mends = [None] + [i for i in here if tool.kind in i.mends and tool.condition != "serviceable"]
        keys = [k for k in self.gulf.words.retired("lengthened") if tool.readings.get(k)]
        longer = [None] + [
            (i, n) for i in here if i.longer and tool.kind in i.longer[0] and keys
            for n in range(1, i.longer[2] + 1)]
        for mend in mends:
            for more in longer:
                works, new = [], copy.deepcopy(tool)
                if mend:
                    works.append((mend, 1))
                    new.condition = "serviceable"
                if more:
                    works.append(more)
                    for key in keys:
                        new.readings[key] = [
                            (v + more[1] * more[0].longer[1], on) for v, on in new.readings[key]]
                if works:
                    yield works, new

    def bought(self, vessel):
        sources = []
        for item in self.items:
            if not item.tools or item.arrives > vessel.departure:
                continue
            column = self.program.whole(40)
            self.pieces[item].append((column, 1))
            sources += [Source(tool, 0, [(column, tool.count)], None, item) for tool in item.tools]
        return sources

    def days(self, vessel, sources):
        """Every day on which something can have changed."""
        bare = copy.copy(vessel)
        bare.kit = [source.tool for source in sources]
        return self.gulf.days(bare)

    # One day.

    def scene(self, vessel, day, sources, met):
        tops = [max(high, high + (error or 0)) for station in vessel.stations
                for _, high, error in station]
        scene = Scene(vessel, max(tops), day, self.gulf.source, self.gulf.words)
        asked = [(r, scene.holds(r.when)) for r in self.gulf.requirements if r.required]
        serving = {}
        for requirement, binds in asked:
            if binds is not False:
                self.requirement(scene, requirement, sources, serving, met)
        self.leaning(scene, [r for r, b in asked if b is not False], sources, serving, met)
        used = {}
        for uses in serving.values():
            for source, column in uses[1]:
                used.setdefault(source, []).append((column, 1))
        for source, sum_ in used.items():
            tool = sources[source]
            self.program.row(sum_ + [(c, -n) for c, n in tool.columns], most=tool.there)
        parts = {}
        for source, sum_ in used.items():
            for part in sources[source].tool.parts:
                parts.setdefault(part, []).extend(sum_)
        for sum_ in parts.values():
            self.program.row(sum_, most=1)

    def requirement(self, scene, requirement, sources, serving, met):
        """Types, members and the tools in their places."""
        if requirement.id not in met:
            met[requirement.id] = self.program.whole(1)
        own, uses = self.program.whole(1), []
        types = [self.program.whole(1) for _ in requirement.types]
        self.program.row([(t, 1) for t in types] + [(own, -requirement.least)], least=0)
        for on, (of_type, members) in zip(types, requirement.types):
            for count, specs in members:
                sum_ = [(on, -count)]
                for index, source in enumerate(sources):
                    if any(s.kind == source.tool.kind
                           and scene.fits(source.tool, s, of_type, requirement) is True
                           for s in specs):
                        column = self.program.whole(count)
                        sum_.append((column, 1))
                        uses.append((index, column))
                self.program.row(sum_, least=0, most=0)
        serving[requirement.id] = (own, uses)

    def leaning(self, scene, asked, sources, serving, met):
        """Tools that count for another requirement, and spares."""
        lends = {r.id for r in asked if scene.holds(r.when) is True}
        for requirement in asked:
            own, uses = serving[requirement.id]
            ways = [(own, 1)]
            for other, tests in requirement.deemed:
                if other not in lends:
                    continue
                through = self.program.whole(1)
                good = [(column, -1) for index, column in serving[other][1]
                        if scene.group(tests, sources[index].tool, []) is True]
                self.program.row([(through, 1), *good], most=0)
                ways.append((through, 1))
            self.program.row([*ways, (met[requirement.id], -1)], least=0)
            if requirement.spare_for:
                served = serving.get(requirement.spare_for, (None, []))[1]
                for index, column in uses:
                    fitting = [(c, -1) for i, c in served
                               if self.fits(sources[index], sources[i])]
                    self.program.row([(column, 1), *fitting], most=0)

    def fits(self, spare, other):
        if spare.item is None:
            return other.own is not None and other.tool.mark in spare.tool.fits
        for name in spare.tool.fits:
            numbers = {item.number for item in spare.item.supplier.items}
            if name in numbers:
                if other.item and other.item.supplier is spare.item.supplier and other.item.number == name:
                    return True
            elif other.tool.kind == self.gulf.words.kind(name):
                return True
        return False

    # What the suppliers ask.

    def supplier(self, supplier):
        """The terms of the cost, in cents."""
        program, goods = self.program, []
        any_, free = program.whole(1), program.whole(1)
        for item in supplier.items:
            if not item.sold or item.mends and not self.pieces[item]:
                continue
            if item.arrives > self.top or not (item.tools or self.pieces[item]):
                continue
            most = max(item.least, -(-40 * len(self.pieces[item]) // item.pack))
            if supplier.free_from is not None:
                most = max(most, -(-supplier.free_from // item.price))
            if item.stock is not None:
                most = min(most, item.stock)
            packs = self.packs[item] = program.whole(most)
            program.row([*self.pieces[item], (packs, -item.pack)], most=0)
            if item.least > 1:
                taken = program.whole(1)
                program.row([(packs, 1), (taken, -item.least)], least=0)
                program.row([(packs, 1), (taken, -most)], most=0)
            program.row([(packs, 1), (any_, -most)], most=0)
            goods.append((packs, item.price))
        if not goods:
            return []
        # The charge is paid with anything bought, unless it is free.
        charged = program.whole(1)
        program.row([(charged, 1), (any_, -1), (free, 1)], least=0)
        if supplier.free_from is None:
            program.row([(free, 1)], most=0)
        else:
            program.row([*goods, (free, -supplier.free_from)], least=0)
        cost = [*goods, (charged, supplier.charge)]
        if supplier.tax:
            # Half a cent is rounded up. In whole numbers throughout.
            tax = program.whole(10**9)
            over, under = supplier.tax.numerator, supplier.tax.denominator
            row = [(tax, 2 * under)] + [(c, -2 * over * amount) for c, amount in cost]
            program.row(row, least=-under + 1)
            cost = [*cost, (tax, 1)]
        return cost

    def cheapest(self):
        program, many = self.program, len(self.met) + 1
        aim = [(column, -many) for column in self.ready] + [(column, -1) for _, column in self.met]
        best = program.least(aim)
        program.row([(c, -n) for c, n in aim], least=round(-best.value))
        found = program.least(self.cost)
        orders, total = {}, 0
        for supplier in self.suppliers:
            lines = {i.number: found[self.packs[i]] for i in supplier.items
                     if i in self.packs and found[self.packs[i]]}
            for item in supplier.items:
                if item.number in lines:
                    assert lines[item.number] >= item.least
                    used = sum(found[c] * n for c, n in self.pieces[item])
                    assert used <= lines[item.number] * item.pack
            goods = sum(i.price * lines.get(i.number, 0) for i in supplier.items)
            total += supplier.costs(goods)
            if lines:
                orders[supplier.name] = lines
        assert abs(total - found.value) < 0.01, (total, found.value)
        return {
            "total": total, "proved": best.proved and found.proved, "orders": orders,
            "ready": sum(found[c] for c in self.ready),
            "open": sorted(f"{v} {f}" for (v, f), c in self.met if not found[c]),
            "columns": len(program.most), "rows": len(program.rows),
        }


def main(arguments):
    requirements, ordered, cases = arguments[0], date.fromisoformat(arguments[1]), arguments[2:]
    gulf = Gulf(load, Path(requirements))
    for case in map(Path, cases):
        begun = time.monotonic()
        suppliers = [Supplier(p, ordered, gulf.words) for p in sorted((case / "suppliers").glob("*.yaml"))]
        files = sorted((case / "vessels").glob("*.yaml"))
        vessels = [read_vessel(load(path), gulf.words) for path in files]
        said = Order(gulf, vessels, suppliers).cheapest()
        said |= {"case": str(case), "seconds": round(time.monotonic() - begun, 3)}
        print(json.dumps(said), flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
