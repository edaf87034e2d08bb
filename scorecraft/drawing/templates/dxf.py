"""Flat drawings as DXF of release 12: polylines on layers, millimetres, y up.

Release 12 has no place for units, so a comment tells them, with what must be minded of the
material: the numbers are millimetres. Written after the DXF Reference of AutoCAD Release 12
(recalled); read back in the tests by another reader.
"""

import re
from collections.abc import Iterator

import numpy as np

from scorecraft.arrays import Line
from scorecraft.drawing.paper.cautions import FILM
from scorecraft.drawing.picture import BLACK, Item, Label, Layer, Picture, Shape
from scorecraft.drawing.svg import number
from scorecraft.drawing.templates.telling import CHECK_LINE, MILLIMETRES
from scorecraft.errors import ScorecraftError

BLACK_INDEX, GREY_INDEX = 7, 8
"""Colour numbers that every reader of DXF knows: black (white on a dark ground), and grey."""
Pair = tuple[int, str]


def dxf(picture: Picture) -> bytes:
    """Write a flat picture, one layer for each of its groups.

    Raises ScorecraftError for what a cutter has no use for: labels and filled shapes.
    """
    layers = [
        (_layer(group.name), [_outlined(item, group) for item in group.items])
        for group in _top_layers(picture)
    ]
    pairs: list[Pair] = [(999, MILLIMETRES), (999, CHECK_LINE), (999, FILM)]
    pairs += _header(picture)
    pairs += _tables(layers)
    pairs += [(0, "SECTION"), (2, "ENTITIES")]
    for name, shapes in layers:
        for shape in shapes:
            for points in shape.lines:
                pairs += _polyline(points, name, shape.closed, picture.height_mm)
    pairs += [(0, "ENDSEC"), (0, "EOF")]
    return "".join(f"{code:>3}\n{value}\n" for code, value in pairs).encode("ascii")


def _top_layers(picture: Picture) -> Iterator[Layer]:
    for item in picture.items:
        if not isinstance(item, Layer):
            raise ScorecraftError("a drawing for a cutter has all its lines in groups")
        yield item


def _outlined(item: Item, layer: Layer) -> Shape:
    if isinstance(item, Layer | Label) or item.fill is not None or layer.clip:
        raise ScorecraftError("a drawing for a cutter holds plain lines only")
    return item


def _layer(name: str) -> str:
    """Name a layer in the few letters that release 12 allows."""
    return re.sub(r"[^A-Z0-9_$-]++", "_", name.upper())[:31]


def _header(picture: Picture) -> list[Pair]:
    return [
        (0, "SECTION"), (2, "HEADER"),
        (9, "$ACADVER"), (1, "AC1009"),
        (9, "$EXTMIN"), (10, "0.0"), (20, "0.0"),
        (9, "$EXTMAX"), (10, number(picture.width_mm)), (20, number(picture.height_mm)),
        (0, "ENDSEC"),
    ]  # fmt: skip


def _tables(layers: list[tuple[str, list[Shape]]]) -> list[Pair]:
    pairs: list[Pair] = [
        (0, "SECTION"), (2, "TABLES"),
        (0, "TABLE"), (2, "LTYPE"), (70, "1"),
        (0, "LTYPE"), (2, "CONTINUOUS"), (70, "0"), (3, "Solid line"), (72, "65"), (73, "0"),
        (40, "0.0"), (0, "ENDTAB"),
        (0, "TABLE"), (2, "LAYER"), (70, str(len(layers) + 1)),
    ]  # fmt: skip
    for name, color in [("0", BLACK_INDEX), *((name, _color(shapes)) for name, shapes in layers)]:
        pairs += [(0, "LAYER"), (2, name), (70, "0"), (62, str(color)), (6, "CONTINUOUS")]
    return [*pairs, (0, "ENDTAB"), (0, "ENDSEC")]


def _color(shapes: list[Shape]) -> int:
    ink = shapes[0].ink if shapes else None
    return GREY_INDEX if ink and ink.color != BLACK else BLACK_INDEX


def _polyline(points: Line, layer: str, closed: bool, height: float) -> Iterator[Pair]:
    """Write one polyline, its y turned up."""
    if not np.isfinite(points).all():
        raise ScorecraftError("cannot draw a line with a point that is not a finite number")
    yield from ((0, "POLYLINE"), (8, layer), (66, "1"), (70, "1" if closed else "0"))
    yield from ((10, "0.0"), (20, "0.0"), (30, "0.0"))
    for x, y in points.tolist():
        yield from ((0, "VERTEX"), (8, layer), (10, number(x)), (20, number(height - y)))
        yield (30, "0.0")
    yield from ((0, "SEQEND"), (8, layer))
