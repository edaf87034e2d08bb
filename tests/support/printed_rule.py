"""A printed PDF read back by another library: its paper, and the rule of 100 mm on a page."""

import pypdfium2

MM = 72 / 25.4
A4, LETTER = (210.0, 297.0), (215.9, 279.4)


def papers(data: bytes) -> set[tuple[float, float]]:
    """Give the sizes of all pages in mm, the short side first."""
    document = pypdfium2.PdfDocument(data)
    sizes = {tuple(sorted(round(each / MM, 1) for each in page.get_size())) for page in document}
    document.close()
    return sizes


def ruled(data: bytes, page: int = -1) -> bool:
    """Tell whether something on a page is 100 mm long, to 0.6 mm with its end marks."""
    document = pypdfium2.PdfDocument(data)
    found = document[page % len(document)]
    boxes = [each.get_bounds() for each in found.get_objects()]
    lengths = [max(right - left, top - low) / MM for left, low, right, top in boxes]
    document.close()
    return any(abs(each - 100) < 0.6 for each in lengths)
