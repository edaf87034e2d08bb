"""Write pictures as PDF and PNG; the only file that knows cairosvg.

All pages of a PDF go onto one cairo surface, which keeps every page true to scale at its own
size and makes the same bytes on every run.
"""

import io
import struct
import zlib
from collections.abc import Sequence
from typing import Any

from scorecraft.drawing.picture import WHITE, Picture
from scorecraft.drawing.svg import number, svg
from scorecraft.drawing.text import cleaned
from scorecraft.errors import MissingLibraryError, ScorecraftError, UsageError
from scorecraft.practice import LARGEST_PAGE_MM, PNG_DPI

NO_CAIRO = (
    "PDF and PNG need the Cairo graphics library, which is not installed; SVG works without it"
)
INSTALL = """\
Debian, Ubuntu: sudo apt install libcairo2
    Fedora: sudo dnf install cairo
    macOS: brew install cairo; if Python still does not find it:
        export DYLD_FALLBACK_LIBRARY_PATH=/opt/homebrew/lib  (Intel: /usr/local/lib)
    Windows: in MSYS2: pacman -S mingw-w64-ucrt-x86_64-cairo, then set
        CAIROCFFI_DLL_DIRECTORIES=C:\\msys64\\ucrt64\\bin
    Or write SVG and print it from a web browser at 100 %."""
MADE = "2000-01-01T00:00:00Z"
"""The date in every file: the same drawing makes the same bytes."""
POINTS_PER_MM = 72 / 25.4


def pdf(pictures: Sequence[Picture], title: str) -> bytes:
    """Write pictures as the pages of one PDF, each page in its picture's own size.

    A print dialog is told not to scale (`/PrintScaling /None`). Raises MissingLibraryError
    without libcairo, UsageError for a page beyond what readers take.
    """
    if not pictures:
        raise ScorecraftError("there is no page to write")
    for picture in pictures:
        _check_size(picture)
    cairosvg, cairocffi = _cairo()
    out = io.BytesIO()
    surface = cairocffi.PDFSurface(out, 1, 1)
    surface.set_metadata(cairocffi.PDF_METADATA_TITLE, cleaned(title))
    surface.set_metadata(cairocffi.PDF_METADATA_CREATE_DATE, MADE)
    for picture in pictures:
        _draw_page(cairosvg, surface, picture)
    surface.finish()
    return _unscaled(out.getvalue())


def png(picture: Picture, dpi: float = PNG_DPI.value) -> bytes:
    """Write a picture as PNG on white, with its resolution inside.

    Raises MissingLibraryError without libcairo, UsageError for too large a picture.
    """
    _check_size(picture)
    cairosvg, _ = _cairo()
    document = svg(picture).encode()
    data: bytes = cairosvg.svg2png(bytestring=document, dpi=dpi, background_color=WHITE)
    return _with_resolution(data, dpi)


def _cairo() -> tuple[Any, Any]:
    """Import cairosvg and cairocffi; without libcairo the import raises OSError."""
    try:
        import cairocffi
        import cairosvg
        import cairosvg.surface
    except (ImportError, OSError) as error:
        raise MissingLibraryError(NO_CAIRO, hint=INSTALL) from error
    return cairosvg, cairocffi


def _check_size(picture: Picture) -> None:
    most = LARGEST_PAGE_MM.value
    if max(picture.width_mm, picture.height_mm) > most:
        raise UsageError(
            f"the drawing is {number(picture.width_mm)} x {number(picture.height_mm)} mm; "
            f"no page may be longer than {number(most)} mm"
        )


def _draw_page(cairosvg: Any, surface: Any, picture: Picture) -> None:
    """Draw a picture as the next page of a cairo PDF surface."""

    class Page(cairosvg.surface.PDFSurface):  # type: ignore[misc]
        """A cairosvg surface that is one page of the shared one."""

        def _create_surface(self, width: float, height: float) -> tuple[Any, float, float]:
            surface.set_size(width, height)
            return surface, width, height

    Page(cairosvg.parser.Tree(bytestring=svg(picture).encode()), None, 96)
    surface.show_page()


def _unscaled(data: bytes) -> bytes:
    """Ask print dialogs for no scaling (ISO 32000-1 table 150, recalled, page not checked)."""
    from pypdf import PdfWriter

    writer = PdfWriter(clone_from=io.BytesIO(data))
    writer.pdf_header = "%PDF-1.6"
    preferences: Any = writer.create_viewer_preferences()
    preferences.print_scaling = "/None"
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
