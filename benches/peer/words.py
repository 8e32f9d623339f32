"""The vocabulary: kinds by any of their names, attributes by what they are."""

from lengths import quantity


def fold(name):
    return "-".join(name.strip().lower().replace("_", "-").split())


class Words:
    def __init__(self, data):
        self.kinds, self.classes, self.attributes = {}, {}, {}
        # Words that are wider than a kind stand on none of the vessels.
        single = {kind: entry for kind, entry in data["kinds"].items() if "may be" not in entry}
        for kind, entry in single.items():
            self.classes[kind] = entry["class"]
            self.attributes[kind] = set(entry.get("attributes", []))
            for name in [kind, entry["name"], *entry.get("also", [])]:
                self.kinds[fold(name)] = kind
        self.shapes = data["attributes"]
        self.changes = data["changes"]

    def kind(self, name):
        key = fold(name)
        return self.kinds[key] if key in self.kinds else self.kinds[key.removesuffix("s")]

    def check(self, kind, attribute):
        if attribute not in self.attributes[kind]:
            raise ValueError(f"no such attribute: {attribute}")

    def shape(self, attribute):
        return self.shapes[attribute]["quantity"]

    def is_shown(self, attribute):
        return self.shapes[attribute].get("shown") != "no"

    def may_be(self, attribute, word):
        may_be = self.shapes[attribute].get("may be", {})
        return {w.lower() for key, words in may_be.items() if key.lower() == word for w in words}

    def retired(self, what):
        retired = self.changes[what]
        return None if retired == "all" else retired

    def read(self, attribute, readings):
        """Turns the texts of an attribute into what they mean, in place;
        what is not known is no reading."""
        shape, out = self.shape(attribute), []
        for text, on in readings:
            text = text.strip()
            if text.lower() in ("", "unknown"):
                continue
            if shape == "feature":
                value = {"yes": True, "no": False}[text.lower()]
            elif shape in ("choice", "name"):
                value = text.lower()
            else:
                value = quantity(text)
            out.append((value, on))
        readings[:] = out
