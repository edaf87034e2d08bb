"""Strips, corners and ends of dough that tear when cuts right through are pulled open."""

from collections.abc import Iterator

import numpy as np
import shapely

from scorecraft.checks import telling_cuts as say
from scorecraft.checks.finding import Finding
from scorecraft.checks.telling import both, likewise, told_once
from scorecraft.cuts import Layout
from scorecraft.loaf.areas import on_sheet
from scorecraft.practice import LEAST_STRIP_MM, PULLED_SHARE

MEET_MM = 0.5
"""Cuts nearer to each other than this meet."""


def tears(layout: Layout) -> list[Finding]:
    """Find dough between cuts right through, or beside the rim, that does not hold the pull."""
    through = [index for index, cut in enumerate(layout.cuts) if cut.through]
    if not through:
        return []
    lines = np.array([shapely.LineString(layout.cuts[i].line) for i in through], dtype=object)
    return [
        *_cut_out(layout, through),
        *_between(layout, through, lines),
        *_beside_rim(layout, through, lines),
        *_pulled_too_far(layout, through),
    ]


def _cut_out(layout: Layout, through: list[int]) -> Iterator[Finding]:
    """Tell cuts right through that close on themselves."""
    for index in through:
        cut = layout.cuts[index]
        if np.allclose(cut.line[0], cut.line[-1]):
            said = say.FALLS_OUT(cut=cut)
            yield Finding("tears", "stop", said, say.LEAVE_OPEN, cut.place, {}, (index,))


def _between(layout: Layout, through: list[int], lines: np.ndarray) -> Iterator[Finding]:
    """Tell pairs of cuts that meet, or leave a narrow strip: once for each sort of pair."""
    least = LEAST_STRIP_MM.value
    one, other = shapely.STRtree(lines).query(lines, predicate="dwithin", distance=least)
    pairs = np.array([(a, b) for a, b in zip(one, other, strict=True) if a < b]).reshape(-1, 2)
    if not len(pairs):
        return
    wide = shapely.distance(lines[pairs[:, 0]], lines[pairs[:, 1]])
    cuts = [(through[a], through[b]) for a, b in pairs]
    keys = [
        (layout.cuts[a].family, layout.cuts[b].family, bool(w < MEET_MM))
        for (a, b), w in zip(cuts, wide, strict=True)
    ]
    for worst, found in told_once(keys, -wide):
        first, second = (layout.cuts[index] for index in cuts[worst])
        width = float(wide[worst])
        pair = both(first, second)
        corner = width < MEET_MM
        said = say.CORNER(cuts=pair) if corner else say.STRIP(cuts=pair, wide=width)
        about = tuple(sorted({index for k in found for index in cuts[k]}))
        figures = {"count": float(len(found)), "strip_mm": width}
        yield Finding(
            "tears", "warning", said + likewise(len(found)), say.LEAVE_STRIP(least=least),
            first.place, figures, about,
        )  # fmt: skip


def _beside_rim(layout: Layout, through: list[int], lines: np.ndarray) -> Iterator[Finding]:
    """Tell cuts that leave a narrow strip at the rim; those that run over it are told elsewhere."""
    dough, least = on_sheet(layout.loaf), LEAST_STRIP_MM.value
    left = shapely.distance(lines, dough.boundary)
    near = np.flatnonzero((left < least) & shapely.covers(dough, lines))
    keys = [layout.cuts[through[k]].family for k in near]
    for worst, found in told_once(keys, -left[near]):
        cut, width = layout.cuts[through[near[worst]]], float(left[near[worst]])
        about = tuple(through[near[k]] for k in found)
        said = say.EDGE(cut=cut, wide=width) + likewise(len(found))
        figures = {"count": float(len(found)), "strip_mm": width}
        hint = say.LEAVE_EDGE(least=least)
        yield Finding("tears", "warning", said, hint, cut.place, figures, about)


def _pulled_too_far(layout: Layout, through: list[int]) -> Iterator[Finding]:
    """Tell cuts that are pulled wider than their ends hold."""
    most = PULLED_SHARE.value * layout.lengths_mm[through]
    pulled = np.array([layout.cuts[i].pulled_mm for i in through])
    over = np.flatnonzero(pulled > most + 1e-6)
    keys = [layout.cuts[through[k]].family for k in over]
    for worst, found in told_once(keys, (pulled - most)[over]):
        index = through[over[worst]]
        cut, length = layout.cuts[index], float(layout.lengths_mm[index])
        widest = float(most[over[worst]])
        figures = {"count": float(len(found)), "pulled_mm": cut.pulled_mm, "most_mm": widest}
        said = say.PULLED_TOO_FAR(cut=cut, length=length) + likewise(len(found))
        hint = say.PULL_LESS(most=widest, length=cut.pulled_mm / PULLED_SHARE.value)
        about = tuple(through[over[k]] for k in found)
        yield Finding("tears", "warning", said, hint, cut.place, figures, about)
