"""Pieces of skin that are cut off on all sides, so that they lift, curl and dry."""

import numpy as np
import shapely

from scorecraft.arrays import Floats, Ints, Line, Shapes
from scorecraft.checks import telling_cuts as say
from scorecraft.checks.changes import no_deeper, opened
from scorecraft.checks.finding import SEVERITIES, Finding, Offer, Severity
from scorecraft.checks.once import told_once
from scorecraft.checks.telling import likewise
from scorecraft.cuts import Layout
from scorecraft.loaf.places import where
from scorecraft.practice import HINGE_MM, JOIN_MM, LID_CM2, PIECE_DEPTHS_MM, SHALLOW_MM

CRUMB_PIECE_MM2 = 4.0
"""Slivers between lines smaller than this are no pieces."""


def pieces(layout: Layout) -> list[Finding]:
    """Find pieces enclosed by cuts, by how deep they are cut all around.

    Ends that fail to meet another cut by less than JOIN_MM are taken to meet it. Large pieces are
    lids, and only noted; shallow cells (scales, a light lattice) are passed over.
    """
    told = shapely.MultiPolygon()
    findings: list[Finding] = []
    for severity in SEVERITIES:
        deep = _deep(layout, PIECE_DEPTHS_MM[severity].value)
        faces = _faces([layout.cuts[i].line for i in deep])
        faces = faces[~shapely.intersects(told, shapely.point_on_surface(faces))]
        if len(faces):
            findings += _findings(layout, deep, faces, severity)
            told = shapely.union_all([told, *faces])
    return findings


def _deep(layout: Layout, depth_mm: float) -> Ints:
    return np.flatnonzero([cut.depth_mm >= depth_mm for cut in layout.cuts])


def _faces(lines: list[Line]) -> Shapes:
    """Give the polygons (sheet mm) that lines enclose, their ends carried on by JOIN_MM."""
    if not lines:
        return np.zeros(0, dtype=object)
    drawn = shapely.union_all([shapely.LineString(_carried_on(line)) for line in lines])
    faces = np.asarray(shapely.get_parts(shapely.polygonize(shapely.get_parts(drawn))))
    return np.asarray(faces[shapely.area(faces) > CRUMB_PIECE_MM2])


def _carried_on(line: Line) -> Line:
    """Carry an open line on at both ends; a closed one stays as it is."""
    if np.array_equal(line[0], line[-1]):
        return line
    return np.vstack([_beyond(line[1], line[0]), line, _beyond(line[-2], line[-1])])


def _beyond(before: Floats, end: Floats) -> Floats:
    side = end - before
    length = max(float(np.hypot(*side)), 1e-9)
    return np.asarray(end + side * (JOIN_MM.value / length))


def _findings(layout: Layout, deep: Ints, faces: Shapes, severity: Severity) -> list[Finding]:
    around = _cuts_around(layout, deep, faces)
    area = shapely.area(faces) / 100
    lid = area > LID_CM2.value
    keys = [(layout.cuts[i].family, bool(big)) for i, big in zip(around, lid, strict=True)]
    return [
        _finding(
            layout, faces[members], faces[worst], around[members], int(around[worst]), severity
        )
        for worst, members in told_once(keys, -area)
    ]


def _cuts_around(layout: Layout, deep: Ints, faces: Shapes) -> Ints:
    """Give for every face one of the cuts that bound it."""
    lines = [shapely.LineString(layout.cuts[i].line) for i in deep]
    return np.asarray(deep[shapely.STRtree(lines).nearest(_edge(faces))], dtype=np.intp)


def _finding(
    layout: Layout,
    members: Shapes,
    worst: shapely.Polygon,
    edges: Ints,
    around: int,
    severity: Severity,
) -> Finding:
    cut = layout.cuts[around]
    area = float(worst.area) / 100
    lid = area > LID_CM2.value
    spot = where(layout.loaf, np.array(worst.point_on_surface().coords[0]))
    depth = PIECE_DEPTHS_MM[severity].value
    message = say.loose_piece(area, depth, spot, None if lid else severity)
    about = tuple(np.unique(edges).tolist())
    figures = {
        "count": float(len(members)),
        "area_cm2": area,
        "depth_mm": depth,
        "gap_mm": HINGE_MM.value,
        "shallow_mm": SHALLOW_MM.value - 0.5,
    }
    rings = tuple(shapely.get_coordinates(face.exterior) for face in members)
    weight: Severity = "note" if lid else severity
    message += likewise(len(members))
    hint, offers = say.GAP_OR_SHALLOWER, _offers(layout, members, edges)
    return Finding("pieces", weight, message, hint, cut.place, figures, about, rings, offers)


def _offers(layout: Layout, faces: Shapes, edges: Ints) -> tuple[Offer, ...]:
    """Offer a gap in one cut around every piece, or that cut made shallower."""
    wide, shallow = HINGE_MM.value, SHALLOW_MM.value - 0.5
    gaps = [
        (int(i), shapely.LineString(layout.cuts[i].line).project(edge))
        for i, edge in zip(edges, _edge(faces), strict=True)
    ]
    cut = layout.cuts[edges[0]]
    return (
        Offer(say.leave_gap(cut, wide), lambda: opened(layout, gaps, wide)),
        Offer(
            say.no_deeper(cut, shallow),
            lambda: no_deeper(layout, edges.tolist(), shallow),
        ),
    )


def _edge(faces: Shapes) -> Shapes:
    """Give a point on the outline of every face, away from where it begins."""
    ring = shapely.get_exterior_ring(faces)
    return np.asarray(shapely.line_interpolate_point(ring, 0.3, normalized=True))
