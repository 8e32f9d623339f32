"""Lengths and other figures as people write them, exact."""

import re
from fractions import Fraction

UNITS = {
    "ft": Fraction("304.8"), "feet": Fraction("304.8"), "foot": Fraction("304.8"),
    "in": Fraction("25.4"), "inch": Fraction("25.4"), "inches": Fraction("25.4"),
    "m": Fraction(1000), "cm": Fraction(10), "mm": Fraction(1),
}

PIECE = re.compile(r"\s*(\d+(?:\.\d+)?(?:\s+\d+/\d+)?|\d+/\d+)\s*([a-z]+)")


def number(text):
    return sum((Fraction(part) for part in text.split()), Fraction(0))


def length(text):
    """Millimetres."""
    total, at, found = Fraction(0), 0, False
    text = text.strip()
    while at < len(text):
        piece = PIECE.match(text, at)
        if not piece or piece.group(2) not in UNITS:
            raise ValueError(f"no length: {text}")
        total += number(piece.group(1)) * UNITS[piece.group(2)]
        at, found = piece.end(), True
    if not found:
        raise ValueError("no length")
    return total


def quantity(text):
    """A length in millimetres, a mass in grams, a bare number."""
    text = text.strip()
    if text.endswith("lb"):
        return Fraction(text[:-2].strip()) * Fraction("453.59237")
    if re.fullmatch(r"\d+", text):
        return Fraction(text)
    return length(text)
