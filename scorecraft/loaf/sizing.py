"""From grams of dough to the size of the loaf, with the arithmetic told line by line."""

from scorecraft.baking import (
    DOUGH_DENSITY,
    HIGHEST_STAND,
    LOAF_PER_BASKET,
    LOWEST_STAND,
    SPREADS_FROM_BASKET,
)
from scorecraft.frozen import dataclass, replace
from scorecraft.limits import LEAST_DOUGH_G, MOST_DOUGH_G
from scorecraft.loaf import telling as say
from scorecraft.loaf.baskets import takes, too_much
from scorecraft.loaf.dome import Loaf, make_loaf
from scorecraft.loaf.dough import Dough
from scorecraft.loaf.forms import Form, form_of

HOLE_ROUNDS = 40
"""Rounds in which the width of a ring with a given hole settles."""
MOST_HOLE = 0.68
"""The widest hole that is tried, as a share of the width."""


@dataclass(frozen=True, slots=True)
class Sizing:
    """A proofed loaf, and how its size was found.

    `doubts` tell what no dough does, each with a way out.
    """

    loaf: Loaf
    steps: tuple[str, ...]
    doubts: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Known:
    """Measures that are given (mm); None where they are to be found."""

    width_mm: float | None = None
    length_mm: float | None = None
    height_mm: float | None = None
    hole_mm: float | None = None


USUAL = Dough()
"""A ready sourdough, neither cold nor wet."""


def size_from_dough(
    shape: str,
    grams: float,
    *,
    dough: Dough = USUAL,
    basket_mm: tuple[float, float] | None = None,
    known: Known | None = None,
    profile: tuple[float, float] | None = None,
    taper: float = 0.0,
) -> Sizing:
    """Find how large a loaf of so many grams of dough is when it is cut.

    `basket_mm` is the width and length of the proofing basket across the top, which stand only
    where no size is known; what is `known` always stands. The volume of the dome is the dough's
    mass over its density times its proof, less what it has shrunk by chilling. Raises UsageError
    for amounts of dough and sizes that no loaf has.

    >>> print(*size_from_dough("round", 900).steps, sep=chr(10))
    900 g of dough at 1.2 g/cm³ takes up 750 cm³ when mixed
    ready, 1.9 times that is 1425 cm³ at scoring
    a round loaf 185 mm wide and 80 mm high holds 1425 cm³
    """
    known = known or Known()
    volume, steps = proofed_volume(grams, dough)
    form = form_of(shape)
    longer, fill = form.longer, _fill(form, profile, form.hole, taper)
    stand = form.stands * dough.stand
    doubts: list[tuple[str, str]] = []
    if basket_mm is not None and known == Known():
        longer = basket_mm[1] / basket_mm[0]
        stand, step, doubts = _stand_in_basket(volume / fill, basket_mm, grams, dough)
        steps.append(step)
    elif basket_mm is not None:
        steps.append(say.BASKET_IGNORED)
    width, length, height = _solved(volume / fill, longer, stand, known)
    if known.hole_mm is not None:  # how much of the box it fills hangs on the width it has
        for _ in range(HOLE_ROUNDS):
            fill = _fill(form, profile, known.hole_mm / width)
            width, length, height = _solved(volume / fill, longer, stand, known)
    loaf = make_loaf(shape, width, length, height, profile, hole_mm=known.hole_mm, taper=taper)
    steps.append(say.loaf_holds(loaf, volume))
    if known.height_mm is None:
        hole = (known.hole_mm or form.hole * width) if form.hole else 0.0
        across = (min(width, length) - hole) / (2 if hole else 1)
        doubts += _too_high(across, height)
    return Sizing(loaf, tuple(steps), tuple(doubts))


def _fill(
    form: Form, profile: tuple[float, float] | None, hole: float, taper: float = 0.0
) -> float:
    """Volume of a form over that of the box around it; its hole is a share of the width."""
    hole_mm = min(hole, MOST_HOLE) * 100.0 if form.hole else None
    box = make_loaf(form.name, 100.0, 100.0, 100.0, profile, hole_mm=hole_mm, taper=taper)
    return box.volume_mm3 / 1e6


def height_from_dough(
    rim: Loaf, grams: float, *, dough: Dough = USUAL, height_mm: float | None = None
) -> Sizing:
    """Find how high so many grams of dough stand on the rim of a loaf, whatever its height.

    A height that is known stands. Raises UsageError as `size_from_dough` does.
    """
    volume, steps = proofed_volume(grams, dough)
    height = volume / rim.volume_mm3 * rim.height_mm if height_mm is None else height_mm
    loaf = replace(rim, height_mm=height)
    steps.append(say.loaf_holds(loaf, volume))
    across = min(rim.width_mm, rim.length_mm)
    doubts = _too_high(across, height) if height_mm is None else []
    return Sizing(loaf, tuple(steps), tuple(doubts))


def grams_of(loaf: Loaf, dough: Dough = USUAL) -> float:
    """Estimate the dough (g) in a loaf from its size: the way back of `size_from_dough`."""
    return loaf.volume_mm3 / 1000 * DOUGH_DENSITY.value / (dough.times * dough.shrunk)


def _too_high(across: float, height: float) -> list[tuple[str, str]]:
    """Tell a loaf that is higher for its width than dough stands."""
    most = HIGHEST_STAND.value * across
    if height <= most * (1 + 1e-9):
        return []
    return [say.TOO_TALL(height_mm=height, across_mm=across, most_mm=most)]


def proofed_volume(grams: float, dough: Dough) -> tuple[float, list[str]]:
    """Volume (mm3) of so many grams of dough when it is cut, and how it was found."""
    low, high = LEAST_DOUGH_G, MOST_DOUGH_G
    if not low <= grams <= high:
        what, hint = f"{grams:g} g of dough", f"use {low:g} g to {high:g} g"
        raise say.OUT_OF_RANGE(what=what, hint=hint).usage()
    mixed = grams / DOUGH_DENSITY.value
    volume = mixed * dough.times * dough.shrunk
    return 1000 * volume, [
        say.MIXED_VOLUME.format(grams=grams, density=DOUGH_DENSITY.value, mixed_cm3=mixed),
        say.proofed_volume(dough, volume),
    ]


def _stand_in_basket(
    box: float, basket_mm: tuple[float, float], grams: float, dough: Dough
) -> tuple[float, str, list[tuple[str, str]]]:
    """Height over width of a loaf turned out of its basket, as far as its dough stands.

    `box` is width x length x height of the loaf, mm3; the step and the doubts come with it.
    """
    width, length = (side * LOAF_PER_BASKET.value for side in basket_mm)
    basket = say.basket_words(basket_mm)
    stand = box / (width * length * width)
    lowest, highest = (rule.value * dough.stand for rule in (LOWEST_STAND, HIGHEST_STAND))
    least, most = takes(basket_mm)
    if stand < lowest:
        told = say.BASKET_NOT_FILLED if grams < least else say.BASKET_LOW
        narrower = width * (stand / lowest) ** (1 / 3)
        return lowest, told.format(basket=basket, width_mm=narrower), []
    much, fix = too_much(grams, most), say.basket_fix(least, most)
    if stand <= highest:
        doubts = [(say.BASKET_OVERFULL.format(basket=basket), fix)] if much else []
        return stand, say.basket_shapes(basket, width, length), doubts
    spread = (stand / highest) ** (1 / 3)
    more, why = spread - 1, say.why_it_spreads(dough, much)
    step = say.BASKET_SPREADS.format(basket=basket, more=more, why=why)
    if spread <= SPREADS_FROM_BASKET.value and not much:
        return highest, step, []
    return highest, step, [(say.BASKET_DOUBT.format(basket=basket, more=more, why=why), fix)]


def _solved(box: float, longer: float, stand: float, known: Known) -> tuple[float, float, float]:
    """Find the measures not given so that width x length x height is `box` (mm3)."""
    width, length, height = known.width_mm, known.length_mm, known.height_mm
    if longer == 1.0:  # as long as it is wide: either measure gives both
        width = length = width or length
    if width is None:
        powers = 1 + (length is None) + (height is None)
        rest = (length or longer) * (height or stand)
        width = (box / rest) ** (1 / powers)
        return width, length or longer * width, height or stand * width
    if height is None:
        length = length or longer * width
        return width, length, box / (width * length)
    if length is None:
        length = width if longer == 1.0 else box / (width * height)
    return width, length, height
