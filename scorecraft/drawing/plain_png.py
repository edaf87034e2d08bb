"""Turn a page of a PDF into a PNG without Cairo; the only file that knows PDFium."""

import io


def plain_png(page: bytes, dpi: float) -> bytes:
    """Draw the first page of a PDF on white paper and return it as PNG."""
    import pypdfium2

    with pypdfium2.PdfDocument(page) as document:
        image = document[0].render(scale=dpi / 72).to_pil()
    out = io.BytesIO()
    image.save(out, "PNG")
    return out.getvalue()
