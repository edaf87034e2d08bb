"""Cuts that run off the loaf, or nearer to its rim than they should."""

from itertools import pairwise

import numpy as np
import shapely
from numpy.typing import NDArray

from scorecraft.checks.finding import Finding, Severity
from scorecraft.checks.telling import enough, likewise, size, told_once, where
from scorecraft.cuts import Cut, Layout
from scorecraft.practice import RIM_MARGIN_MM

OFF_LOAF_MM = 0.5
"""A cut may miss the loaf or a margin by this much."""
Array = NDArray[np.float64]


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


def _excess(layout: Layout) -> tuple[Array, Array]:
    """How far each cut runs beyond the rim (mm; less than 0 inside), and its furthest point."""
    points = np.concatenate([cut.line for cut in layout.cuts])
    starts = np.cumsum([0] + [len(cut.line) for cut in layout.cuts])
    theta = np.arctan2(points[:, 1], points[:, 0])
    beyond = np.hypot(points[:, 0], points[:, 1]) - layout.loaf.reach(theta)
    furthest = [a + int(np.argmax(beyond[a:b])) for a, b in pairwise(starts)]
    return beyond[furthest], points[furthest]


def _severity(cut: Cut, over: float) -> Severity:
    if over > OFF_LOAF_MM:
        return "stop"
    return "warn" if cut.kind == "expansion" else "note"


def _finding(
    layout: Layout,
    found: NDArray[np.intp],
    worst: int,
    over: Array,
    furthest: Array,
    severity: Severity,
) -> Finding:
    cut = layout.cuts[worst]
    too_far = float(over[worst]) + RIM_MARGIN_MM.value
    place = where(layout.loaf, furthest[worst])
    far = float(over[worst])
    if severity == "stop":
        message = f"{cut.name} runs {size(far)} off the loaf {place}"
    else:
        message = f"{cut.name} comes within {size(max(0.0, -far))} of the rim {place}"
    hint = f"move it {enough(too_far)} toward the crown"
    trim = _trim(layout, cut)
    if trim is not None:
        hint = f"shorten it by {enough(trim)}, or {hint}"
    figures = {"count": len(found), "over_mm": far, "move_mm": too_far}
    if trim is not None:
        figures["shorten_mm"] = trim
    message += likewise(len(found))
    return Finding("rim", severity, message, hint, cut.place, figures, tuple(found.tolist()))


def _trim(layout: Layout, cut: Cut) -> float | None:
    """Length (mm) to take off one end so that the cut keeps the margin; None if that is no cure."""
    ring = layout.loaf.sheet_rim(720)
    away = np.linalg.norm(ring, axis=1, keepdims=True)
    inside = shapely.Polygon(ring * (1 - RIM_MARGIN_MM.value / away))
    line = shapely.LineString(cut.line)
    kept = shapely.intersection(line, inside)
    if kept.geom_type != "LineString" or kept.is_empty or not _shares_end(line, kept):
        return None
    return float(line.length - kept.length)


def _shares_end(line: shapely.LineString, kept: shapely.LineString) -> bool:
    """Whether what is kept begins or ends where the line does."""
    return any(shapely.distance(shapely.Point(line.coords[i]), kept) < 1e-6 for i in (0, -1))
