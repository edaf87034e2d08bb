"""Strips of dough between two cuts that are too narrow for how deep the cuts are."""

from collections.abc import Iterator

import numpy as np

from scorecraft.arrays import Floats, Ints
from scorecraft.checks import telling_cuts as say
from scorecraft.checks.alongside import STRIP_RUN_MM, STRIP_RUN_SHARE, Alongside, alongside
from scorecraft.checks.changes import no_deeper, parted, way_to
from scorecraft.checks.cure import Change
from scorecraft.checks.finding import Finding, Offer, Severity
from scorecraft.checks.neighbours import unseen
from scorecraft.checks.telling import likewise, told_once
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.loaf.places import where
from scorecraft.practice import (
    DEEP_MM,
    SHALLOW_MM,
    STRIP_PARALLEL_DEG,
    STRIP_PER_DEPTH,
    STRIP_STOP_SHARE,
    STRIP_WARN_SHARE,
    THINNEST_STRIP_MM,
)
from scorecraft.units import half_up

STRIP_SLENDER = 1.5
"""A strip is at least this many times as long as wide."""
NARROW = 0.1
"""Share of a strip that may be narrower than the width it is told by."""


@dataclass(frozen=True, slots=True)
class Strip:
    """A narrow strip between cuts `one` and `other` (indexes; the same for a spiral's turns).

    `width_mm` is its true width where it is narrow (a tenth of it is narrower), `apart_mm` how far
    apart on the sheet its cuts have to move.
    """

    one: int
    other: int
    run_mm: float
    width_mm: float
    wanted_mm: float
    apart_mm: float
    middle: Floats


def strips(layout: Layout) -> list[Finding]:
    """Find strips of dough narrower than the depth of the cuts beside them allows.

    Cuts that come together at an angle, as at the tip of a leaf or where a vein meets its midrib,
    leave a point and no strip; a strip counts where both cuts run side by side.
    """
    found, whole = narrow_strips(layout)
    grave = [_severity(layout, strip) for strip in found]
    keys = [
        (*sorted((layout.cuts[s.one].family, layout.cuts[s.other].family)), severity)
        for s, severity in zip(found, grave, strict=True)
    ]
    lacking = np.array([1 - s.width_mm / s.wanted_mm for s in found])
    findings = [
        _finding(layout, found[worst], [found[i] for i in members], grave[worst], whole)
        for worst, members in told_once(keys, lacking)
    ]
    return findings if whole else [*findings, unseen("strips", layout)]


def narrow_strips(layout: Layout) -> tuple[list[Strip], bool]:
    """Give strips that are narrower than they should be, once for a pair of cuts; whether all."""
    if not layout.cuts:
        return [], True
    depth = layout.depths_mm
    reach = np.maximum(STRIP_PER_DEPTH.value * depth, THINNEST_STRIP_MM.value) / 2
    near = alongside(layout, reach, STRIP_PARALLEL_DEG.value)
    best: dict[tuple[int, int], Strip] = {}
    for strip in _measured(near, reach):
        key = (min(strip.one, strip.other), max(strip.one, strip.other))
        if key not in best or strip.run_mm > best[key].run_mm:
            best[key] = strip
    return list(best.values()), near.whole


def _measured(near: Alongside, reach: Floats) -> Iterator[Strip]:
    """Measure the strips from either cut beside them, all at once; passages too short are none."""
    spots = near.stations
    facing, pair = _by_pair(near)
    here, first = near.here[facing], np.flatnonzero(np.diff(pair, prepend=-1))
    count = np.bincount(pair)
    one, other = spots.cut[here[first]], spots.cut[near.there[facing[first]]]
    width, wanted = near.width[facing], (reach[one] + reach[other])
    run = np.bincount(pair, weights=spots.step[here]) / np.where(one == other, 2, 1)
    narrow = _narrow(width, pair, first, count)
    lacking = (wanted[pair] - width) * near.flat[facing] / width
    apart_mm = -_narrow(-lacking, pair, first, count)
    middle = spots.point[here[first + count // 2]]
    length = np.bincount(spots.cut, weights=spots.step)
    least = np.minimum(STRIP_RUN_MM, STRIP_RUN_SHARE * np.minimum(*length[[one, other]]))
    for i in np.flatnonzero(run >= np.maximum(least, STRIP_SLENDER * narrow)):
        yield Strip(
            int(one[i]),
            int(other[i]),
            float(run[i]),
            float(narrow[i]),
            float(wanted[i]),
            float(apart_mm[i]),
            middle[i],
        )


def _by_pair(near: Alongside) -> tuple[Ints, Ints]:
    """Sort facings by the pair of their cuts, and number the pairs; single ones are left out.

    Every station of a pair counts once, with the first it faces.
    """
    one, other = near.stations.cut[near.here], near.stations.cut[near.there]
    order = np.lexsort((near.here, other, one))
    new = (np.diff(one[order], prepend=-1) != 0) | (np.diff(other[order], prepend=-1) != 0)
    pair = np.cumsum(new) - 1
    keep = (np.bincount(pair, minlength=1) > 1)[pair] if len(pair) else new
    keep &= new | (np.diff(near.here[order], prepend=-1) != 0)
    order, pair = order[keep], pair[keep]
    return order, np.unique(pair, return_inverse=True)[1]


def _narrow(values: Floats, pair: Ints, first: Ints, count: Ints) -> Floats:
    """Give for every pair the value that a tenth of its own stay below."""
    order = np.lexsort((values, pair))
    return np.asarray(values[order[first + (NARROW * count).astype(np.intp)]])


def _severity(layout: Layout, strip: Strip) -> Severity:
    depths = [layout.cuts[i].depth_mm for i in (strip.one, strip.other)]
    share = strip.width_mm / strip.wanted_mm
    if sum(depths) / 2 >= DEEP_MM.value and share < STRIP_STOP_SHARE.value:
        return "stop"
    if max(depths) <= SHALLOW_MM.value and share >= STRIP_WARN_SHARE.value:
        return "note"
    return "warning"


def _finding(
    layout: Layout, worst: Strip, found: list[Strip], severity: Severity, whole: bool
) -> Finding:
    one, other = layout.cuts[worst.one], layout.cuts[worst.other]
    spot = where(layout.loaf, worst.middle)
    message = say.narrow_strip(one, other, worst.width_mm, worst.wanted_mm, spot)
    shallower = worst.width_mm / STRIP_PER_DEPTH.value
    figures = {
        "count": len(found),
        "width_mm": worst.width_mm,
        "wanted_mm": worst.wanted_mm,
        "run_mm": worst.run_mm,
        "apart_mm": worst.apart_mm,
        "depth_mm": shallower,
    }
    touched = tuple(sorted({i for strip in found for i in (strip.one, strip.other)}))
    place = max(one.place, other.place)
    message += likewise(len(found), whole)
    hint = say.FEWER_OR_SHALLOWER
    offers = _offers(layout, worst, found, touched)
    return Finding("strips", severity, message, hint, place, figures, touched, offers=tuple(offers))


def _offers(
    layout: Layout, worst: Strip, found: list[Strip], touched: tuple[int, ...]
) -> Iterator[Offer]:
    """Offer to move the cuts apart, or to cut them shallower, floored to a tenth of a mm."""
    by = half_up(worst.apart_mm)

    def moved() -> tuple[Change, ...]:
        pairs = [(s.one, s.other, way_to(layout.cuts[s.other].line, s.middle)) for s in found]
        return (parted(layout, pairs, by),)

    if worst.one != worst.other:
        yield Offer(say.MOVE_FARTHER_APART(by=by), layout, moved)
    depth = float(np.floor(min(s.width_mm for s in found) / STRIP_PER_DEPTH.value * 10) / 10)
    told = say.THEM_NO_DEEPER(depth=depth)
    yield Offer(told, layout, lambda: (no_deeper(layout, touched, depth),))
