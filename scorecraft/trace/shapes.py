"""The basic shapes of SVG, written as path data.

W3C SVG 1.1 (second edition), chapter 9: where each outline starts and which way it runs.
"""

from scorecraft.trace import telling as say
from scorecraft.trace.document import Node
from scorecraft.trace.matrix import length

GROUPS = {"svg", "g", "a"}
SHAPES = {"path", "line", "polyline", "polygon", "rect", "circle", "ellipse"}


def path_data(node: Node) -> str:
    """Write a shape as path data in user units; hidden and empty shapes are empty."""
    match node.tag:
        case "path":
            return node.attributes.get("d", "")
        case "line":
            x1, y1, x2, y2 = (length(node, key) for key in ("x1", "y1", "x2", "y2"))
            return f"M{x1!r},{y1!r} L{x2!r},{y2!r}"
        case "polyline" | "polygon":
            points = node.attributes.get("points", "").strip()
            return f"M{points}{'Z' if node.tag == 'polygon' else ''}" if points else ""
        case "rect":
            return _rect(node)
        case "circle":
            radius = _size(node, "r")
            return _ellipse(length(node, "cx"), length(node, "cy"), radius, radius)
    return _ellipse(length(node, "cx"), length(node, "cy"), _size(node, "rx"), _size(node, "ry"))


def _size(node: Node, key: str, default: float = 0.0) -> float:
    size = length(node, key, default)
    if size < 0:
        raise say.NEGATIVE(key=key).usage(node.place)
    return size


def _ellipse(x: float, y: float, rx: float, ry: float) -> str:
    if not rx or not ry:
        return ""
    return (
        f"M{x + rx!r},{y!r} A{rx!r},{ry!r} 0 0 1 {x - rx!r},{y!r} "
        f"A{rx!r},{ry!r} 0 0 1 {x + rx!r},{y!r}Z"
    )


def _rect(node: Node) -> str:
    x, y, w, h = length(node, "x"), length(node, "y"), _size(node, "width"), _size(node, "height")
    if not w or not h:
        return ""
    rx = min(_size(node, "rx", _size(node, "ry")), w / 2)
    ry = min(_size(node, "ry", _size(node, "rx")), h / 2)
    if not rx or not ry:
        return f"M{x!r},{y!r} h{w!r} v{h!r} h{-w!r}Z"
    round_ = f"a{rx!r},{ry!r} 0 0 1 "
    return (
        f"M{x + rx!r},{y!r} h{w - 2 * rx!r} {round_}{rx!r},{ry!r} "
        f"v{h - 2 * ry!r} {round_}{-rx!r},{ry!r} "
        f"h{-(w - 2 * rx)!r} {round_}{-rx!r},{-ry!r} "
        f"v{-(h - 2 * ry)!r} {round_}{rx!r},{-ry!r}Z"
    )
