"""Cures are made on the layout and checked before they are told."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

import shapely

from scorecraft.checks import run
from scorecraft.checks.finding import Finding
from scorecraft.cuts import Cut, Layout, Line
from scorecraft.errors import Place
from scorecraft.practice import STRIP_PER_DEPTH

ADDED = "added cut"
"""What a cut that a cure adds is called until it stands in the pattern."""


def with_cuts(layout: Layout, lines: Sequence[Line], depth_mm: float, blade_rad: float) -> Layout:
    """Add expansion cuts along lines (N, 2), sheet mm, as statements of their own."""
    family = max((cut.family for cut in layout.cuts), default=-1) + 1
    figure = max((cut.figure for cut in layout.cuts), default=-1) + 1
    place = max((cut.place for cut in layout.cuts), default=Place(layout.title, 1, 1))
    added = tuple(
        Cut(line, ADDED, ADDED, figure + k, family + k, depth_mm, blade_rad, "expansion", place)
        for k, line in enumerate(lines)
    )
    return replace(layout, cuts=(*layout.cuts, *added))


def without_light_cuts(
    layout: Layout, lines: Sequence[Line], depth_mm: float
) -> tuple[Layout, int]:
    """Leave out the decorative cuts too near to lines cut to a depth, and count them.

    As near as a strip of dough between them would be too narrow.
    """
    deep = shapely.MultiLineString(list(lines))
    kept = tuple(
        cut
        for cut in layout.cuts
        if cut.kind == "expansion"
        or shapely.distance(shapely.LineString(cut.line), deep)
        > STRIP_PER_DEPTH.value * (cut.depth_mm + depth_mm) / 2
    )
    return replace(layout, cuts=kept), len(layout.cuts) - len(kept)


def sound(before: Sequence[Finding], changed: Layout) -> bool:
    """Whether a changed layout has no stop and no warning more than there were `before`."""
    stops, graves = _tally(before)
    new_stops, new_graves = _tally(run(changed))
    return new_stops <= stops and new_graves <= graves


def _tally(findings: Sequence[Finding]) -> tuple[Counter[str], Counter[str]]:
    """Count the places of stops, and of stops and warnings, check by check."""
    stops, graves = Counter[str](), Counter[str]()
    for finding in findings:
        count = int(finding.figures.get("count", 1.0))
        if finding.severity != "note":
            graves[finding.check] += count
        if finding.severity == "stop":
            stops[finding.check] += count
    return stops, graves
