"""Parts of a pattern that are too fine for the slots, and the slot that would do."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import ceil

import numpy as np
import shapely

import scorecraft.plate.telling as telling
from scorecraft.errors import ScorecraftError
from scorecraft.plate.attempt import Attempt, Kept
from scorecraft.plate.sizes import Sizes
from scorecraft.practice import LEAST_SLOT_MM

LEAST_KEPT = 0.5
"""A figure that loses more of its slots to webs and bridges is too fine."""
LEAST_CUTS_KEPT = 0.7
"""A figure that loses more of its slots altogether is too fine."""
TRIALS = 6


def too_fine(tried: Attempt) -> tuple[Kept, ...]:
    """List the parts that lose most of their slots, or that leave a piece that falls out."""
    near = {
        tried.bridged.slits[index].name
        for island in _loose(tried)
        for index in _around(tried, island)
    }
    return tuple(kept for kept in tried.kept if _worn(kept) or kept.name in near)


def _worn(kept: Kept) -> bool:
    return kept.share < LEAST_KEPT or kept.cuts < LEAST_CUTS_KEPT


def _loose(tried: Attempt) -> list[shapely.Polygon]:
    parts = sorted(shapely.get_parts(tried.area), key=lambda part: -part.area)
    return [*tried.bridged.loose, *parts[1:]]


def _around(tried: Attempt, island: shapely.Polygon) -> list[int]:
    """Indexes of the slits whose slots border on an island."""
    slits = tried.bridged.slits
    gaps = [slit.line.distance(island) - slit.width_mm / 2 for slit in slits]
    return np.flatnonzero(np.array(gaps) < min(gaps) + 0.2).tolist()


Works = Callable[[Sizes], bool]
"""Whether a plate of these sizes comes out well."""


def refusal(tried: Attempt, bad: Sequence[Kept], sizes: Sizes, works: Works) -> ScorecraftError:
    """Say why a plate cannot be made, and the nearest slot or bridge that works."""
    worst = min(bad, key=lambda kept: min(kept.share, kept.cuts))
    if _worn(worst):
        share = min(worst.share, worst.cuts)
        message = telling.CROWDED.format(sizes=sizes, share=share, name=worst.name)
    else:
        where = telling.place(*_loose(tried)[0].centroid.coords[0])
        message = telling.LOOSE.format(where=where, sizes=sizes, name=worst.name)
    return ScorecraftError(message, None, _way_out(tried, bad, sizes, works))


def _way_out(tried: Attempt, bad: Sequence[Kept], sizes: Sizes, works: Works) -> str:
    slot = widest(sizes.slot_mm, LEAST_SLOT_MM.value, lambda mm: works(replace(sizes, slot_mm=mm)))
    if slot:
        return telling.SLOT_WORKS.format(slot_mm=slot)
    bridge = widest(sizes.bridge_mm, sizes.web_mm, lambda mm: works(replace(sizes, bridge_mm=mm)))
    if bridge:
        return telling.BRIDGE_WORKS.format(bridge_mm=bridge)
    return telling.nothing_works([kept.name for kept in tried.kept if kept not in bad])


def widest(size_mm: float, least_mm: float, works: Callable[[float], bool]) -> float | None:
    """Find about the widest size (tenths of a mm) below one that fails; None if none works.

    Each answer was tried; the search halves the range, as if all sizes below one that works did.
    """
    low, high = ceil(10 * least_mm - 1e-9), ceil(10 * size_mm - 1e-9)
    if low >= high or not works(low / 10):
        return None
    for _ in range(TRIALS):
        if high - low <= 1:
            break
        middle = (low + high) // 2
        low, high = (middle, high) if works(middle / 10) else (low, middle)
    return low / 10
