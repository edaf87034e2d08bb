"""From grams of dough to the size of the loaf, with the arithmetic told line by line."""

import math
from dataclasses import dataclass

from scorecraft.errors import UsageError
from scorecraft.limits import LEAST_DOUGH_G, MOST_DOUGH_G, MOST_PROOF
from scorecraft.loaf.dome import Loaf, make_loaf
from scorecraft.practice import (
    DOUGH_DENSITY,
    HEIGHT_PER_WIDTH,
    HIGHEST_STAND,
    LEAST_PROOF,
    LENGTH_PER_WIDTH,
    LOAF_PER_BASKET,
    LOWEST_STAND,
    PROOFED,
    SPREADS_FROM_BASKET,
    STANDS,
)


@dataclass(frozen=True, slots=True)
class Sizing:
    """The size of a proofed loaf (mm), its volume (mm3), and how they were found.

    `doubts` tell what no dough does, each with a way out.
    """

    width_mm: float
    length_mm: float
    height_mm: float
    volume_mm3: float
    steps: tuple[str, ...]
    doubts: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Known:
    """Measures that are given (mm); None where they are to be found."""

    width_mm: float | None = None
    length_mm: float | None = None
    height_mm: float | None = None


def size_from_dough(
    shape: str,
    grams: float,
    *,
    proof: str | float = "right",
    basket_mm: tuple[float, float] | None = None,
    known: Known | None = None,
    profile: tuple[float, float] | None = None,
) -> Sizing:
    """Find how large a loaf of so many grams of dough is when it is cut.

    `proof` is `under`, `right`, `over`, or the volume when cut over the mixed volume; `basket_mm`
    the width and length of the proofing basket across the top, which stand only where no size is
    known; what is `known` always stands. The volume of the dome is the dough's mass over its
    density times the proof. Raises UsageError for amounts of dough, proofs and sizes that no loaf
    has.

    >>> print(*size_from_dough("round", 900).steps, sep=chr(10))
    900 g of dough at 1.2 g/cm3 fill 750 cm3 when mixed
    proofed right, 2.6 times that is 1950 cm3 when cut
    a round loaf 205 mm wide and 88 mm high holds 1950 cm3
    """
    known = known or Known()
    volume, steps = _volume(grams, proof)
    fill = make_loaf(shape, 100.0, 100.0, 100.0, profile).volume_mm3 / 1e6
    longer = LENGTH_PER_WIDTH[shape].value
    stand = HEIGHT_PER_WIDTH.value * (STANDS[proof].value if isinstance(proof, str) else 1.0)
    doubts: list[tuple[str, str]] = []
    if basket_mm is not None and known == Known():
        longer = basket_mm[1] / basket_mm[0]
        stand, step, doubts = _stand_in_basket(volume / fill, basket_mm)
        steps.append(step)
    elif basket_mm is not None:
        steps.append("the basket is left out: the given size stands")
    width, length, height = _solved(volume / fill, longer, stand, known)
    make_loaf(shape, width, length, height, profile)
    found = fill * width * length * height
    steps.append(_told(shape, width, length, height, found, volume))
    if known.height_mm is None:
        doubts += _too_high(min(width, length), height)
    return Sizing(width, length, height, found, tuple(steps), tuple(doubts))


def height_from_dough(
    rim: Loaf, grams: float, *, proof: str | float = "right", height_mm: float | None = None
) -> Sizing:
    """Find how high so many grams of dough stand on the rim of a loaf, whatever its height.

    A height that is known stands. Raises UsageError as `size_from_dough` does.
    """
    volume, steps = _volume(grams, proof)
    per_mm = rim.volume_mm3 / rim.height_mm
    height = volume / per_mm if height_mm is None else height_mm
    found, width, length = per_mm * height, rim.width_mm, rim.length_mm
    steps.append(_told(rim.shape, width, length, height, found, volume))
    doubts = _too_high(min(width, length), height) if height_mm is None else []
    return Sizing(width, length, height, found, tuple(steps), tuple(doubts))


def _too_high(across: float, height: float) -> list[tuple[str, str]]:
    """Tell a loaf that is higher for its width than dough stands."""
    most = HIGHEST_STAND.value * across
    if height <= most * (1 + 1e-9):
        return []
    message = f"so much dough would stand {height:.0f} mm high on {across:.0f} mm: it spreads"
    return [(message, f"less dough or a wider loaf; about {most:.0f} mm is as high as it stands")]


def _volume(grams: float, proof: str | float) -> tuple[float, list[str]]:
    """Volume (mm3) of so many grams of dough when it is cut, and how it was found."""
    low, high = LEAST_DOUGH_G, MOST_DOUGH_G
    if not low <= grams <= high:
        raise UsageError(f"no loaf has {grams:g} g of dough", None, f"use {low:g} g to {high:g} g")
    times = _proof(proof)
    mixed = grams / DOUGH_DENSITY.value
    how = f"proofed {proof}, " if isinstance(proof, str) else ""
    return 1000 * mixed * times, [
        f"{grams:g} g of dough at {DOUGH_DENSITY.value:g} g/cm3 fill {mixed:.0f} cm3 when mixed",
        f"{how}{times:g} times that is {mixed * times:.0f} cm3 when cut",
    ]


def _proof(proof: str | float) -> float:
    if isinstance(proof, str):
        if proof not in PROOFED:
            hint = "it is under, right, over, or how many times the mixed volume"
            raise UsageError(f'"{proof}" is no proof', None, hint)
        return PROOFED[proof].value
    low, high = LEAST_PROOF.value, MOST_PROOF
    if not low <= proof <= high:
        raise UsageError(
            f"no dough proofs to {proof:g} times its volume", None, f"use {low:g} to {high:g}"
        )
    return float(proof)


def _stand_in_basket(
    box: float, basket_mm: tuple[float, float]
) -> tuple[float, str, list[tuple[str, str]]]:
    """Height over width of a loaf that filled its basket, as far as dough stands.

    `box` is width x length x height of the loaf, mm3; the step and the doubts come with it.
    """
    width, length = (side * LOAF_PER_BASKET.value for side in basket_mm)
    across, along = basket_mm
    basket = f"a basket of {along:.0f} mm"
    made = f"{width:.0f} mm wide"
    if not math.isclose(across, along):
        basket += f" by {across:.0f} mm"
        made += f" and {length:.0f} mm long"
    stand = box / (width * length * width)
    if stand < LOWEST_STAND.value:
        return LOWEST_STAND.value, f"that does not fill {basket}", []
    if stand <= HIGHEST_STAND.value:
        return stand, f"{basket} makes the loaf {made}", []
    spread = (stand / HIGHEST_STAND.value) ** (1 / 3)
    if spread <= SPREADS_FROM_BASKET.value:
        return HIGHEST_STAND.value, f"{basket} is full: the loaf spreads when turned out", []
    step = f"that is too much for {basket}: it spreads when turned out"
    doubt = f"so much dough is too much for {basket}"
    return HIGHEST_STAND.value, step, [(doubt, "take a larger basket, or less dough")]


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


def _told(
    shape: str, width: float, length: float, height: float, found: float, volume: float
) -> str:
    across = f"{width:.0f} mm wide"
    if not math.isclose(width, length):
        across += f", {length:.0f} mm long"
    article = "an" if shape == "oval" else "a"
    told = f"{article} {shape} loaf {across} and {height:.0f} mm high holds {found / 1000:.0f} cm3"
    if math.isclose(found, volume, rel_tol=0.01):
        return told
    return f"{told}, {found / volume:.0%} of the dough's volume: the given size stands"
