"""Write pictures as PDF without Cairo; the only file that knows fpdf2.

It draws the same items as `svg.py`, in points: fpdf2 writes four digits, also for its own factor
from mm to points, by which an A3 sheet would be 0.007 mm too short.
"""

from __future__ import annotations

import io
from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import datetime
from typing import TYPE_CHECKING, TypeVar

import numpy as np

from scorecraft.arrays import Line
from scorecraft.drawing.lettering import letters
from scorecraft.drawing.paint import LinearGradient, Paint, RadialGradient
from scorecraft.drawing.photo import encoded_photo
from scorecraft.drawing.picture import Ink, Item, Label, Layer, Picture, Shape
from scorecraft.drawing.text import Segment
from scorecraft.errors import ScorecraftError
from scorecraft.frozen import dataclass

if TYPE_CHECKING:
    from fpdf.drawing import (
        ClippingPath,
        GradientPaint,
        GraphicsContext,
        GraphicsStyle,
        PaintedPath,
    )
    from fpdf.pattern import LinearGradient as LinearShades
    from fpdf.pattern import RadialGradient as RadialShades

Path = TypeVar("Path", "PaintedPath", "ClippingPath")
Circles = tuple[float, float, float, list[tuple[float, str]], float, float]
POINTS_PER_MM = 72 / 25.4
MITER_LIMIT = 4.0
"""That of SVG (its specification, section 13.5.4); PDF would take 10."""


def plain_pdf(pictures: Sequence[Picture], title: str, made: datetime) -> bytes:
    """Write pictures as the pages of one PDF, each page in its picture's own size.

    `made` is the date in the file. Raises ScorecraftError for a point that is not finite.
    """
    import fpdf

    document = fpdf.FPDF(unit="pt")
    document.set_title(title)
    document.set_creation_date(made)
    for picture in pictures:
        size = picture.width_mm * POINTS_PER_MM, picture.height_mm * POINTS_PER_MM
        document.add_page(format=size)
        if picture.photo is not None:
            document.image(io.BytesIO(encoded_photo(picture.photo, "jpg")), 0, 0, *size)
        writer = _Writer(size[1])
        with document.drawing_context() as sheet:
            for element in writer.elements(picture.items):
                sheet.add_item(element, clone=False)
    return bytes(document.output())


@dataclass(frozen=True, slots=True)
class _Writer:
    """Turns the items of a page of a height in points into those of fpdf2."""

    height: float

    def elements(self, items: Iterable[Item]) -> Iterator[GraphicsContext | PaintedPath]:
        """Make the elements of items, in drawing order."""
        for item in items:
            if isinstance(item, Layer):
                yield self.layer(item)
            elif isinstance(item, Label):
                yield self.label(item)
            elif any(map(len, item.lines)):
                yield self.shape(item)

    def layer(self, layer: Layer) -> GraphicsContext:
        """Make a layer, clipped by the nonzero rule."""
        from fpdf.drawing import ClippingPath, GraphicsContext

        context = GraphicsContext()
        if layer.clip:
            rings = _segments(layer.clip, closed=True)
            context.clipping_path = _drawn(ClippingPath(), rings)
        for element in self.elements(layer.items):
            context.add_item(element, clone=False)
        return context

    def shape(self, shape: Shape) -> PaintedPath:
        """Make one path of a shape, filled by the even-odd rule."""
        from fpdf.drawing import PaintedPath

        segments = _segments(shape.lines, shape.closed)
        path = _drawn(PaintedPath(), segments)
        path.style.auto_close = False
        path.style.intersection_rule = "evenodd"
        path.style.fill_color = self.paint(shape.fill)
        path.style.fill_opacity = shape.fill_opacity
        path.style.stroke_color = shape.ink.color if shape.ink else None
        if shape.ink:
            _stroke(path.style, shape.ink)
        return path

    def label(self, label: Label) -> PaintedPath:
        """Make the filled letters of a label."""
        from fpdf.drawing import PaintedPath

        path = _drawn(PaintedPath(), letters(label))
        path.style.intersection_rule = "nonzero"
        path.style.fill_color, path.style.stroke_color = label.color, None
        return path

    def paint(self, paint: Paint | None) -> str | GradientPaint | None:
        """Make a fill; fpdf2 would set a gradient by the height of the last page of all."""
        if paint is None or isinstance(paint, str):
            return paint
        from fpdf.drawing import GradientPaint
        from fpdf.drawing_primitives import Transform
        from fpdf.pattern import shape_linear_gradient, shape_radial_gradient

        gradient: LinearShades | RadialShades
        stops = [(stop.at, stop.color) for stop in paint.stops]
        if isinstance(paint, LinearGradient):
            gradient = shape_linear_gradient(*paint.start, *paint.end, stops)
            middle, squeeze = 0.0, 1.0
        else:
            middle, squeeze = paint.centre[1], paint.radii[1] / paint.radii[0]
            gradient = shape_radial_gradient(*_circles(paint, stops, squeeze))
        k = POINTS_PER_MM
        way = (k, 0.0, 0.0, -k * squeeze, 0.0, self.height - k * middle * (1 - squeeze))
        return GradientPaint(
            gradient,
            gradient_transform=Transform(*way),
            apply_page_ctm=False,
        )


def _drawn(path: Path, segments: Iterable[Segment]) -> Path:
    """Draw segments (mm) into a path of fpdf2 (points)."""
    draw: dict[str, Callable[..., object]] = {
        "M": path.move_to,
        "L": path.line_to,
        "Q": path.quadratic_curve_to,
        "Z": path.close,
    }
    for op, points in segments:
        draw[op](*(length * POINTS_PER_MM for point in points for length in point))
    return path


def _segments(lines: Sequence[Line], closed: bool) -> Iterator[Segment]:
    """Yield polylines as the segments of one path."""
    for line in lines:
        if not np.isfinite(line).all():
            raise ScorecraftError("cannot draw a line with a point that is not a finite number")
        for number, (x, y) in enumerate(line.tolist()):
            yield "L" if number else "M", ((x, y),)
        if closed and len(line):
            yield "Z", ()


def _stroke(style: GraphicsStyle, ink: Ink) -> None:
    """Set an ink."""
    style.stroke_width = ink.width * POINTS_PER_MM
    style.stroke_cap_style, style.stroke_join_style = ink.cap, ink.join
    style.stroke_miter_limit = MITER_LIMIT
    style.stroke_dash_pattern = [dash * POINTS_PER_MM for dash in ink.dash]
    style.stroke_opacity = ink.opacity


def _circles(paint: RadialGradient, stops: list[tuple[float, str]], squeeze: float) -> Circles:
    """Give the arguments of a gradient out to a circle, which is then squeezed along y."""
    (cx, cy), (fx, fy) = paint.centre, paint.focus or paint.centre
    return cx, cy, paint.radii[0], stops, fx, cy + (fy - cy) / squeeze
