"""Cures are made on the layout and checked before they are told."""

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

import numpy as np
import shapely

from scorecraft.arrays import Flags, Line
from scorecraft.checks.finding import Finding, Offer
from scorecraft.checks.linework import strings
from scorecraft.cuts import Cut, Layout
from scorecraft.errors import Place
from scorecraft.practice import RIM_MARGIN_MM, STRIP_PER_DEPTH

MOST_TRIED_FINDINGS = 8
"""The cures of so many findings of a check are tried, of the weightiest."""
MOST_TRIED_CUTS = 1000
"""Cures of layouts with more cuts are not tried: each would take longer than a look is worth."""

Look = Callable[[Layout], list[Finding]]

ADDED = "added cut"
"""What a cut that a cure adds is called until it stands in the pattern."""


def tried(
    layout: Layout, found: Sequence[Finding], every: Sequence[Finding], looks: Mapping[str, Look]
) -> list[Finding]:
    """Give what one check found the first offers that hold as hints, or leave the plain words.

    Offers of the weightiest are tried against all findings there are (`every`), with `looks` at a
    layout by the name of their check; those of layouts of more than MOST_TRIED_CUTS are not.
    """
    may = MOST_TRIED_FINDINGS if len(layout.cuts) <= MOST_TRIED_CUTS else 0
    done = []
    for number, finding in enumerate(sorted(found, key=lambda each: each.weight)):
        offers = finding.offers if number < may else ()
        good = (each.told for each in offers if holds(each, layout, finding, every, looks))
        done.append(replace(finding, hint=next(good, finding.hint), offers=()))
    return done


def holds(
    offer: Offer,
    layout: Layout,
    finding: Finding,
    before: Sequence[Finding],
    looks: Mapping[str, Look],
) -> bool:
    """Whether a cure takes its finding away, and brings no stop and no warning in any check.

    The check that found it looks first, then the others, until one speaks against it.
    """
    made = offer.layout()
    after = looks[finding.check](made)
    gone = _count(made, after, _families(layout, finding)) <= _count(
        layout, [each for each in before if each.check == finding.check], _families(layout, finding)
    ) - int(finding.figures.get("count", 1.0))
    others = (look(made) for name, look in looks.items() if name != finding.check)
    return gone and no_graver(before, after) and all(no_graver(before, each) for each in others)


def _families(layout: Layout, finding: Finding) -> frozenset[int]:
    return frozenset(layout.cuts[i].family for i in finding.cuts)


def _count(layout: Layout, findings: Sequence[Finding], families: frozenset[int]) -> int:
    """Count the places that findings tell of the same statements."""
    same = (each for each in findings if _families(layout, each) == families)
    return sum(int(each.figures.get("count", 1.0)) for each in same)


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
    near = _too_near(layout, lines, depth_mm)
    kept = tuple(
        cut
        for cut, in_the_way in zip(layout.cuts, near, strict=True)
        if cut.kind == "expansion" or not in_the_way
    )
    return replace(layout, cuts=kept), len(layout.cuts) - len(kept)


def has_place(layout: Layout, line: Line, depth_mm: float) -> bool:
    """Whether one more cut finds its place: no other cut too near, and as far from the rim."""
    points = np.asarray(line)
    reach = layout.loaf.reach(np.arctan2(points[:, 1], points[:, 0]))
    inside = np.hypot(points[:, 0], points[:, 1]) <= reach - RIM_MARGIN_MM.value
    return bool(inside.all()) and not _too_near(layout, [line], depth_mm).any()


def no_graver(before: Sequence[Finding], after: Sequence[Finding]) -> bool:
    """Whether there is no stop and no warning more `after` a change than `before`, in any check."""
    stops, graves = _tally(before)
    new_stops, new_graves = _tally(after)
    return new_stops <= stops and new_graves <= graves


def _too_near(layout: Layout, lines: Sequence[Line], depth_mm: float) -> Flags:
    """Whether each cut leaves too narrow a strip of dough beside lines cut to a depth."""
    deep = shapely.MultiLineString(list(lines))
    depths = np.array([cut.depth_mm for cut in layout.cuts])
    wanted = STRIP_PER_DEPTH.value * (depths + depth_mm) / 2
    return np.asarray(shapely.distance(strings(layout), deep) <= wanted)


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
