"""A vessel's file, as far as the rule needs it."""

from datetime import date, timedelta

from lengths import length

CONDITIONS = ("serviceable", "broken", "unknown")

FIXED = {
    "mark", "kind", "name", "count", "broken", "condition", "where", "stowed",
    "acquired", "inspected", "expires", "conforms", "parts", "fits", "changes",
    "evidence", "remark",
}


def day(text):
    return date.fromisoformat(text) if text else None


def as_list(value):
    return value if isinstance(value, list) else [value]


class Tool:
    """One line of the kit."""

    def __init__(self, entry, document, declared, words):
        self.kind = words.kind(entry["kind"])
        self.mark = entry.get("mark")
        if self.mark is None and not document:
            raise ValueError("no mark")
        self.document = document
        self.count = int(entry.get("count", 1))
        default = "serviceable" if document else declared.get("condition", "unknown")
        self.condition = entry.get("condition", default)
        if self.condition not in CONDITIONS:
            raise ValueError("no such condition")
        self.place = entry.get("where", "aboard")
        entry = dict(entry)
        if document and entry.get("state") == "lost":
            self.place = "lost"
            del entry["state"]
        self.acquired = day(entry.get("acquired"))
        self.expires = day(entry.get("expires"))
        self.conforms = [(s["to"], day(s["on"])) for s in entry.get("conforms", [])]
        self.fits = entry.get("fits", [])
        self.parts = entry.get("parts", [])
        self.readings = {}
        for key, value in entry.items():
            if key in FIXED:
                continue
            words.check(self.kind, key)
            self.readings[key] = [self.reading(one, declared) for one in as_list(value)]
            words.read(key, self.readings[key])
        for change in entry.get("changes", []):
            self.retire(change, words)

    @staticmethod
    def reading(value, declared):
        if isinstance(value, dict):
            own = day(value.get("on"))
            if own is None and value.get("by", declared.get("by")) == declared.get("by"):
                own = day(declared.get("on"))
            return (value["value"], own)
        return (value, day(declared.get("on")))

    def retire(self, change, words):
        """A change makes worthless what was measured up to its day."""
        on, retired = day(change["on"]), words.retired(change["what"])
        for key in list(self.readings):
            if retired is None or key in retired:
                kept = [r for r in self.readings[key] if r[1] is not None and r[1] > on]
                self.readings[key] = kept
        if retired is None:
            self.conforms = [(to, made) for to, made in self.conforms if made > on]


class Vessel:
    """What the rule asks of a vessel."""


def freeboards(value):
    """By station, the rival readings, each from low to high, with its error."""
    if value is None:
        return None
    if isinstance(value, dict) and "stations" in value:
        return [readings(station["freeboard"]) for station in value["stations"]]
    return [readings(value)]


def readings(value):
    found = []
    for one in as_list(value):
        error = None
        if isinstance(one, dict):
            error = length(one["error"]) if "error" in one else None
            one = one["value"]
        if one.strip() in ("", "unknown"):
            continue
        low, _, high = one.partition(" to ")
        low = length(low)
        found.append((low, length(high) if high else low, error))
    return found


def read_vessel(data, words):
    vessel = Vessel()
    declared = data.get("declared", {})
    vessel.permits, vessel.gear = data.get("permits"), data.get("gear")
    vessel.features = {k: v == "yes" for k, v in data.get("features", {}).items()}
    freeboard = data.get("freeboard")
    vessel.from_deck = isinstance(freeboard, str) and freeboard.endswith("from the working deck")
    vessel.stations = None if vessel.from_deck else freeboards(freeboard)
    if vessel.stations is not None and not all(vessel.stations):
        vessel.stations = None
    vessel.whole = data.get("covers", "whole kit") == "whole kit"
    trip = data["trip"]
    vessel.departure, vessel.back = day(trip["depart"]), day(trip["return"])
    tools = [Tool(entry, False, declared, words) for entry in data["kit"]]
    tools += [Tool(entry, True, declared, words) for entry in data.get("documents", [])]
    vessel.kit = tools
    vessel.hooks = [
        max(length(v) for v in as_list(hook["wire"])) if "wire" in hook else None
        for hook in data["hooks"]
    ] if "hooks" in data else None
    return vessel
