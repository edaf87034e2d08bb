"""Pieces of skin that are cut off on all sides, so that they lift, curl and dry.

What holds a piece is the dough it stands on: less, the smaller its base is for the length and depth
of the cuts around it. So a piece goes by its depth over its width, four times its base over its
girth (the width of a square, a circle, and of whatever has one inside). The lip of a slanted cut
around it does not stand on the dough: it is no part of the base. A side that is cut less deep, or a
gap, is a hinge: a piece is as deep as the shallowest cut around it. That a square of four slashes,
a lattice and a grid of small squares at everyday depths are sound is common practice, no source.
"""

import math

import numpy as np
import shapely

from scorecraft.arrays import Floats, Ints, Line, Shapes
from scorecraft.checks import telling_cuts as say
from scorecraft.checks.changes import no_deeper, no_flatter, opened
from scorecraft.checks.finding import Finding, Offer, Severity
from scorecraft.checks.telling import likewise, told_once
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.loaf.places import where
from scorecraft.practice import (
    DECORATIVE_BLADE_DEG,
    DEPTH_STEP_MM,
    HINGE_MM,
    JOIN_MM,
    LID_CM2,
    PIECE_DEEP_MM,
    PIECE_PER_WIDTH,
    PIECE_SHALLOW_MM,
    PIECE_SHALLOW_PER_WIDTH,
    UPRIGHT_DEG,
)

CRUMB_PIECE_MM2 = 4.0
"""Slivers between lines smaller than this are no pieces."""
LEVEL_MM = 1.0
"""Pieces are told apart by depths in steps of this."""
SEVERED = 10.0
"""Depth per width of a piece that stands on next to nothing."""


@dataclass(frozen=True, eq=False, slots=True)
class Pieces:
    """Pieces (N,), polygons on the sheet, cut all around to a depth (mm) or deeper.

    `width_mm` (N,) is that of what they stand on, `undercut` (N,) its share that slanted cuts take.
    """

    faces: Shapes
    depth_mm: float
    width_mm: Floats
    undercut: Floats

    @property
    def steep(self) -> Floats:
        """Depth over width (N,)."""
        return np.asarray(self.depth_mm / np.maximum(self.width_mm, self.depth_mm / SEVERED))


def pieces(layout: Layout) -> list[Finding]:
    """Find pieces enclosed by cuts that are small for how deep they are cut all around.

    Ends that fail to meet another cut by less than JOIN_MM are taken to meet it. Large pieces are
    lids, and only noted; shallow cells (scales, a light lattice) are passed over.
    """
    told = shapely.MultiPolygon()
    findings: list[Finding] = []
    depths = layout.depths_mm
    levels = LEVEL_MM * np.floor(depths / LEVEL_MM)
    for level in sorted(set(levels[levels >= PIECE_SHALLOW_MM.value].tolist()), reverse=True):
        deep = np.flatnonzero(depths >= level)
        faces = _faces([layout.cuts[i].line for i in deep])
        faces = faces[~shapely.intersects(told, shapely.point_on_surface(faces))]
        if len(faces):
            found = _standing(layout, deep, faces, level)
            grave = [_severity(found, k) for k in range(len(faces))]
            findings += _findings(layout, deep, found, grave)
            told = shapely.union_all([told, *faces[[each is not None for each in grave]]])
    return findings


def _faces(lines: list[Line]) -> Shapes:
    """Give the polygons (sheet mm) that lines enclose, their ends carried on by JOIN_MM."""
    drawn = shapely.union_all([shapely.LineString(_carried_on(line)) for line in lines])
    faces = np.asarray(shapely.get_parts(shapely.polygonize(shapely.get_parts(drawn))))
    return np.asarray(faces[shapely.area(faces) > CRUMB_PIECE_MM2])


def _carried_on(line: Line) -> Line:
    """Carry an open line on at both ends; a closed one stays as it is."""
    if _closed(line):
        return line
    return np.vstack([_beyond(line[1], line[0]), line, _beyond(line[-2], line[-1])])


def _closed(line: Line) -> bool:
    return np.array_equal(line[0], line[-1])


def _beyond(before: Floats, end: Floats) -> Floats:
    side = end - before
    length = max(float(np.hypot(*side)), 1e-9)
    return np.asarray(end + side * (JOIN_MM.value / length))


def _standing(layout: Layout, deep: Ints, faces: Shapes, level: float) -> Pieces:
    """Measure what pieces stand on at a depth, without the lips of slanted cuts."""
    base, cuts = faces, [layout.cuts[i] for i in deep]
    lips = [
        _open(cut.line).buffer(
            (cut.rises or 1) * level / math.tan(cut.blade_rad), single_sided=True
        )
        for cut in cuts
        if cut.blade_rad < math.radians(UPRIGHT_DEG.value)
    ]
    if lips:
        base = np.asarray(shapely.difference(faces, shapely.union_all(lips)))
    whole, left = shapely.area(faces), shapely.area(base)
    return Pieces(faces, level, 4 * left / shapely.length(faces), 1 - left / whole)


def _open(line: Line) -> shapely.LineString:
    """Leave the last step of a closed line out: the one-sided buffer of a ring is no band."""
    return shapely.LineString(line[:-1] if _closed(line) else line)


def _severity(found: Pieces, k: int) -> Severity | None:
    """Tell how grave a piece is: by depth over width, and not at all while the skin holds it."""
    steep = float(found.steep[k])
    if found.depth_mm < PIECE_DEEP_MM.value:
        if steep >= SEVERED:
            return "warning"
        return "note" if steep >= PIECE_SHALLOW_PER_WIDTH.value else None
    if _is_lid(found.faces[k]):
        return "note"
    grave: tuple[Severity, ...] = ("stop", "warning", "note")
    return next((each for each in grave if steep >= PIECE_PER_WIDTH[each].value), None)


def _is_lid(face: shapely.Polygon) -> bool:
    return float(face.area) / 100 > LID_CM2.value


def _findings(
    layout: Layout, deep: Ints, found: Pieces, grave: list[Severity | None]
) -> list[Finding]:
    """Tell pieces once for those alike: around the same cuts, as grave, lids or none."""
    told = [k for k, severity in enumerate(grave) if severity]
    if not told:
        return []
    around = _cuts_around(layout, deep, found.faces)
    keys = [(layout.cuts[around[k]].family, grave[k], _is_lid(found.faces[k])) for k in told]
    return [
        _finding(layout, found, around, [told[m] for m in members], told[worst], grave[told[worst]])
        for worst, members in told_once(keys, found.steep[told])
    ]


def _cuts_around(layout: Layout, deep: Ints, faces: Shapes) -> Ints:
    """Give for every face one of the cuts that bound it."""
    lines = [shapely.LineString(layout.cuts[i].line) for i in deep]
    return np.asarray(deep[shapely.STRtree(lines).nearest(_edge(faces))], dtype=np.intp)


def _finding(
    layout: Layout,
    found: Pieces,
    around: Ints,
    members: list[int],
    worst: int,
    severity: Severity | None,
) -> Finding:
    assert severity is not None
    face, edges = found.faces[worst], around[members]
    cut = layout.cuts[around[worst]]
    lid = _is_lid(face)
    spot = where(layout.loaf, np.array(face.point_on_surface().coords[0]))
    area, undercut = float(face.area) / 100, float(found.undercut[worst])
    does = None if lid else severity
    message = say.loose_piece(area, found.depth_mm, undercut, spot, does) + likewise(len(members))
    figures = {
        "count": float(len(members)),
        "area_cm2": area,
        "depth_mm": found.depth_mm,
        "width_mm": float(found.width_mm[worst]),
        "undercut_share": undercut,
        "gap_mm": HINGE_MM.value,
    }
    rings = tuple(shapely.get_coordinates(found.faces[k].exterior) for k in members)
    offers = tuple(_offers(layout, found, members, edges))
    about = tuple(np.unique(edges).tolist())
    hint = say.GAP_OR_SHALLOWER
    return Finding("pieces", severity, message, hint, cut.place, figures, about, rings, offers)


def _offers(layout: Layout, found: Pieces, members: list[int], edges: Ints) -> list[Offer]:
    """Offer the blade upright, one cut around every piece made shallower, or a gap in it."""
    offers = []
    about, wide = edges.tolist(), HINGE_MM.value
    cut = layout.cuts[about[0]]
    if (found.undercut[members] > 0).any():
        upright = math.radians(DECORATIVE_BLADE_DEG.value)
        families = {layout.cuts[i].family for i in about}
        slanted = [i for i, each in enumerate(layout.cuts) if each.family in families]
        offers.append(Offer(say.UPRIGHT, layout, lambda: (no_flatter(layout, slanted, upright),)))
    shallow = _sound_mm(float(found.width_mm[members].min()))
    told = say.NO_DEEPER(cut=cut, depth=shallow)
    offers.append(Offer(told, layout, lambda: (no_deeper(layout, about, shallow),)))
    gaps = [
        (i, shapely.LineString(layout.cuts[i].line).project(edge))
        for i, edge in zip(about, _edge(found.faces[members]), strict=True)
    ]
    told = say.LEAVE_GAP(cut=cut, wide=wide)
    offers.append(Offer(told, layout, lambda: (opened(layout, gaps, wide),)))
    return offers


def _sound_mm(width_mm: float) -> float:
    """Depth (mm) to which a side may be cut so that the piece is held, as a hand can cut it."""
    step = DEPTH_STEP_MM.value
    deep = PIECE_PER_WIDTH["note"].value * width_mm
    if deep > PIECE_DEEP_MM.value:
        return step * math.floor((deep - step / 2) / step)
    shallow = min(PIECE_SHALLOW_PER_WIDTH.value * width_mm, PIECE_DEEP_MM.value)
    return max(step * math.ceil(shallow / step - 1), PIECE_SHALLOW_MM.value - step)


def _edge(faces: Shapes) -> Shapes:
    """Give a point on the outline of every face, away from where it begins."""
    ring = shapely.get_exterior_ring(faces)
    return np.asarray(shapely.line_interpolate_point(ring, 0.3, normalized=True))
