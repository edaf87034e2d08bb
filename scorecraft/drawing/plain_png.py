"""Turn a picture into a PNG without Cairo, by way of a PDF; the only file that knows PDFium."""

import io
from contextlib import closing
from dataclasses import replace
from datetime import datetime

from scorecraft.drawing.picture import Picture
from scorecraft.drawing.plain_pdf import plain_pdf

SHORT_PX = 0.05
"""So much less than whole pixels a page is made: PDFium rounds its size up, and stretches to it."""


def plain_png(picture: Picture, dpi: float, made: datetime, see_through: bool = False) -> bytes:
    """Draw a picture on white or see-through paper, as PNG of the nearest number of pixels."""
    import pypdfium2

    paper = (255, 255, 255, 0 if see_through else 255)
    sides = (picture.width_mm, picture.height_mm)
    width, height = ((round(side * dpi / 25.4) - SHORT_PX) * 25.4 / dpi for side in sides)
    page = plain_pdf([replace(picture, width_mm=width, height_mm=height)], "", made)
    with closing(pypdfium2.PdfDocument(page)) as document:
        image = document[0].render(scale=dpi / 72, fill_color=paper).to_pil()
    out = io.BytesIO()
    image.save(out, "PNG")
    return out.getvalue()
