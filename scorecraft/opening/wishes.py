"""Wished openings of a layout: the depths that give them, as far as they are within reach."""

from math import floor

import numpy as np

from scorecraft.cuts import Layout
from scorecraft.errors import ScorecraftError
from scorecraft.frozen import dataclass, replace
from scorecraft.loaf.skin import Skin
from scorecraft.opening.depth import Wanted, depths_for, to_hand
from scorecraft.opening.lip import slant_of
from scorecraft.opening.panel_size import panel_for
from scorecraft.opening.predict import sheet_of
from scorecraft.practice import DEPTH_STEP_MM

OPENING_WISH_PANELS = 750.0
"""About so many panels while depths are sought; a third more change them in one pattern of six."""


@dataclass(frozen=True, slots=True)
class Met:
    """A layout whose cuts have the depths that were wished for, and how far that went.

    `found` tells what each wish came to; None where nothing was wished for, or where depths could
    not be sought, for the reason in `refused`.
    """

    layout: Layout
    found: Wanted | None = None
    refused: ScorecraftError | None = None


def meet(layout: Layout, skin: Skin) -> Met:
    """Give every cut with a wished opening its depth, all together, rounded to what a hand can do.

    No wish asks for a cut so deep that the depth check tells of it. Where they cannot be sought the
    cuts keep the depths they have.
    """
    wished = np.array([np.nan if c.opens_mm is None else c.opens_mm for c in layout.cuts])
    if np.isnan(wished).all():
        return Met(layout)
    sheet = sheet_of(layout, skin)
    lines = [cut.line for cut in layout.cuts]
    step = DEPTH_STEP_MM.value
    try:
        found = depths_for(
            lines,
            wished,
            [cut.depth_mm for cut in layout.cuts],
            strain=sheet.strain,
            skin_mm=sheet.skin_mm,
            inside=sheet.inside,
            slant=[slant_of(cut) for cut in layout.cuts],
            area_mm2=sheet.area_mm2,
            bed=sheet.bed,
            panel_mm=panel_for(lines, OPENING_WISH_PANELS),
            deepest_mm=max(step, step * floor(layout.deep_from_mm / step)),
        )
    except ScorecraftError as error:
        return Met(layout, refused=error)
    depths = to_hand(found.depth_mm)
    cuts = tuple(
        replace(cut, depth_mm=float(depth)) if cut.opens_mm is not None else cut
        for cut, depth in zip(layout.cuts, depths, strict=True)
    )
    return Met(replace(layout, cuts=cuts), found)
