"""The profile's phrases, read into plain tuples."""

import re

from lengths import quantity

BRACKET = re.compile(r"\s*\([^)]*\)")


def bound(text):
    text = text.strip()
    if text.startswith("the greater of "):
        return ("greater", [bound(limb) for limb in text[15:].split(" and ")])
    if text.startswith("the heaviest hook"):
        return ("hook",)
    share = re.fullmatch(r"(\d+)% of freeboard", text)
    if share:
        return ("share", int(share.group(1)))
    return ("fixed", quantity(text))


def limit(text):
    text = BRACKET.sub("", text).strip()
    for word in ("at least", "at most", "exactly"):
        if text.startswith(word + " "):
            return (word, bound(text[len(word):]))
    if text.startswith("from "):
        low, high = text[5:].split(" to ")
        return ("within", bound(low), bound(high))
    about = re.fullmatch(r"about (.+?)(?: to (.+))?, within (.+)", text)
    if about:
        low, high, margin = about.groups()
        return ("about", quantity(low), quantity(high or low), quantity(margin))
    raise ValueError(f"no limit: {text}")


def tests(group, words):
    """The lines under `with:`."""
    out = []
    for key, value in (group or {}).items():
        if key == "any of":
            out.append(("any of", [tests(g, words) for g in value]))
        elif key == "read as":
            out.append(("read as", [tests(g, words) for g in value]))
        elif words.shape(key) == "feature":
            out.append(("feature", key, value == "yes"))
        elif words.shape(key) in ("choice", "name"):
            out.append(("words", key, {w.lower() for w in value.split(" or ")}))
        else:
            out.append(("limit", key, limit(value)))
    return out


def conditions(group):
    return list((group or {}).items())


def carried(text):
    """`1 pliers` as number and kind; `1` alone has no kind."""
    count, _, kind = text.partition(" ")
    return int(count), kind


class Spec:
    def __init__(self, kind, entry, words):
        self.kind = words.kind(kind)
        self.clause = entry.get("clause")
        self.when = conditions(entry.get("when"))
        self.tests = tests(entry.get("with"), words)


def member(entry, words):
    """A number of tools and the specs of which each will do."""
    count, kind = carried(entry["carry"])
    if kind:
        return count, [Spec(kind, {"with": entry.get("with")}, words)]
    return count, [Spec(choice["kind"], choice, words) for choice in entry["one of"]]


class Requirement:
    def __init__(self, entry, words):
        self.id, self.clause = entry["id"], entry["clause"]
        self.required = entry.get("level", "required") == "required"
        self.when = conditions(entry.get("when"))
        self.spare_for = entry.get("spare for")
        self.deemed = []
        met_by = entry.get("met by the tool of", [])
        for one in met_by if isinstance(met_by, list) else [met_by]:
            one = one if isinstance(one, dict) else {"requirement": one}
            self.deemed.append((one["requirement"], tests(one.get("with"), words)))
        self.least, self.types = 1, []
        if entry["carry"].endswith("different types"):
            self.least = int(entry["carry"].split()[0])
            for of_type in entry["types"]:
                members = of_type.get("set of", [of_type])
                self.types.append((of_type.get("clause"), [member(m, words) for m in members]))
        else:
            self.types.append((None, [member(entry, words)]))


def requirements(load, folder, words):
    """The requirements of the Gulf rule: the list that it is built on, with
    its changes, then its own."""
    own = load(folder / "us-gulf-reef-fish-2019.yaml")
    base = load(folder / f"{own['built on']}.yaml")
    changes = {change["id"]: change for change in own.get("change", [])}
    entries = [entry | changes.get(entry["id"], {}) for entry in base["requirements"]]
    entries += own["requirements"]
    return own, [Requirement(entry, words) for entry in entries]
