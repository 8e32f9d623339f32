"""One vessel under the Gulf rule: *ready*, *not-ready* or *cannot-tell*.

An answer is True, False or None (nobody can tell).
"""

from datetime import timedelta
from fractions import Fraction
from itertools import combinations, product

from profile import requirements
from words import Words

ORDER = ["ready", "cannot-tell", "not-ready"]


def every(answers):
    answers = list(answers)
    if False in answers:
        return False
    return None if None in answers else True


def some(answers):
    answers = list(answers)
    if True in answers:
        return True
    return None if None in answers else False


def agreed(answers):
    answers = set(answers)
    return answers.pop() if len(answers) == 1 else None


def plain(clause):
    return "".join(clause.split()).replace(",", "").lower()


class Scene:
    """A vessel on one day at one freeboard (None: not known)."""

    def __init__(self, vessel, freeboard, day, source, words):
        self.vessel, self.freeboard, self.day = vessel, freeboard, day
        self.source, self.words = source, words

    def holds(self, conditions):
        return every(self.one(key, value) for key, value in conditions)

    def one(self, key, value):
        if key == "freeboard":
            if self.freeboard is None:
                return None
            return self.freeboard > Fraction("1219.2") if value.startswith("more than 4 ft") else 1 / 0
        has = self.vessel.features.get(key)
        return None if has is None else has == (value == "yes")

    def amount(self, bound):
        """What a bound comes to, as (known limbs, whether all are known)."""
        if bound[0] == "fixed":
            return [bound[1]], True
        if bound[0] == "share":
            if self.freeboard is None:
                return [], False
            return [self.freeboard * bound[1] / 100], True
        if bound[0] == "hook":
            hooks = self.vessel.hooks
            if hooks is None or None in hooks or not self.vessel.whole:
                return [], False
            return [max(hooks, default=Fraction(0))], True
        limbs = [self.amount(limb) for limb in bound[1]]
        return [a for known, _ in limbs for a in known], all(whole for _, whole in limbs)

    def at_least(self, bound, value):
        known, whole = self.amount(bound)
        if any(value < limb for limb in known):
            return False
        return True if whole else None

    def keeps(self, limit, value):
        if limit[0] == "at least":
            return self.at_least(limit[1], value)
        if limit[0] == "at most":
            return value <= limit[1][1]
        if limit[0] == "exactly":
            return value == limit[1][1]
        if limit[0] == "within":
            return limit[1][1] <= value <= limit[2][1]
        _, low, high, margin = limit
        return True if low - margin <= value <= high + margin else None

    def test(self, test, tool, clauses):
        if test[0] == "any of":
            return some(self.group(g, tool, clauses) for g in test[1])
        if test[0] == "read as":
            return agreed([self.group(g, tool, clauses) for g in test[1]])
        sort, attribute, wanted = test
        readings = [value for value, _ in tool.readings.get(attribute, [])]
        if sort == "feature":
            answers = [value == wanted for value in readings]
        elif sort == "words":
            answers = [self.word(attribute, value, wanted) for value in readings]
        else:
            answers = [self.keeps(wanted, value) for value in readings]
        answer = agreed(answers)
        open_words = sort != "limit" and False not in answers
        if answer is None and (not answers or open_words) and self.vouched(attribute, tool, clauses):
            return True
        return answer

    def word(self, attribute, value, wanted):
        if value in wanted:
            return True
        return None if self.words.may_be(attribute, value) & wanted else False

    def vouched(self, attribute, tool, clauses):
        if self.words.is_shown(attribute):
            return False
        names = {plain(c) for c in clauses if c} | {plain(self.source + c) for c in clauses if c}
        return any(plain(to) in names and on <= self.day for to, on in tool.conforms)

    def group(self, tests, tool, clauses):
        return every(self.test(test, tool, clauses) for test in tests)

    def at_hand(self, tool):
        here = {"aboard": True, "ashore": False, "lost": False, "unknown": None}
        if isinstance(tool.place, dict):
            first, last = tool.place.get("from"), tool.place.get("until")
            away = (not first or first <= self.day.isoformat()) and (
                not last or self.day.isoformat() <= last)
            aboard = not away
        else:
            aboard = here[tool.place]
        if tool.acquired and self.day < tool.acquired and aboard is True:
            aboard = False
        works = {"serviceable": True, "broken": False, "unknown": None}[tool.condition]
        dated = tool.expires is None or self.day <= tool.expires
        document = self.words.classes[tool.kind] == "document"
        return every([aboard, True if document else works, dated])

    def fits(self, tool, spec, of_type, requirement):
        clauses = [spec.clause, of_type, requirement.clause]
        return every([
            self.at_hand(tool), self.group(spec.tests, tool, clauses), self.holds(spec.when)])


class Gulf:
    """The rule, read once."""

    def __init__(self, load, folder):
        self.words = Words(load(folder / "vocabulary.yaml"))
        profile, self.requirements = requirements(load, folder, self.words)
        self.source, self.permits = profile["source"], set(profile["binds"]["permits"])
        self.begins = profile["in force"]["from"]

    def verdict(self, vessel):
        """Over all days and all stations, the worst."""
        if not self.permits & set(vessel.permits or []):
            return "not-bound"
        if vessel.departure.isoformat() < self.begins:
            return "not-bound"
        verdicts = [self.on(vessel, day) for day in self.days(vessel)]
        return max(verdicts, key=ORDER.index)

    def days(self, vessel):
        days = {vessel.departure}
        for tool in vessel.kit:
            if tool.expires:
                days.add(tool.expires + timedelta(days=1))
            days.add(tool.acquired)
            days.update(on for _, on in tool.conforms)
            if isinstance(tool.place, dict):
                from vessel import day
                days.add(day(tool.place.get("from")))
                last = day(tool.place.get("until"))
                days.add(last and last + timedelta(days=1))
        return sorted(d for d in days if d and vessel.departure <= d <= vessel.back)

    def on(self, vessel, day):
        if vessel.stations is None:
            return self.at(vessel, None, day)
        worst = []
        for readings in vessel.stations:
            answers = set()
            for low, high, error in readings:
                # More is asked the higher the rail, so the top is the worst.
                tops = [high] if error is None else [high, high - error, high + error]
                answers.update(self.at(vessel, max(top, Fraction(0)), day) for top in tops)
            worst.append(answers.pop() if len(answers) == 1 else "cannot-tell")
        return max(worst, key=ORDER.index)

    def at(self, vessel, freeboard, day):
        scene = Scene(vessel, freeboard, day, self.source, self.words)
        binding = [(r, scene.holds(r.when)) for r in self.requirements if r.required]
        if not self.possible(scene, [r for r, b in binding if b is True], binding, True):
            return "not-ready"
        asked = [r for r, b in binding if b is not False]
        return "ready" if self.possible(scene, asked, binding, False) else "cannot-tell"

    def possible(self, scene, asked, binding, kindly):
        """Whether all that is asked can be met together; what is open counts
        as yes (kindly) or as no."""
        lends = {r.id for r, b in binding if b is True or (kindly and b is None)}
        ways = []
        for requirement in asked:
            own = list(self.ways(scene, requirement, lends, kindly))
            if not own:
                return False
            ways.append(own)
        return self.together(scene, asked, ways, 0, {}, set(), set(), kindly)

    def ways(self, scene, requirement, lends, kindly):
        """Each way to meet a requirement: `("through", other)`, or its tools."""
        for other, tests in requirement.deemed:
            if other in lends:
                good = {
                    i for i, tool in enumerate(scene.vessel.kit)
                    if scene.group(tests, tool, []) is True
                    or kindly and scene.group(tests, tool, []) is None}
                yield ("through", other, good)
        for chosen in combinations(requirement.types, requirement.least):
            members = [(clause, m) for clause, members in chosen for m in members]
            options = [self.options(scene, requirement, c, m, kindly) for c, m in members]
            for tools in product(*options):
                flat = [t for group in tools for t in group]
                yield ("own", flat)

    def options(self, scene, requirement, of_type, member, kindly):
        count, specs = member
        good = []
        for index, tool in enumerate(scene.vessel.kit):
            answers = [scene.fits(tool, s, of_type, requirement) for s in specs if s.kind == tool.kind]
            if True in answers or kindly and None in answers:
                good += [index] * min(tool.count, count)
        found = [list(c) for c in dict.fromkeys(combinations(good, count))]
        if kindly and not scene.vessel.whole:
            found.append([None] * count)
        return found

    def together(self, scene, asked, ways, at, taken, used, parts, kindly):
        """Backtracking: no tool twice, no part twice."""
        if at == len(asked):
            return True
        for way in ways[at]:
            if way[0] == "through":
                lent = taken.get(way[1])
                if lent is None or not all(t is None or t in way[2] for t in lent):
                    continue
                if self.together(scene, asked, ways, at + 1, taken, used, parts, kindly):
                    return True
                continue
            more = self.take(scene, asked[at], way[1], taken, used, parts, kindly)
            if more is None:
                continue
            taken[asked[at].id] = way[1]
            if self.together(scene, asked, ways, at + 1, taken, *more, kindly):
                return True
            del taken[asked[at].id]
        return False

    def take(self, scene, requirement, tools, taken, used, parts, kindly):
        used, parts = set(used), set(parts)
        for index in tools:
            if index is None:
                continue
            tool = scene.vessel.kit[index]
            free = tool.count - sum(1 for u in used if u[0] == index)
            if free <= 0 or parts & set(tool.parts):
                return None
            if requirement.spare_for and not self.spare(scene, requirement, tool, taken, kindly):
                return None
            used.add((index, free))
            parts |= set(tool.parts)
        return used, parts

    @staticmethod
    def spare(scene, requirement, spare, taken, kindly):
        """Whether a spare fits a tool that serves what it is for."""
        served = taken.get(requirement.spare_for)
        if served is None:
            return False
        marks = {tool.mark for tool in scene.vessel.kit}
        if not spare.fits or not set(spare.fits) <= marks:
            return kindly
        in_use = {scene.vessel.kit[t].mark for t in served if t is not None}
        return None in served or bool(in_use & set(spare.fits))
