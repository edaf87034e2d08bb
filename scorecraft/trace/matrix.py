"""Lengths, transforms and the viewport of an SVG file, down to mm.

W3C SVG 1.1 (second edition), chapter 7; CSS Values and Units: 1 in = 96 px = 25.4 mm.

A map is affine, (2, 3): x' = a x + c y + e, y' = b x + d y + f as [[a, c, e], [b, d, f]].
"""

import re
from math import cos, radians, sin, tan

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.trace import telling as say
from scorecraft.trace.document import Node
from scorecraft.trace.numbers import number_at, numbers_of

MOST_TRANSFORMS = 100
"""The most steps of one transform in a traced file."""
MM_PER_PX = 25.4 / 96
PX = {
    "": 1.0,
    "px": 1.0,
    "in": 96.0,
    "mm": 96 / 25.4,
    "cm": 960 / 25.4,
    "q": 24 / 25.4,
    "pt": 96 / 72,
    "pc": 16.0,
}
STEP = re.compile(r"([a-zA-Z]++)\s*+\(([^()]*+)\)[\s,]*+")
MOST_SCALE = 1e9
"""No number of a map may be larger: products of two stay far from the end of what floats hold."""
COUNTS = {
    "matrix": {6},
    "translate": {1, 2},
    "scale": {1, 2},
    "rotate": {1, 3},
    "skewX": {1},
    "skewY": {1},
}


def length(node: Node, key: str, default: float = 0.0) -> float:
    """Length of an attribute in user units (px), or `default` where it is not given.

    Raises UsageError for what is no length.
    """
    text = node.attributes.get(key)
    if text is None:
        return default
    text = text.strip()
    number, end = number_at(text, 0) or (0.0, 0)
    unit = text[end:].strip().lower()
    if not end or unit not in PX:
        raise say.NOT_LENGTH(key=key, text=text).usage(node.place)
    return number * PX[unit]


def viewport(root: Node) -> Floats:
    """Map the user units of the whole drawing to mm (y down); the shift is left out.

    Raises UsageError for a box or a size that cannot be read.
    """
    box = root.attributes.get("viewBox")
    if box is None:
        return _scaling(MM_PER_PX, MM_PER_PX)
    numbers = numbers_of(box)
    if numbers is None or len(numbers) != 4 or min(numbers[2:]) <= 0:
        raise say.NOT_BOX(box=box).usage(root.place)
    wide, high = numbers[2:]
    across = _extent(root, "width", wide, "height", high) / wide
    down = _extent(root, "height", high, "width", wide) / high
    keeps = root.attributes.get("preserveAspectRatio", "").strip()
    if not keeps.startswith("none"):  # its proportions: it meets its frame, or is sliced by it
        across = down = max(across, down) if keeps.endswith("slice") else min(across, down)
    return checked(_scaling(across * MM_PER_PX, down * MM_PER_PX), root)


def checked(frame: Floats, node: Node) -> Floats:
    """Refuse a map that nothing drawn through it would survive.

    The map is (2, 3). Raises UsageError.
    """
    if not np.abs(frame).max() <= MOST_SCALE:
        raise say.TOO_LARGE.usage(node.place)
    return frame


def _extent(root: Node, key: str, units: float, other: str, across: float) -> float:
    """Width or height of the drawing in px; where it is not said, in proportion to the other."""
    if _is_said(root, key):
        extent = length(root, key)
    elif _is_said(root, other):
        extent = units * length(root, other) / across
    else:
        extent = units
    if extent <= 0:
        raise say.NOT_ABOVE_ZERO(key=key).usage(root.place)
    return extent


def _is_said(root: Node, key: str) -> bool:
    return not root.attributes.get(key, "%").strip().endswith(("%", "auto"))


def transform(node: Node) -> Floats:
    """Read the transform of a node; raises UsageError where it cannot be read; (2, 3)."""
    if "transform" in node.attributes.get("style", ""):
        raise say.STYLED_TRANSFORM.usage(node.place)
    text = node.attributes.get("transform", "").strip()
    if text.count("(") > MOST_TRANSFORMS:
        raise say.LONG_TRANSFORM.usage(node.place)
    frame, at = _scaling(1, 1), 0
    while at < len(text):
        found = STEP.match(text, at)
        if found is None:
            raise say.NOT_TRANSFORM(text=text).usage(node.place)
        step = checked(_step(node, found), node)
        frame, at = checked(then(frame, step), node), found.end()
    return frame


def _step(node: Node, found: re.Match[str]) -> Floats:
    numbers = numbers_of(found[2])
    if numbers is None or len(numbers) not in COUNTS.get(found[1], set()):
        raise say.NOT_TRANSFORM(text=found[0].strip()).usage(node.place)
    return _matrix(found[1], numbers)


def _matrix(name: str, numbers: list[float]) -> Floats:
    first, rest = numbers[0], numbers[1:]
    match name:
        case "matrix":
            return np.array(numbers).reshape(3, 2).T
        case "translate":
            return np.array([[1, 0, first], [0, 1, rest[0] if rest else 0]], dtype=np.float64)
        case "scale":
            return _scaling(first, rest[0] if rest else first)
        case "skewX":
            return np.array([[1, tan(radians(first)), 0], [0, 1, 0]])
        case "skewY":
            return np.array([[1, 0, 0], [tan(radians(first)), 1, 0]])
    turn = rotation(radians(first))
    centre = np.array(rest or (0.0, 0.0))
    return np.column_stack([turn, centre - turn @ centre])


def rotation(angle: float) -> Floats:
    """Turn by an angle (radians) from +x toward +y, as a (2, 2) matrix."""
    return np.array([[cos(angle), -sin(angle)], [sin(angle), cos(angle)]])


def _scaling(across: float, down: float) -> Floats:
    return np.array([[across, 0, 0], [0, down, 0]], dtype=np.float64)


def then(outer: Floats, inner: Floats) -> Floats:
    """Combine two maps into the one that does the inner first; all are (2, 3)."""
    linear, shift = inner[:, :2], inner[:, 2]
    return np.column_stack([outer[:, :2] @ linear, outer[:, :2] @ shift + outer[:, 2]])
