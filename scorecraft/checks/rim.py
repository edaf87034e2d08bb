"""Cuts that run off the loaf, or nearer to its rim than they should."""

import math
from collections.abc import Iterator
from itertools import pairwise

import numpy as np
import shapely

from scorecraft.arrays import Floats, Ints, Line
from scorecraft.checks import telling_cuts as say
from scorecraft.checks.changes import moved, shortened
from scorecraft.checks.finding import Finding, Offer, Severity
from scorecraft.checks.telling import likewise, told_once
from scorecraft.cuts import Cut, Layout
from scorecraft.loaf.dome import Loaf
from scorecraft.loaf.places import clock, where
from scorecraft.practice import RIM_MARGIN_MM
from scorecraft.units import half_up

STEP_MM = 2.0
"""Lines are looked at so closely where a loaf has a hole."""
OFF_LOAF_MM = 0.5
"""A cut may miss the loaf or a margin by this much."""


def rim(layout: Layout) -> list[Finding]:
    """Find cuts that end off the loaf or within the margin above its rim."""
    if not layout.cuts:
        return []
    over, furthest = _excess(layout)
    wrong = np.flatnonzero(over + RIM_MARGIN_MM.value > OFF_LOAF_MM)
    grave = [_severity(layout.cuts[i], over[i]) for i in wrong]
    keys = [(layout.cuts[i].family, s) for i, s in zip(wrong, grave, strict=True)]
    return [
        _finding(layout, wrong[found], int(wrong[worst]), over, furthest, grave[worst])
        for worst, found in told_once(keys, over[wrong])
    ]


def _excess(layout: Layout) -> tuple[Floats, Floats]:
    """How far each cut runs beyond the rim (mm; less than 0 inside), and its furthest point."""
    lines = [cut.line for cut in layout.cuts]
    if layout.loaf.hole is not None:  # the way across it has no point of its own in it
        strings = [shapely.segmentize(shapely.LineString(line), STEP_MM) for line in lines]
        lines = [shapely.get_coordinates(each) for each in strings]
    points = np.concatenate(lines)
    starts = np.cumsum([0] + [len(line) for line in lines])
    theta = np.arctan2(points[:, 1], points[:, 0])
    away = np.hypot(points[:, 0], points[:, 1])
    beyond = away - layout.loaf.reach(theta)
    if layout.loaf.hole is not None:
        beyond = np.maximum(beyond, layout.loaf.hole.radius(theta) - away)
    furthest = [a + int(np.argmax(beyond[a:b])) for a, b in pairwise(starts)]
    return beyond[furthest], points[furthest]


def _severity(cut: Cut, over: float) -> Severity:
    if over > OFF_LOAF_MM:
        return "stop"
    return "warning" if cut.kind == "expansion" else "note"


def _finding(
    layout: Layout,
    found: Ints,
    worst: int,
    over: Floats,
    furthest: Floats,
    severity: Severity,
) -> Finding:
    cut = layout.cuts[worst]
    too_far = float(over[worst]) + RIM_MARGIN_MM.value
    place = where(layout.loaf, furthest[worst])
    far = float(over[worst])
    if severity == "stop" and at_hole(layout.loaf, furthest[worst]):
        hours = clock(math.atan2(*furthest[worst][::-1]))
        message = say.INTO_THE_HOLE(cut=cut, far=far, place=hours)
    elif severity == "stop":
        message = say.OFF_THE_LOAF(cut=cut, far=far, place=place)
    else:
        message = say.near_the_rim(cut, -far, place)
    trim = _trim(layout, cut)
    figures = {"count": len(found), "over_mm": far, "move_mm": too_far}
    if trim is not None:
        figures["shorten_mm"] = trim
    message += likewise(len(found))
    offers = tuple(_offers(layout, found, furthest, trim, too_far))
    about = tuple(found.tolist())
    return Finding("rim", severity, message, say.RIM_FIX, cut.place, figures, about, offers=offers)


def _offers(
    layout: Layout, found: Ints, furthest: Floats, trim: float | None, too_far: float
) -> Iterator[Offer]:
    """Offer to shorten the cuts, or to move their figures toward the crown."""
    if trim is not None:
        less = half_up(trim)
        last = [_ends_with(layout.cuts[i].line, furthest[i]) for i in found]
        ends = list(zip(found.tolist(), last, strict=True))
        yield Offer(say.SHORTEN_IT(by=less), layout, lambda: (shortened(ends, less),))
    step = half_up(too_far)
    inner = [at_hole(layout.loaf, furthest[i]) for i in found]
    ways = {
        layout.cuts[i].figure: furthest[i]
        * (step if out else -step)
        / max(float(np.hypot(*furthest[i])), 1e-9)
        for i, out in zip(found, inner, strict=True)
    }
    told = (say.MOVE_OUT if all(inner) else say.MOVE_IN)(by=step)
    yield Offer(told, layout, lambda: (moved(layout, ways),))


def at_hole(loaf: Loaf, point: Floats) -> bool:
    """Whether a sheet point is nearer to the hole of a ring than to its rim."""
    return loaf.hole is not None and bool(loaf.share(point) < 0)


def _ends_with(line: Line, point: Floats) -> bool:
    """Whether a point lies nearer to the last end of a line than to its first."""
    first, last = (float(np.hypot(*(point - line[end]))) for end in (0, -1))
    return last < first


def _trim(layout: Layout, cut: Cut) -> float | None:
    """Length (mm) to take off one end so that the cut keeps the margin; None if that is no cure."""
    ring = layout.loaf.sheet_rim(720)
    away = np.linalg.norm(ring, axis=1, keepdims=True)
    inside = shapely.Polygon(ring * (1 - RIM_MARGIN_MM.value / away))
    if layout.loaf.hole is not None:
        hole = shapely.Polygon(layout.loaf.hole.points(720))
        inside = shapely.difference(inside, hole.buffer(RIM_MARGIN_MM.value))
    line = shapely.LineString(cut.line)
    kept = shapely.intersection(line, inside)
    if kept.geom_type != "LineString" or kept.is_empty or not _shares_end(line, kept):
        return None
    return float(line.length - kept.length)


def _shares_end(line: shapely.LineString, kept: shapely.LineString) -> bool:
    """Whether what is kept begins or ends where the line does."""
    return any(shapely.distance(shapely.Point(line.coords[i]), kept) < 1e-6 for i in (0, -1))
