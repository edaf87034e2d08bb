"""Strips of dough between two cuts that are too narrow for how deep the cuts are."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from scorecraft.checks.alongside import Alongside, alongside
from scorecraft.checks.finding import Finding, Severity
from scorecraft.checks.telling import enough, likewise, size, told_once, where
from scorecraft.cuts import Cut, Layout
from scorecraft.practice import (
    DEEP_MM,
    SHALLOW_MM,
    STRIP_PARALLEL_DEG,
    STRIP_PER_DEPTH,
    STRIP_RUN_MM,
    STRIP_RUN_SHARE,
    STRIP_SLENDER,
    STRIP_STOP_SHARE,
    STRIP_WARN_SHARE,
    THINNEST_STRIP_MM,
)

Array = NDArray[np.float64]

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
    middle: Array


def strips(layout: Layout) -> list[Finding]:
    """Find strips of dough narrower than the depth of the cuts beside them allows.

    Cuts that come together at an angle, as at the tip of a leaf or where a vein meets its midrib,
    leave a point and no strip; a strip counts where both cuts run side by side.
    """
    found = narrow_strips(layout)
    grave = [_severity(layout, strip) for strip in found]
    keys = [
        (*sorted((layout.cuts[s.one].family, layout.cuts[s.other].family)), severity)
        for s, severity in zip(found, grave, strict=True)
    ]
    lacking = np.array([1 - s.width_mm / s.wanted_mm for s in found])
    return [
        _finding(layout, found[worst], [found[i] for i in members], grave[worst])
        for worst, members in told_once(keys, lacking)
    ]


def narrow_strips(layout: Layout) -> list[Strip]:
    """Give every strip that is narrower than it should be, once for a pair of cuts."""
    if not layout.cuts:
        return []
    depth = np.array([cut.depth_mm for cut in layout.cuts])
    reach = np.maximum(STRIP_PER_DEPTH.value * depth, THINNEST_STRIP_MM.value) / 2
    near = alongside(layout, reach, STRIP_PARALLEL_DEG.value)
    length = np.bincount(near.stations.cut, weights=near.stations.step)
    best: dict[tuple[int, int], Strip] = {}
    for chosen in _by_pair(near):
        strip = _strip(near, chosen, reach)
        if not _is_strip(strip, float(min(length[strip.one], length[strip.other]))):
            continue
        key = (min(strip.one, strip.other), max(strip.one, strip.other))
        if key not in best or strip.run_mm > best[key].run_mm:
            best[key] = strip
    return list(best.values())


def _by_pair(near: Alongside) -> list[NDArray[np.intp]]:
    """Sort facings by the pair of their cuts; single ones are no strip and left out."""
    one, other = near.stations.cut[near.here], near.stations.cut[near.there]
    order = np.lexsort((other, one))
    one, other = one[order], other[order]
    new = (np.diff(one, prepend=-1) != 0) | (np.diff(other, prepend=-1) != 0)
    groups = np.split(order, np.flatnonzero(new)[1:])
    return [group for group in groups if len(group) > 1]


def _strip(near: Alongside, chosen: NDArray[np.intp], reach: Array) -> Strip:
    spots = near.stations
    here, first = np.unique(near.here[chosen], return_index=True)
    one, other = int(spots.cut[here[0]]), int(spots.cut[near.there[chosen[0]]])
    width, wanted = near.width[chosen[first]], float(reach[one] + reach[other])
    return Strip(
        one,
        other,
        float(spots.step[here].sum()) / (2 if one == other else 1),
        _narrow(width),
        wanted,
        -_narrow((width - wanted) * near.flat[chosen[first]] / width),
        spots.point[here[len(here) // 2]],
    )


def _narrow(values: Array) -> float:
    """Give the value that a tenth of them stays below."""
    return float(np.sort(values)[int(NARROW * len(values))])


def _is_strip(strip: Strip, shorter_mm: float) -> bool:
    """Whether the cuts run side by side for long enough to leave a strip."""
    least = min(STRIP_RUN_MM.value, STRIP_RUN_SHARE.value * shorter_mm)
    return strip.run_mm >= max(least, STRIP_SLENDER.value * strip.width_mm)


def _severity(layout: Layout, strip: Strip) -> Severity:
    depths = [layout.cuts[i].depth_mm for i in (strip.one, strip.other)]
    share = strip.width_mm / strip.wanted_mm
    if sum(depths) / 2 >= DEEP_MM.value and share < STRIP_STOP_SHARE.value:
        return "stop"
    if max(depths) <= SHALLOW_MM.value and share >= STRIP_WARN_SHARE.value:
        return "note"
    return "warn"


def _finding(layout: Layout, worst: Strip, found: list[Strip], severity: Severity) -> Finding:
    one, other = layout.cuts[worst.one], layout.cuts[worst.other]
    message = (
        f"only {size(worst.width_mm)} of dough between {_between(one, other)} "
        f"{where(layout.loaf, worst.middle)}: {size(worst.wanted_mm)} hold at that depth"
    )
    hint = f"move them {enough(worst.apart_mm)} apart"
    shallower = worst.width_mm / STRIP_PER_DEPTH.value
    if worst.width_mm >= THINNEST_STRIP_MM.value:
        hint += f", or cut them no deeper than {shallower:.1f} mm"
    figures = {
        "count": len(found),
        "width_mm": worst.width_mm,
        "wanted_mm": worst.wanted_mm,
        "run_mm": worst.run_mm,
        "apart_mm": worst.apart_mm,
        "depth_mm": shallower,
    }
    touched = sorted({i for strip in found for i in (strip.one, strip.other)})
    lines = tuple(layout.cuts[i].line for i in touched)
    place = max(one.place, other.place)
    return Finding("strips", severity, message + likewise(len(found)), hint, place, figures, lines)


def _between(one: Cut, other: Cut) -> str:
    """Name the two cuts beside a strip."""
    if one is other:
        return f"the turns of {one.name}"
    if one.name == other.name:
        return f"{one.name} and the next"
    return f"{one.name} and {other.name}"
