"""Write pictures as PDF and PNG, by Cairo where it is; the only file that knows cairosvg.

cairosvg stands on a system library that a bare machine does not have. There the same pictures are
drawn by libraries that come with pip: `plain_pdf.py` and `plain_png.py`. All pages of a PDF go
onto one cairo surface, which keeps every page true to scale at its own size and makes the same
bytes on every run.
"""

import io
import struct
import zlib
from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime
from functools import cache
from typing import Any, TypeAlias

import numpy as np

from scorecraft.arrays import Pixels
from scorecraft.drawing.photo import encoded_photo, overlaid, resized
from scorecraft.drawing.picture import WHITE, Picture
from scorecraft.drawing.plain_pdf import plain_pdf
from scorecraft.drawing.plain_png import plain_png
from scorecraft.drawing.svg import number, svg
from scorecraft.drawing.text import cleaned
from scorecraft.errors import ScorecraftError, UsageError
from scorecraft.practice import LARGEST_PAGE_MM

PNG_DPI = 200.0
"""Resolution of a picture where none is asked for."""
Library: TypeAlias = Any  # cairosvg and cairocffi have no types, and may not be there
MADE = datetime(2000, 1, 1, tzinfo=UTC)
"""The date in every file: the same drawing makes the same bytes."""
POINT_MM = 25.4 / 72


def pdf(pictures: Sequence[Picture], title: str) -> bytes:
    """Write pictures as the pages of one PDF, each page in its picture's own size.

    A print dialog is told not to scale (`/PrintScaling /None`). Raises UsageError for a page
    beyond what readers take, ScorecraftError for no page.
    """
    if not pictures:
        raise ScorecraftError("there is no page to write")
    for picture in pictures:
        _check_size(picture)
    title = cleaned(title)
    photos = any(picture.photo is not None for picture in pictures)
    loaded = None if photos else cairo()  # Cairo would unpack them: five times the bytes
    data = _cairo_pdf(*loaded, pictures, title) if loaded else plain_pdf(pictures, title, MADE)
    return _unscaled(data, pictures)


def png(picture: Picture, dpi: float | None = None) -> bytes:
    """Write a picture as PNG on white, with its resolution inside; a photograph's own if unsaid.

    Raises UsageError for too large a picture.
    """
    if picture.photo is not None:
        pixels = flattened(picture, dpi)
        return _with_resolution(encoded_photo(pixels, "png"), dpi or own_dpi(picture))
    return _drawn(picture, dpi or PNG_DPI)


def own_dpi(picture: Picture) -> float:
    """Resolution of a picture's photograph, or the usual one."""
    if picture.photo is None:
        return PNG_DPI
    return float(picture.photo.shape[1] / picture.width_mm * 25.4)


def flattened(picture: Picture, dpi: float | None = None) -> Pixels:
    """Lay the drawing of a picture over its photograph, in a resolution or its own."""
    sides = (picture.width_mm, picture.height_mm)
    size = [round(side * (dpi or own_dpi(picture)) / 25.4) for side in sides]
    photo = resized(np.asarray(picture.photo), size[0], size[1])
    bare = replace(picture, photo=None)
    if loaded := cairo():
        drawing = loaded[0].svg2png(
            bytestring=svg(bare).encode(), output_width=size[0], output_height=size[1]
        )
    else:
        drawing = plain_png(bare, size[0] / picture.width_mm * 25.4, MADE, see_through=True)
    return overlaid(photo, drawing)


def _drawn(picture: Picture, dpi: float) -> bytes:
    _check_size(picture)
    if loaded := cairo():
        document = svg(picture).encode()
        data = loaded[0].svg2png(bytestring=document, dpi=dpi, background_color=WHITE)
    else:
        data = plain_png(picture, dpi, MADE)
    return _with_resolution(data, dpi)


@cache
def cairo() -> tuple[Library, Library] | None:
    """Import cairosvg and cairocffi; without libcairo the import raises OSError."""
    try:
        import cairocffi
        import cairosvg
        import cairosvg.surface
    except (ImportError, OSError):
        return None
    return cairosvg, cairocffi


def _check_size(picture: Picture) -> None:
    most = LARGEST_PAGE_MM.value
    if max(picture.width_mm, picture.height_mm) > most:
        raise UsageError(
            f"the drawing is {number(picture.width_mm)} x {number(picture.height_mm)} mm; "
            f"no page may be longer than {number(most)} mm"
        )


def _cairo_pdf(
    cairosvg: Library, cairocffi: Library, pictures: Sequence[Picture], title: str
) -> bytes:
    """Draw pictures as the pages of one cairo surface."""
    out = io.BytesIO()
    surface = cairocffi.PDFSurface(out, 1, 1)
    surface.set_metadata(cairocffi.PDF_METADATA_TITLE, title)
    surface.set_metadata(cairocffi.PDF_METADATA_CREATE_DATE, MADE.isoformat())

    class Page(cairosvg.surface.PDFSurface):  # type: ignore[misc]
        """A cairosvg surface that is one page of the shared one."""

        def _create_surface(self, width: float, height: float) -> tuple[object, float, float]:
            surface.set_size(width, height)
            return surface, width, height

    for picture in pictures:
        Page(cairosvg.parser.Tree(bytestring=svg(picture).encode()), None, 96)
        surface.show_page()
    surface.finish()
    return out.getvalue()


def _unscaled(data: bytes, pictures: Sequence[Picture]) -> bytes:
    """Ask print dialogs for no scaling (ISO 32000-1:2008, table 150; recalled).

    The sizes of the pages are set once more, since fpdf2 writes them to 0.01 points.
    """
    from pypdf import PdfWriter

    writer = PdfWriter(clone_from=io.BytesIO(data))
    writer.pdf_header = "%PDF-1.6"
    preferences = writer.create_viewer_preferences()
    preferences.print_scaling = "/None"  # type: ignore[assignment]  # pypdf makes it later
    for page, picture in zip(writer.pages, pictures, strict=True):
        page.mediabox.upper_right = (picture.width_mm / POINT_MM, picture.height_mm / POINT_MM)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def _with_resolution(data: bytes, dpi: float) -> bytes:
    """Insert a pHYs chunk (pixels per metre) after the header chunk of a PNG.

    Layout from the PNG specification (ISO/IEC 15948) section 11.3.5.3: 4 + 4 + 1 bytes.
    """
    per_metre = round(dpi / 0.0254)
    body = b"pHYs" + struct.pack(">IIB", per_metre, per_metre, 1)
    chunk = struct.pack(">I", len(body) - 4) + body + struct.pack(">I", zlib.crc32(body))
    end_of_header = 8 + 25
    return data[:end_of_header] + chunk + data[end_of_header:]
