"""Write a picture as SVG; the only file that knows svgwrite.

The root carries the size in mm and everything below is in plain viewBox units of 1 mm, so that
one unit is one mm in every renderer. There are no style attributes: a page with a strict content
security policy shows all of it.
"""

from __future__ import annotations

import base64
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from math import degrees, isfinite
from typing import TYPE_CHECKING, Literal
from xml.etree import ElementTree

import numpy as np

from scorecraft.arrays import Line, Pixels
from scorecraft.drawing.lettering import LEVELS, letters
from scorecraft.drawing.paint import LinearGradient, Paint, RadialGradient
from scorecraft.drawing.photo import encoded_photo
from scorecraft.drawing.picture import Ink, Item, Label, Layer, Picture, Shape
from scorecraft.drawing.text import cleaned
from scorecraft.errors import ScorecraftError

if TYPE_CHECKING:
    from svgwrite import Drawing
    from svgwrite.base import BaseElement

Attributes = dict[str, str]
TextForm = Literal["outline", "text"]
FONT_FAMILY = "DejaVu Sans, Verdana, sans-serif"
DIGITS = 3
"""Coordinates are written to 0.001 mm."""
PAIRS = ("", "%.10g,%.10g", "%.10g,%.10g %.10g,%.10g")
"""How none, one and two points are written."""


def svg(
    picture: Picture, *, text: TextForm = "outline", ids: str = "p", layers: bool = False
) -> str:
    """Write a picture as an SVG document, the same text for the same picture.

    Labels become outlines, which look alike everywhere, or `<text>`, which a page can search and
    style. `ids` is the prefix of all ids: pictures in one page need different ones. With `layers`
    groups have their names as ids too, which drawing programs show as the names of layers. Raises
    ScorecraftError for a coordinate that is not finite.
    """
    import svgwrite

    width, height = number(picture.width_mm), number(picture.height_mm)
    title, desc = cleaned(picture.title), cleaned(picture.desc)
    root = svgwrite.Drawing(debug=False, size=(f"{width}mm", f"{height}mm"))
    root.update({"viewBox": f"0 0 {width} {height}", "role": "img", "aria-label": title})
    if picture.css:
        root.update({"class": picture.css})
    root.set_desc(title=title or None, desc=desc or None)
    writer = _Writer(root, text, ids, layers)
    if picture.photo is not None:
        root.add(root.image(data_address(picture.photo), size=(width, height), id=f"{ids}hoto"))
    for item in filter(_shows, picture.items):
        root.add(writer.element(item))
    xml = root.get_xml()
    ElementTree.indent(xml, space=" ")
    return ElementTree.tostring(xml, encoding="unicode") + "\n"


def data_address(photo: Pixels) -> str:
    """Write a photograph as an address that holds it."""
    form, kind = ("jpg", "jpeg") if photo.shape[2] == 3 else ("webp", "webp")
    held = base64.b64encode(encoded_photo(photo, form)).decode()
    return f"data:image/{kind};base64,{held}"


def _shows(item: Item) -> bool:
    """Tell whether there is anything to draw: no path of no points, no text of spaces."""
    if isinstance(item, Shape):
        return any(len(points) for points in item.lines)
    return not isinstance(item, Label) or bool(cleaned(item.text))


def number(value: float) -> str:
    """Write a number to 0.001 without trailing zeros, exponent or minus zero.

    Raises ScorecraftError unless it is finite.
    """
    if not isfinite(value):
        raise ScorecraftError(f"cannot draw a picture with a length of {value}")
    return f"{round(float(value), DIGITS) + 0.0:.10g}"


def path_data(lines: Sequence[Line], closed: bool) -> str:
    """Write polylines as the data of one path.

    Raises ScorecraftError where a point is not finite.
    """
    end = "Z" if closed else ""
    return "".join(_subpath(points) + end for points in lines if len(points))


def _subpath(points: Line) -> str:
    if not np.isfinite(points).all():
        raise ScorecraftError("cannot draw a line with a point that is not a finite number")
    flat = (np.round(points, DIGITS) + 0.0).ravel().tolist()
    pairs = " ".join(["%.10g,%.10g"] * (len(flat) // 2))
    return "M" + pairs % tuple(flat)


@dataclass(slots=True)
class _Writer:
    """Turns items into svgwrite elements; counts the ids of one document."""

    root: Drawing
    text: TextForm
    prefix: str
    layers: bool
    known: dict[Paint, str] = field(default_factory=dict)
    count: int = 0

    def element(self, item: Item) -> BaseElement:
        """Make the element of one item."""
        if isinstance(item, Layer):
            return self.layer(item)
        if isinstance(item, Label):
            return self.label(item)
        return self.shape(item)

    def layer(self, layer: Layer) -> BaseElement:
        """Make a `<g>` whose `data-layer` is the layer's name."""
        attributes = _named(layer.css, {"layer": layer.name, **layer.data})
        if layer.clip:
            attributes["clip-path"] = self.clip(layer.clip)
        if self.layers:
            attributes["id"] = layer.name.replace(" ", "-")
        element = self.root.g()
        element.update(attributes)
        for item in filter(_shows, layer.items):
            element.add(self.element(item))
        return element

    def shape(self, shape: Shape) -> BaseElement:
        """Make one `<path>` of a shape."""
        attributes = {"fill": self.paint(shape.fill)} | _named(shape.css, shape.data)
        if shape.fill is not None:
            attributes["fill-rule"] = "evenodd"
        if shape.fill_opacity != 1:
            attributes["fill-opacity"] = number(shape.fill_opacity)
        if shape.ink:
            attributes |= stroke(shape.ink)
        element = self.root.path(d=path_data(shape.lines, shape.closed))
        element.update(attributes)
        if shape.title:
            element.set_desc(title=cleaned(shape.title))
        return element

    def label(self, label: Label) -> BaseElement:
        """Make the outline or the `<text>` of a label."""
        attributes = {"fill": label.color} | _named(label.css, label.data)
        if self.text == "outline":
            element = self.root.path(d=_label_data(label))
            element.update(attributes | {"aria-label": cleaned(label.text), "role": "img"})
            return element
        x, y = label.at
        drop = LEVELS[label.level] * label.size
        element = self.root.text(cleaned(label.text))
        element.update(attributes | _text_attributes(label, x, y + drop))
        if label.turn:
            turned = number(degrees(label.turn))
            element.update({"transform": f"rotate({turned} {number(x)} {number(y)})"})
        return element

    def paint(self, paint: Paint | None) -> str:
        """Write a fill; a gradient is defined once and then referred to."""
        if paint is None or isinstance(paint, str):
            return paint or "none"
        if paint not in self.known:
            self.known[paint] = self.fresh_id()
            self.root.defs.add(_gradient(self.root, paint, self.known[paint]))
        return f"url(#{self.known[paint]})"

    def clip(self, rings: Sequence[Line]) -> str:
        """Define a clip path and refer to it."""
        name = self.fresh_id()
        path = self.root.clipPath(id=name)
        path.add(self.root.path(d=path_data(rings, closed=True)))
        self.root.defs.add(path)
        return f"url(#{name})"

    def fresh_id(self) -> str:
        """Return the next id of this document."""
        self.count += 1
        return f"{self.prefix}{self.count}"


def _named(css: str, data: Mapping[str, str]) -> Attributes:
    named = {f"data-{key}": cleaned(value) for key, value in data.items()}
    return {"class": css, **named} if css else named


def stroke(ink: Ink) -> Attributes:
    """Write an ink as presentation attributes."""
    attributes = {
        "stroke": ink.color,
        "stroke-width": number(ink.width),
        "stroke-linecap": ink.cap,
        "stroke-linejoin": ink.join,
    }
    if ink.dash:
        attributes["stroke-dasharray"] = " ".join(number(dash) for dash in ink.dash)
    if ink.opacity != 1:
        attributes["stroke-opacity"] = number(ink.opacity)
    return attributes


def _text_attributes(label: Label, x: float, y: float) -> Attributes:
    attributes = {
        "x": number(x),
        "y": number(y),
        "font-family": FONT_FAMILY,
        "font-size": number(label.size),
        "text-anchor": label.anchor,
    }
    return attributes | ({"font-weight": "bold"} if label.bold else {})


def _label_data(label: Label) -> str:
    """Write the letters of a label as path data; raises ScorecraftError as `number` does."""
    drawn = letters(label)
    flat = [length for _, points in drawn for point in points for length in point]
    if not isfinite(sum(flat)):
        raise ScorecraftError("cannot draw letters at a place that is not a finite number")
    form = "".join([op + PAIRS[len(points)] for op, points in drawn])
    return form % tuple([round(length, DIGITS) + 0.0 for length in flat])


def _gradient(root: Drawing, paint: LinearGradient | RadialGradient, name: str) -> BaseElement:
    """Make a gradient in the units of the drawing."""
    if isinstance(paint, LinearGradient):
        element = root.linearGradient(id=name)
        element.update(_numbers(zip(("x1", "y1"), paint.start, strict=True)))
        element.update(_numbers(zip(("x2", "y2"), paint.end, strict=True)))
    else:
        element = root.radialGradient(id=name)
        element.update(_radial(paint))
    element.update({"gradientUnits": "userSpaceOnUse"})
    for stop in paint.stops:
        element.add_stop_color(number(stop.at), stop.color)
    return element


def _radial(paint: RadialGradient) -> Attributes:
    """Write a circle of radius rx about the centre, squeezed to the ellipse along y."""
    (cx, cy), (rx, ry) = paint.centre, paint.radii
    fx, fy = paint.focus or paint.centre
    squeeze = ry / rx
    attributes = _numbers(
        {"cx": cx, "cy": cy, "r": rx, "fx": fx, "fy": cy + (fy - cy) / squeeze}.items()
    )
    if squeeze != 1:
        attributes["gradientTransform"] = (
            f"matrix(1 0 0 {squeeze:.9g} 0 {number(cy - cy * squeeze)})"
        )
    return attributes


def _numbers(pairs: Iterable[tuple[str, float]]) -> Attributes:
    return {key: number(value) for key, value in pairs}
