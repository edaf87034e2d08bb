"""The plate: a stencil that is one piece, with no web or bridge thinner than asked for."""

from collections.abc import Iterable, Sequence
from functools import cache

import numpy as np
import shapely

import scorecraft.plate.telling as telling
from scorecraft.arrays import Floats, Line
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass, replace
from scorecraft.plate.attempt import Attempt, Kept, attempt
from scorecraft.plate.body import Body, blank
from scorecraft.plate.bridges import Bridge
from scorecraft.plate.faults import faults
from scorecraft.plate.silhouettes import Silhouettes, beside, silhouettes
from scorecraft.plate.sizes import Sizes, checked
from scorecraft.plate.slits import UNFILLED_WIDER, Slit, slits, widened
from scorecraft.plate.too_fine import LEAST_KEPT, refusal, too_fine
from scorecraft.practice import BRIDGE_MM, SLOT_MM, WEB_MM

LEAST_LOST = 0.1
"""So much of a pattern may be left out before slots are narrowed."""
USUAL = (1.0, 0.84, 0.68, 0.52, 0.4)
"""Parts of the usual slot that are tried, where no width is asked for."""
TURNED_OVER = np.diag([-1.0, 1.0])


@dataclass(frozen=True, slots=True)
class Joint:
    """Where two parts of a plate meet: a letter, and a line (plan mm) from the seam inward."""

    letter: str
    line: Line


@dataclass(frozen=True, slots=True)
class Plate:
    """A plate to cut out, as it lies over the loaf (plan mm, origin under the crown, y up).

    `polygon` is the material that stays: its holes are the `slots`, the slits of the cross-hair
    (`hair`, none where slots leave no room for it) and the hole in the tab. `score_lines` are
    scored and not cut. `widths` are the narrowest and the widest slot (mm), `shown` the parts
    that are there, `left_out` those that were too fine, `unfilled` figures that enclose nothing
    and have slots instead. A mirrored plate is drawn as seen from below. One that is parted
    says which `part` it is (`2 of 4`) and has `joints` with the others.
    """

    polygon: shapely.Polygon
    slots: tuple[shapely.Polygon, ...]
    hair: tuple[shapely.Polygon, ...]
    score_lines: tuple[Line, ...]
    bridges: tuple[Bridge, ...]
    sizes: Sizes
    widths: tuple[float, float]
    shown: tuple[str, ...]
    left_out: tuple[str, ...]
    mirrored: bool = False
    unfilled: tuple[str, ...] = ()
    part: str = ""
    joints: tuple[Joint, ...] = ()


def make_plate(
    layout: Layout,
    *,
    slot_mm: float | None = None,
    bridge_mm: float = BRIDGE_MM.value,
    web_mm: float = WEB_MM.value,
    only: Sequence[str] = (),
    fill: Sequence[str] = (),
    mirrored: bool = False,
) -> Plate:
    """Make the plate of a layout: the cuts of the loaf seen from above, as slots.

    Without `slot_mm` the slots are as wide as usual, or narrower where the pattern is too fine.
    `only` names the figures or parts that are wanted, and each of them must come out well.
    Without it parts that are too fine are left out, as long as most of the pattern stays. `fill`
    names figures that are opened as whole shapes, in place of the slots of their outlines; those
    that enclose nothing have slots, wider ones where there is room.
    Raises UsageError for sizes that cannot be and for a loaf without cuts, ScorecraftError where
    the plate cannot be made, with the nearest slot that works.
    """
    body = blank(layout.loaf)
    sizes = checked(Sizes(SLOT_MM.value if slot_mm is None else slot_mm, bridge_mm, web_mm))
    opened = cache(lambda tried: silhouettes(layout, fill, tried))

    def thinned(tried: Sizes, wider: float = 1.0) -> Thinned:
        whole = opened(tried)
        drawn = slits(layout, slot_mm=tried.slot_mm, only=(*only, *fill) if only else ())
        drawn = widened(layout.cuts, drawn, whole.unfilled, wider)
        if not drawn:
            raise telling.NO_CUTS.usage()
        wanted = beside(drawn, whole.area, web_mm)
        return _thinned(body, wanted, tried, whole, strict=bool(only))

    shares = USUAL if slot_mm is None else (1.0,)
    best = _best(
        thinned(tried, wider)
        for tried in (replace(sizes, slot_mm=share * sizes.slot_mm) for share in shares)
        for wider in ((UNFILLED_WIDER, 1.0) if opened(tried).unfilled else (1.0,))
    )
    if best.bad:
        raise refusal(best.tried, best.bad, best.sizes, lambda tried: not thinned(tried).bad)
    made = _plate(body, best)
    wrong = faults(made.polygon, made.bridges, made.sizes)
    if wrong:
        raise telling.FAULTY(fault=wrong[0]).error()
    return replace(carried(made, TURNED_OVER), mirrored=True) if mirrored else made


@dataclass(frozen=True, slots=True)
class Thinned:
    """An attempt with what is still bad in it, what was left out, and how much that was."""

    tried: Attempt
    sizes: Sizes
    bad: tuple[Kept, ...]
    left_out: tuple[str, ...]
    lost: float
    whole: Silhouettes


def _thinned(
    body: Body, wanted: Sequence[Slit], sizes: Sizes, whole: Silhouettes, *, strict: bool
) -> Thinned:
    """Leave out what is too fine until the rest is well, or until too little is left."""
    asked = sum(slit.line.length for slit in wanted)
    left_out: list[str] = []
    lost = 0.0
    while True:
        tried = attempt(body, wanted, sizes, whole.area)
        bad = too_fine(tried)
        names = {kept.name for kept in bad}
        rest = [slit for slit in wanted if slit.name not in names]
        stays = sum(slit.line.length for slit in rest)
        if not bad or strict or not rest or stays < LEAST_KEPT * asked:
            return Thinned(tried, sizes, bad, tuple(left_out), lost, whole)
        left_out += [kept.name for kept in bad]
        wanted, lost = rest, 1.0 - stays / asked


def _best(tries: Iterable[Thinned]) -> Thinned:
    """Take the first that comes out well with little left out; else the first that is well."""
    seen: list[Thinned] = []
    for each in tries:
        if not each.bad and each.lost <= LEAST_LOST:
            return each
        seen.append(each)
    well = [each for each in seen if not each.bad]
    return (well or seen)[0]


def _plate(body: Body, best: Thinned) -> Plate:
    tried, sizes = best.tried, best.sizes
    polygon = tried.area
    holes = [shapely.Polygon(ring) for ring in polygon.interiors]
    others = shapely.union_all([*tried.hair, *(shapely.Polygon(r) for r in body.area.interiors)])
    slots = tuple(hole for hole in holes if not hole.intersects(others))
    clear = shapely.buffer(shapely.union_all(slots), sizes.web_mm / 2)
    rim = shapely.difference(body.rim.exterior, clear)
    lines = [part for part in shapely.get_parts(shapely.line_merge(rim)) if part.length > 1]
    wide = [slit.width_mm for slit in tried.bridged.slits] or [sizes.slot_mm]
    return Plate(
        polygon=polygon,
        slots=slots,
        hair=tried.hair,
        score_lines=tuple(shapely.get_coordinates(line) for line in lines),
        bridges=(*tried.bridged.bridges, *best.whole.bars),
        sizes=sizes,
        widths=(min(wide), max(wide)),
        shown=tuple(kept.name for kept in tried.kept),
        left_out=best.left_out,
        unfilled=best.whole.unfilled,
    )


def carried(plate: Plate, axes: Floats) -> Plate:
    """Turn a plate, or turn it over: carry its points by the axes (2, 2), about the crown."""

    def over(points: Line) -> Line:
        return np.asarray(points @ axes)

    return replace(
        plate,
        polygon=shapely.transform(plate.polygon, over),
        slots=tuple(shapely.transform(slot, over) for slot in plate.slots),
        hair=tuple(shapely.transform(slit, over) for slit in plate.hair),
        score_lines=tuple(over(line) for line in plate.score_lines),
        bridges=tuple(replace(each, span=over(each.span)) for each in plate.bridges),
        joints=tuple(replace(each, line=over(each.line)) for each in plate.joints),
    )
