"""Strokes of a plain SVG drawing, in mm: a rim traced from a photograph, or a drawn figure.

Only what can be cut is read: paths and the basic shapes, in groups, with their transforms.
Scripts, references to other files, clones, pictures and text are refused, never skipped.
"""

from pathlib import Path

import numpy as np
import shapely

from scorecraft.arrays import Floats, Line
from scorecraft.errors import UsageError, quoting
from scorecraft.reading import read_bytes
from scorecraft.trace import telling as say
from scorecraft.trace.document import Node, read
from scorecraft.trace.matrix import checked, then, transform, viewport
from scorecraft.trace.path_data import Ink, subpaths
from scorecraft.trace.shapes import GROUPS, SHAPES, path_data

MOST_TRACED_BYTES = 2_000_000
"""The largest SVG file that is traced."""
LEAST_HOLE_MM2 = 25.0
"""Smaller closed lines inside a traced rim are specks."""
MOST_HOLE_SHARE = 0.8
"""A larger closed line in a rim is the other edge of its line."""
TRACED_GAP_MM = 0.5
"""Ends of a traced rim nearer than this meet."""


def strokes(path: str | Path) -> list[Line]:
    """Read the strokes of an SVG file: polylines in mm, y up, about the middle of their box.

    Raises UsageError, with the file and line, for anything that is not a plain drawing.
    """
    data = read_bytes(path, MOST_TRACED_BYTES, say.A_DRAWING)
    try:
        root = read(data, str(path))
        lines = _drawn(root, viewport(root), Ink())
        if not lines:
            raise say.NO_STROKES(path=path).usage(root.place)
    except UsageError as error:
        raise quoting(error, data.decode("utf-8-sig", "replace")) from error
    points = np.concatenate(lines)
    middle = (points.min(axis=0) + points.max(axis=0)) / 2
    return [(line - middle) * (1, -1) for line in lines]


def traced_rims(path: str | Path) -> list[Line]:
    """Read the largest closed stroke of an SVG file, and that of the hole in it if there is one.

    Each is (N, 2) points in mm, last as first. Raises UsageError where no stroke is closed, and
    where the rim has more than one hole.
    """
    closed = [line for line in map(_closed, strokes(path)) if line is not None]
    if not closed:
        raise say.NO_RIM(path=path).usage()
    areas = shapely.area([shapely.Polygon(line) for line in closed])
    largest = int(np.argmax(areas))
    rim = shapely.Polygon(closed[largest])
    holes = [
        line
        for line, area in zip(closed, areas, strict=True)
        if LEAST_HOLE_MM2 < area < MOST_HOLE_SHARE * areas[largest]
        and shapely.contains_xy(rim, *line[0])
    ]
    if len(holes) > 1:
        raise say.HOLES(path=path, count=len(holes)).usage()
    return [closed[largest], *holes]


def _closed(line: Line) -> Line | None:
    """Close a stroke whose ends all but meet; None for an open one."""
    if len(line) < 4 or np.hypot(*(line[-1] - line[0])) > TRACED_GAP_MM:
        return None
    return np.vstack([line[:-1], line[:1]])


def _hidden(node: Node) -> bool:
    style = node.attributes.get("style", "").replace(" ", "")
    return node.attributes.get("display") == "none" or "display:none" in style


def _drawn(node: Node, frame: Floats, ink: Ink) -> list[Line]:
    """Draw a node and all it holds, in mm with y down."""
    if _hidden(node):
        return []
    frame = checked(then(frame, transform(node)), node)
    if node.tag in SHAPES:
        return subpaths(path_data(node), frame, node.place, ink)
    if node.tag in GROUPS:
        return [line for child in node.children for line in _drawn(child, frame, ink)]
    return []
