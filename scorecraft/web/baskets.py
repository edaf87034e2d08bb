"""The common proofing baskets as the page offers them: called as sold, with the dough they take."""

import re

from scorecraft.baking import COMMON_BASKETS
from scorecraft.designing import Design
from scorecraft.editing.head import keys_as_written
from scorecraft.json_data import JsonObject
from scorecraft.units import UNITS

EVEN = ("round", "square")
"""Forms that proof in baskets as long as they are wide; all others in long ones."""


def baskets_data(design: Design) -> list[JsonObject]:
    """List the common baskets that suit the loaf, each with the keys that ask for it.

    `cm` and `inches` call it by its sides, with the dough it takes; `written` is the one in the
    text.
    """
    line = next((each for each in design.tree.statements if each.word == "loaf"), None)
    written = keys_as_written(line) if line else {}
    there = [in_mm(written.get(key, "")) for key in ("basket", "by")]
    told: list[JsonObject] = []
    for each in COMMON_BASKETS:
        even = each.length_mm == each.width_mm
        sides = [each.length_mm] if even else [each.length_mm, each.width_mm]
        if even != (design.layout.loaf.shape in EVEN):
            continue
        takes = f"{each.least_g:g}–{each.value:g} g"
        told.append(
            {
                "keys": {"basket": f"{sides[0]:g}mm", "by": "" if even else f"{sides[1]:g}mm"},
                "cm": f"{across(sides, 10.0)} cm: {takes}",
                "inches": f"{across(sides, 25.4)} in: {takes}",
                "written": there[: len(sides)] == sides,
            }
        )
    return told


def across(sides_mm: list[float], unit_mm: float) -> str:
    """Write the sides of a basket in a unit."""
    return " × ".join(f"{round(side / unit_mm, 1):g}" for side in sides_mm)


def in_mm(written: str) -> float | None:
    """Read a plain length of the text; None for what is worked out there."""
    found = re.fullmatch(r"([\d.]++)\s*+(mm|cm|in)", written)
    return UNITS[found[2]].factor * float(found[1]) if found else None
