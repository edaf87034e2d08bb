"""The oven table: where a loaf of a form and weight bakes, for how long and how hot.

Common practice, no source; the baker's own recipe comes first.
"""

from collections.abc import Sequence

import numpy as np

from scorecraft.baking import LARGEST_POT_MM, OVEN_TIMES, STONE_MM, VESSEL_CLEAR_MM, Timing
from scorecraft.frozen import dataclass
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import Loaf
from scorecraft.loaf.forms import FORMS

ROLL_G = 150.0
"""A loaf of less dough than this is a roll."""
BAGUETTE_G = 600.0
SLENDER = 4.0
"""A loaf so many times as long as wide, and no heavier than that, is a baguette."""


@dataclass(frozen=True, slots=True)
class Way:
    """One way to bake a loaf: where, two stretches (min) with their heats (C), and with steam.

    `then_min` is (least, most); `stone_mm` is the length of stone a long loaf needs, or None.
    """

    place: str
    first_min: float
    then_min: tuple[float, float]
    first_c: float
    then_c: float
    steam: bool
    stone_mm: float | None = None


def kind_of(loaf: Loaf, grams: float) -> str:
    """Call a loaf by how it bakes: roll, baguette, tin, ring, flat, or else loaf.

    >>> from scorecraft.loaf.dome import make_loaf
    >>> kind_of(make_loaf("long", 65, 520, 45), 350), kind_of(make_loaf("round", 90, None, 45), 80)
    ('baguette', 'roll')
    """
    form = FORMS.get(loaf.shape)  # a traced loaf has none
    if form is not None and form.bakes:
        return form.bakes
    if grams <= ROLL_G:
        return "roll"
    slender = loaf.length_mm / loaf.width_mm >= SLENDER
    return "baguette" if slender and grams <= BAGUETTE_G else "loaf"


def fits_pot(loaf: Loaf, bake: Bake, pot_mm: float | None = None) -> bool:
    """Whether the baked loaf clears the wall of its pot (inside, mm), or of the largest usual."""
    baked = max(loaf.width_mm, loaf.length_mm) * bake.sideways
    return baked <= (pot_mm or LARGEST_POT_MM.value) - 2 * VESSEL_CLEAR_MM.value


def ways(loaf: Loaf, bake: Bake, grams: float, pot_mm: float | None = None) -> tuple[Way, ...]:
    """List the ways to bake a loaf of so much dough, a covered pot first where it fits in one."""
    kind = kind_of(loaf, grams)
    rows: dict[str, list[Timing]] = {}
    for row in OVEN_TIMES:
        if row.kind == kind:
            rows.setdefault(row.place, []).append(row)
    if not fits_pot(loaf, bake, pot_mm):
        rows.pop("pot", None)
    longest = max(loaf.width_mm, loaf.length_mm) * bake.sideways
    return tuple(_way(place, same, grams, bake, longest) for place, same in rows.items())


def _way(place: str, rows: Sequence[Timing], grams: float, bake: Bake, longest_mm: float) -> Way:
    """Read a way between the rows of the table; beyond them by the root of the weight."""
    weights = [row.dough_g for row in rows]
    beyond = float(np.sqrt(grams / np.clip(grams, weights[0], weights[-1])))
    first, least, most = (
        beyond * float(np.interp(grams, weights, each))
        for each in zip(*((row.first_min, *row.then_min) for row in rows), strict=True)
    )
    near = min(rows, key=lambda row: abs(row.dough_g - grams))
    steam, then = place == "pot" or bake.steam, (round(least), round(most))
    stone = longest_mm if place == "stone" and longest_mm > STONE_MM.value else None
    return Way(place, round(first), then, near.first_c, near.then_c, steam, stone)
