"""A stencil is one piece, and nowhere too thin: seen on a raster that is not ours.

The print is rasterised by PDFium, flood-filled and eroded by scipy.ndimage (Serra, Image Analysis
and Mathematical Morphology, 1982: what an opening by a disc leaves is nowhere thinner than it).
"""

from dataclasses import replace
from functools import cache

import numpy as np
import pypdfium2
import pytest
from scipy import ndimage

from scorecraft.designing import make
from scorecraft.drawing.paper.full_size import full_size_pages
from scorecraft.drawing.pdf import pdf
from scorecraft.drawing.templates.stencil import FALLS_OUT, stencil
from scorecraft.plate.plate import make_plate

DOTS_PER_MM = 4.0
INK_MM = 0.25
LETTERS_MM2 = 6.0
"""White inside letters and between ticks is no larger."""


def raster(figure):
    """Draw only the plate (edge and slots) and give its grey values."""
    bare = tuple(item for item in figure.items if item.name in ("edge", "slots"))
    assert len(bare) == 2
    (page,) = full_size_pages(replace(figure, items=bare), one_sheet=True)
    document = pypdfium2.PdfDocument(pdf([page], "plate"))
    picture = document[0].render(scale=DOTS_PER_MM * 25.4 / 72, grayscale=True)
    return picture.to_numpy().reshape(picture.height, picture.width)


@cache
def printed(pattern, fill):
    """A pattern's plate and its print."""
    layout = make(pattern).layout
    plate = make_plate(layout, fill=fill)
    return plate, raster(stencil(plate, layout))


def pieces(white):
    """Sizes of the connected white areas in mm2, the largest first, without letters."""
    labels, count = ndimage.label(white)
    sizes = ndimage.sum_labels(white, labels, np.arange(1, count + 1)) / DOTS_PER_MM**2
    return sorted((size for size in sizes if size > LETTERS_MM2), reverse=True)


EYE = """loaf round width 200mm height 85mm
define eye:
    ring 60mm
    ring 42mm
    ring 20mm
eye called "eye"
"""


@pytest.mark.parametrize(
    ("pattern", "fill"),
    [
        *((name, ()) for name in ("leaf-crown", "lotus")),
        (EYE, ("eye",)),
    ],
)
def test_flood_fill_finds_one_plate(pattern, fill):
    plate, grey = printed(pattern, fill)
    white = grey > 240
    edge = INK_MM / 2
    inside = pieces(white)
    inked = plate.polygon.area - (plate.polygon.length * edge)
    assert len(inside) == 2, "the plate and the paper around it"
    assert min(inside, key=lambda size: abs(size - inked)) == pytest.approx(inked, rel=0.03)

    web = plate.sizes.web_mm / 2 - edge - 1.5 / DOTS_PER_MM
    left = pieces(ndimage.distance_transform_edt(white) > web * DOTS_PER_MM)
    assert len(left) == 2, "a web thinner than asked for would tear here"


def test_the_flood_fill_sees_an_island():
    """Without bridges a ring of slots cuts the middle out: the check can fail."""
    grey = printed("leaf-crown", ())[1].copy()
    y, x = np.indices(grey.shape)
    rows, columns = np.nonzero(np.abs(grey.astype(int) - int(FALLS_OUT[1:3], 16)) < 3)
    middle = rows.mean(), columns.mean()
    ring = np.abs(np.hypot(y - middle[0], x - middle[1]) - 20 * DOTS_PER_MM) < DOTS_PER_MM
    grey[ring] = 200
    assert len(pieces(grey > 240)) == 3
