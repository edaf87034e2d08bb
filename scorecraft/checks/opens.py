"""Opens: whether wished openings are within reach."""

from collections.abc import Mapping

import numpy as np

from scorecraft.arrays import Ints
from scorecraft.checks import telling_loaf as say
from scorecraft.checks.finding import Finding
from scorecraft.checks.telling import likewise
from scorecraft.cuts import Cut, Layout
from scorecraft.errors import ScorecraftError, UsageError
from scorecraft.opening.depth import Wanted
from scorecraft.opening.wishes import Met
from scorecraft.practice import DEPTH_STEP_MM

OPENING_WISH_ROUGH = 0.05
"""An opening that misses the wish by more than this share of itself is told."""


def opens(met: Met) -> list[Finding]:
    """Find the wished openings that are out of reach, met only roughly, or not sought at all."""
    cuts = met.layout.cuts
    if met.refused:
        return [not_sought(cuts, met.refused)]
    if met.found is None:
        return []
    return [*unmet(met.layout, met.found), *roughly_met(cuts, met.found)]


def unmet(layout: Layout, found: Wanted) -> list[Finding]:
    """Tell the wishes out of reach, once for the copies of one statement."""
    lost = _by_family(layout.cuts, np.flatnonzero(~found.reachable))
    return [_unmet(layout, found, members) for members in lost]


def roughly_met(cuts: tuple[Cut, ...], found: Wanted) -> list[Finding]:
    """Tell the wishes that the search ended short of, once for the copies of one statement."""
    if found.settled:
        return []
    wished = np.array([np.nan if cut.opens_mm is None else cut.opens_mm for cut in cuts])
    off = np.abs(np.log(found.reached_mm / wished))
    rough = _by_family(cuts, np.flatnonzero(off > OPENING_WISH_ROUGH))
    return [_roughly(cuts, found, max(members, key=lambda i: off[i]), members) for members in rough]


def not_sought(cuts: tuple[Cut, ...], error: ScorecraftError) -> Finding:
    """Tell that no depths were sought, and why."""
    asked = tuple(i for i, cut in enumerate(cuts) if cut.opens_mm is not None)
    too_many = isinstance(error, UsageError)
    why = say.TOO_MANY_CUTS if too_many else error.message
    message, hint = say.NO_DEPTHS(why=why), say.DEPTHS_INSTEAD
    figures = {"count": float(len(asked))}
    place = max(cuts[i].place for i in asked)
    return Finding("opens", "warning", message, hint, place, figures, asked)


def _by_family(cuts: tuple[Cut, ...], chosen: Ints) -> list[list[int]]:
    """Sort chosen cuts by the statement they come from."""
    families: dict[int, list[int]] = {}
    for index in chosen:
        families.setdefault(cuts[index].family, []).append(int(index))
    return list(families.values())


def _roughly(cuts: tuple[Cut, ...], found: Wanted, worst: int, members: list[int]) -> Finding:
    """Tell of the cuts of one statement that open other than wished."""
    cut, reached = cuts[worst], float(found.reached_mm[worst])
    message = say.OPENS_OTHERWISE(cut=cut, opens=reached) + likewise(len(members))
    figures = {"reached_mm": reached, "count": float(len(members))}
    return Finding("opens", "warning", message, say.ASK_LESS, cut.place, figures, tuple(members))


def _unmet(layout: Layout, found: Wanted, members: list[int]) -> Finding:
    """Tell of the cuts of one statement that cannot open as wished."""
    worst = min(members, key=lambda index: found.most_mm[index])
    cut, most = layout.cuts[worst], float(found.most_mm[worst])
    bounded = cut.depth_mm + DEPTH_STEP_MM.value > layout.deep_from_mm
    message = say.opens_only(cut, most, bounded)
    hint = say.ASK_FOR(most=np.floor(most * 9) / 10)
    figures: Mapping[str, float] = {"most_mm": most, "count": float(len(members))}
    return Finding("opens", "warning", message, hint, cut.place, figures, tuple(members))
