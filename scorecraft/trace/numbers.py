"""Numbers in the attributes of an SVG file, in a way that looks at each character once.

A drawing may be anything, so no pattern here has two ways to match the same characters: each
repeats as often as it can and gives nothing back (`*+`, `++`).
"""

import re
from math import isfinite

LONGEST_NUMBER = 100
"""The longest number that is read in a drawing, in characters."""
GAP = re.compile(r"[\s,]*+")
NUMBER = re.compile(r"[-+]?(?:[0-9]++(?:\.[0-9]*+)?|\.[0-9]++)(?:[eE][-+]?[0-9]++)?")


def past_gap(text: str, at: int) -> int:
    """Find where spaces and commas end."""
    found = GAP.match(text, at)
    return found.end() if found else at


def number_at(text: str, at: int) -> tuple[float, int] | None:
    """Read the number that begins here; give it and its end, or None where there is none.

    None too for a number that is not finite, or longer than any that means something.
    """
    found = NUMBER.match(text, at)
    if found is None or found.end() - at > LONGEST_NUMBER:
        return None
    value = float(found.group())
    return (value, found.end()) if isfinite(value) else None


def numbers_of(text: str) -> list[float] | None:
    """Read a text that holds nothing but numbers, parted by spaces and commas, or give None."""
    numbers = []
    at = past_gap(text, 0)
    while at < len(text):
        found = number_at(text, at)
        if found is None:
            return None
        numbers.append(found[0])
        at = past_gap(text, found[1])
    return numbers
