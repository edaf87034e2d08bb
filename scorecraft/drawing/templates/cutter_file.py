"""Drawings for cutting machines to bytes: SVG, DXF or PDF."""

from scorecraft.drawing.picture import Picture
from scorecraft.drawing.svg import svg
from scorecraft.drawing.templates.dxf import dxf
from scorecraft.drawing.write import encoded
from scorecraft.errors import UsageError


def encoded_for_cutter(picture: Picture, form: str) -> bytes:
    """Encode a flat drawing in a form (`dxf` or a suffix); raises UsageError for a pixel form."""
    form = form.lower().lstrip(".")
    if form == "dxf":
        return dxf(picture)
    if form == "png":
        hint = "end the file in .svg, .dxf or .pdf"
        raise UsageError("a cutter follows lines, and a png file holds none", None, hint)
    return svg(picture, layers=True).encode() if form == "svg" else encoded([picture], form)
