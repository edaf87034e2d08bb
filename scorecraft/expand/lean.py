"""How the blade is held where the pattern does not say, and to which side slanted ones lean.

Common practice, no source: single expansion slashes are cut at a slant and lean outward, so that
the edge slips under the skin of the higher side; cuts that cross others, and rays from the crown,
are cut upright. The slanted cuts of one figure (the outlines of a leaf) lean away from its middle.
"""

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import shapely

from scorecraft.arrays import Floats
from scorecraft.cuts import ON_TOP_MM, Cut
from scorecraft.loaf.aside import aside
from scorecraft.loaf.dome import Loaf
from scorecraft.practice import DECORATIVE_BLADE_DEG, MOST_TILT_DEG, UPRIGHT_DEG

RAY_SHARE = 0.05
"""A cut that strays no more than this share of its length from a line to the crown is a ray."""


def held(cuts: Sequence[Cut], unsaid: Sequence[int], loaf: Loaf) -> tuple[Cut, ...]:
    """Settle how blades are held: upright where practice says so, slanted ones with their side.

    `unsaid` are the indexes of the slanted cuts whose blade the pattern does not tell.
    """
    upright = math.radians(DECORATIVE_BLADE_DEG.value)
    new = list(cuts)
    for i in _crossed(cuts, unsaid) | {i for i in unsaid if _is_ray(cuts[i])}:
        new[i] = replace(cuts[i], blade_rad=upright)
    slanted = [i for i, cut in enumerate(new) if cut.blade_rad < math.radians(UPRIGHT_DEG.value)]
    middles = _middles([new[i] for i in slanted])
    for i in slanted:
        new[i] = replace(new[i], rises=_rising(new[i], middles.get(new[i].figure), loaf))
    return tuple(new)


def _crossed(cuts: Sequence[Cut], unsaid: Sequence[int]) -> set[int]:
    """Find which of some cuts cross another expansion cut."""
    if not unsaid:
        return set()
    deep = [i for i, cut in enumerate(cuts) if cut.kind == "expansion"]
    lines = np.array([shapely.LineString(cuts[i].line) for i in deep], dtype=object)
    tree = shapely.STRtree(lines)
    asked = [shapely.LineString(cuts[i].line) for i in unsaid]
    one, other = tree.query(asked, predicate="crosses")
    pairs = zip(one.tolist(), other.tolist(), strict=True)
    return {unsaid[i] for i, k in pairs if deep[k] != unsaid[i]}


def _is_ray(cut: Cut) -> bool:
    """Whether a cut points at the crown and does not reach beyond it."""
    start, end = cut.line[0], cut.line[-1]
    along = end - start
    length = max(float(np.hypot(*along)), 1e-9)
    aside = float(np.abs(along[0] * cut.line[:, 1] - along[1] * cut.line[:, 0]).max()) / length
    return aside < RAY_SHARE * length and float(start @ along) * float(end @ along) >= 0


def _middles(cuts: Sequence[Cut]) -> dict[int, Floats]:
    """Give the middle of each figure of several cuts: those lean away from it."""
    points: dict[int, list[Floats]] = {}
    for cut in cuts:
        points.setdefault(cut.figure, []).append(cut.line.mean(axis=0))
    return {figure: np.mean(each, axis=0) for figure, each in points.items() if len(each) > 1}


def _rising(cut: Cut, middle: Floats | None, loaf: Loaf) -> int:
    """Tell on which side of the stroke the lip rises: 1 left, -1 right; 0 is for the hand to say.

    The handle leans to the other side, away from the figure's middle, else from the top of the
    loaf; where it would touch the bench it leans the other way. Scissors point to the side to
    which the ends of their cut bend, and lift the piece there.
    """
    if cut.hinge_mm is not None:
        return cut.side_of((cut.line[0] + cut.line[-1]) / 2, 0.0)
    side = 0 if middle is None else cut.side_of(middle)
    side = side or cut.side_of(_top(cut, loaf), ON_TOP_MM)
    if not side:
        return 0
    stands, other = _stands(cut, side, loaf)
    too_low = stands < math.cos(math.radians(MOST_TILT_DEG.value))
    return -side if too_low and other > stands else side


def _top(cut: Cut, loaf: Loaf) -> Floats:
    """Give the nearest place along the top of the loaf: the crown, or the ridge of a long loaf."""
    ridge = max(loaf.length_mm - loaf.width_mm, 0.0) / 2
    return np.array([0.0, np.clip(cut.line[:, 1].mean(), -ridge, ridge)])


def _stands(cut: Cut, side: int, loaf: Loaf) -> tuple[float, float]:
    """How upright a handle stands that leans away from a side, and toward it.

    It is the cosine of its tilt half way along.
    """
    ends = shapely.line_interpolate_point(
        shapely.LineString(cut.line), [0.49, 0.5, 0.51], normalized=True
    )
    before, at, after = loaf.surface(loaf.sheet_to_plan(shapely.get_coordinates(ends)))
    normal = loaf.normal(at[:2])
    (left,) = aside(normal[None], (after - before)[None])
    left /= max(float(np.linalg.norm(left)), 1e-12)
    upright = math.sin(cut.blade_rad) * float(normal[2])
    leaning = math.cos(cut.blade_rad) * side * float(left[2])
    return upright - leaning, upright + leaning
