"""A straightforward checker in Python, to compare times and verdicts with.

It knows one rule, the Gulf of Mexico reef fish edition of 2019: the
requirements are read from the same YAML profiles (`us-gulf-reef-fish-2019`
and the list of Appendix F that it is built on), so that a figure stands in
one place only; how they are judged is written here again, from the texts in
`requirements/README.md` and `vessels/README.md` and not from the program.
Lengths are exact fractions of a millimetre.

    audit.py REQUIREMENTS FOLDER     one line a file: path, tab, verdict
    audit.py --parse FOLDER          reads the files and does nothing else
"""

import sys
from datetime import date, timedelta
from pathlib import Path

import yaml
from judge import Gulf
from vessel import read_vessel

Loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


class Texts(Loader):
    """Every scalar is text, as the files mean it."""


Texts.yaml_implicit_resolvers = {}


def load(path):
    with open(path, encoding="utf-8") as file:
        return yaml.load(file, Texts)


def files(folder):
    return sorted(p for p in Path(folder).rglob("*.yaml") if not p.name.startswith("."))


def main(arguments):
    if arguments[0] == "--parse":
        for path in files(arguments[1]):
            try:
                load(path)
            except yaml.YAMLError:
                pass
        return
    requirements, folder = arguments
    gulf = Gulf(load, Path(requirements))
    out = []
    for path in files(folder):
        try:
            vessel = read_vessel(load(path), gulf.words)
        except (yaml.YAMLError, ValueError, KeyError, TypeError, AttributeError):
            out.append(f"{path}\trefused\n")
            continue
        out.append(f"{path}\t{gulf.verdict(vessel)}\n")
    sys.stdout.write("".join(out))


if __name__ == "__main__":
    main(sys.argv[1:])
