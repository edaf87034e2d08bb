"""Strokes of a plain SVG drawing, in mm: a rim traced from a photograph, or a drawn figure.

Only what can be cut is read: paths and the basic shapes, in groups, with their transforms.
Scripts, references to other files, clones, pictures and text are refused, never skipped.
"""

from pathlib import Path

import numpy as np
import shapely

from scorecraft.cuts import Line
from scorecraft.errors import UsageError
from scorecraft.practice import MOST_TRACED_POINTS, TRACED_GAP_MM
from scorecraft.trace.document import Node, read
from scorecraft.trace.matrix import Matrix, then, transform, viewport
from scorecraft.trace.path_data import subpaths
from scorecraft.trace.shapes import GROUPS, SHAPES, path_data


def strokes(path: str | Path) -> list[Line]:
    """Read the strokes of an SVG file: polylines in mm, y up, about the middle of their box.

    Raises UsageError, with the file and line, for anything that is not a plain drawing.
    """
    root = read(path)
    lines = _drawn(root, viewport(root))
    if not lines:
        raise UsageError(f"{path} draws no strokes", root.place)
    if sum(map(len, lines)) > MOST_TRACED_POINTS.value:
        raise UsageError(f"{path} has too many points", root.place, "simplify its paths")
    points = np.concatenate(lines)
    middle = (points.min(axis=0) + points.max(axis=0)) / 2
    return [(line - middle) * (1, -1) for line in lines]


def traced_rim(path: str | Path) -> Line:
    """Read the largest closed stroke of an SVG file, as (N, 2) points in mm, last as first.

    Raises UsageError where no stroke is closed.
    """
    closed = [line for line in map(_closed, strokes(path)) if line is not None]
    if not closed:
        raise UsageError(
            f"{path} has no closed path to be the rim", hint="draw the rim as one closed path"
        )
    return max(closed, key=lambda line: shapely.Polygon(line).area)


def _closed(line: Line) -> Line | None:
    """Close a stroke whose ends all but meet; None for an open one."""
    if len(line) < 4 or np.hypot(*(line[-1] - line[0])) > TRACED_GAP_MM.value:
        return None
    return np.vstack([line[:-1], line[:1]])


def _hidden(node: Node) -> bool:
    style = node.attributes.get("style", "").replace(" ", "")
    return node.attributes.get("display") == "none" or "display:none" in style


def _drawn(node: Node, frame: Matrix) -> list[Line]:
    """Draw a node and all it holds, in mm with y down."""
    if _hidden(node):
        return []
    frame = then(frame, transform(node))
    if node.tag in SHAPES:
        return subpaths(path_data(node), frame, node.place)
    if node.tag in GROUPS:
        return [line for child in node.children for line in _drawn(child, frame)]
    return []
