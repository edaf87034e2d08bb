"""Cures are made on the layout and checked before they are told."""

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from itertools import islice

import numpy as np
import shapely

from scorecraft.arrays import Flags, Line
from scorecraft.checks.cure import Cure
from scorecraft.checks.finding import Finding, Offer
from scorecraft.checks.linework import strings
from scorecraft.checks.telling import either
from scorecraft.cuts import Layout
from scorecraft.practice import RIM_MARGIN_MM, STRIP_PER_DEPTH

MOST_TRIED_FINDINGS = 8
"""The cures of so many findings of a check are tried, of the weightiest."""
MOST_CURES = 2
"""So many cures that hold are told of a finding: a choice."""
MOST_TRIED_CUTS = 1000
"""Cures of layouts with more cuts are not tried: each would take longer than a look is worth."""

Look = Callable[[Layout], list[Finding]]


def tried(
    layout: Layout, found: Sequence[Finding], every: Sequence[Finding], looks: Mapping[str, Look]
) -> list[Finding]:
    """Give what one check found the offers that hold as cures and hints, or leave the plain words.

    Offers of the weightiest are tried against all findings there are (`every`), with `looks` at a
    layout by the name of their check; those of layouts of more than MOST_TRIED_CUTS are not.
    """
    may = MOST_TRIED_FINDINGS if len(layout.cuts) <= MOST_TRIED_CUTS else 0
    done = []
    for number, finding in enumerate(sorted(found, key=lambda each: each.weight)):
        offers = finding.offers if number < may else ()
        good = (each for each in offers if holds(each, layout, finding, every, looks))
        cures = tuple(Cure(each.told, each.changes()) for each in islice(good, MOST_CURES))
        hint = either(cures) if cures else finding.hint
        done.append(replace(finding, hint=hint, cures=finding.cures or cures, offers=()))
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


def in_the_way(layout: Layout, lines: Sequence[Line], depth_mm: float) -> tuple[int, ...]:
    """List the decorative cuts too near to lines cut to a depth.

    As near as a strip of dough between them would be too narrow.
    """
    near = np.flatnonzero(_too_near(layout, lines, depth_mm)).tolist()
    return tuple(i for i in near if layout.cuts[i].kind == "decorative")


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
    depths = layout.depths_mm
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
