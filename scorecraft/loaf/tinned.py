"""A loaf in its tin: how high so much dough stands in it when it is scored."""

from scorecraft.loaf import telling as say
from scorecraft.loaf.dome import Loaf, make_loaf
from scorecraft.loaf.dough import Dough
from scorecraft.loaf.forms import FORMS
from scorecraft.loaf.sizing import USUAL, Known, Sizing, proofed_volume
from scorecraft.loaf.tin import PANS, Pan, Tin
from scorecraft.practice import TIN_CROWN

LEAST_WALL = 0.25
"""Dough stands at least so high at the sides, as a share of its mean height."""


def pan_for(grams: float) -> Pan:
    """Choose the tin whose usual dough is nearest to so many grams."""
    return min(PANS.values(), key=lambda pan: abs(sum(pan.dough_g) / 2 - grams))


def in_tin(
    pan: Pan | None,
    known: Known,
    grams: float | None,
    *,
    dough: Dough = USUAL,
    profile: tuple[float, float] | None = None,
) -> Sizing:
    """Make the loaf that dough makes in a tin; without a height or dough, what the tin takes.

    What is `known` (mm) stands; without a width there must be a pan or dough, which chooses one.
    Raises UsageError for sizes, dough and proofs that no loaf has.
    """
    steps: list[str] = []
    if pan is None and known.width_mm is None and grams is not None:
        pan = pan_for(grams)
        steps.append(say.PAN_CHOSEN.format(pan=pan.says, grams=grams))
    if pan is not None and grams is None and known.height_mm is None:
        low, high = pan.dough_g
        grams = (low + high) / 2
        steps.append(say.PAN_TAKES.format(pan=pan.says, low_g=low, high_g=high, grams=grams))
    width = known.width_mm or (pan.width_mm if pan else 0.0)
    length = known.length_mm or (pan.length_mm if pan else width * FORMS["tin"].longer)
    if grams is None:
        loaf = _as_high(width, length, known.height_mm or width * FORMS["tin"].stands, pan, profile)
    else:
        volume, found = proofed_volume(grams, dough)
        steps += found
        loaf = _as_high(width, length, known.height_mm, pan, profile, volume)
        steps.append(say.loaf_holds(loaf, volume))
    return Sizing(loaf, tuple(steps), tuple(_doubts(pan, grams)))


def _as_high(
    width: float,
    length: float,
    height: float | None,
    pan: Pan | None,
    profile: tuple[float, float] | None,
    volume: float = 0.0,
) -> Loaf:
    """Make the loaf of a height (mm), or as high as its volume (mm3) stands."""
    if height is not None and pan is None:
        return make_loaf("tin", width, length, height, profile)
    crown = TIN_CROWN.value * width
    room = max(length, pan.length_mm) if pan else length
    if height is not None:
        assert pan is not None
        wall = max(min(pan.depth_mm, height - crown), height / 2)
        return make_loaf("tin", width, length, height, profile, tin=Tin(room, pan.depth_mm, wall))
    base = make_loaf("tin", width, length, 2 * crown, profile, tin=Tin(length, crown, crown))
    full = (base.volume_mm3 / base.plan_area_mm2 - crown) / crown
    level = volume / base.plan_area_mm2
    wall = max(level - full * crown, LEAST_WALL * level)
    deep = pan.depth_mm if pan else wall
    wall = min(wall, deep)
    height = wall + (level - wall) / full
    return make_loaf("tin", width, length, height, profile, tin=Tin(room, deep, wall))


def _doubts(pan: Pan | None, grams: float | None) -> list[tuple[str, str]]:
    """Tell dough that is too much or too little for its tin."""
    if pan is None or grams is None:
        return []
    low, high = pan.dough_g
    if low <= grams <= high:
        return []
    doubt = say.TOO_MUCH_FOR_PAN if grams > high else say.TOO_LITTLE_FOR_PAN
    return [doubt(grams=grams, pan=pan.says, least_g=low, most_g=high)]
