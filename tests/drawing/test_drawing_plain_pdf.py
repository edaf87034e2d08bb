"""Without Cairo the same page is printed: compared with Cairo's own in PDFium, and by itself."""

import numpy as np
import pypdfium2
import pytest
import shapely
from support.drawing_layouts import make_layout, petals
from support.guides import guide_of
from support.printed_paths import read_paths

from scorecraft.drawing import pdf as door
from scorecraft.drawing.bloom.bloom import bloom
from scorecraft.drawing.bloom.mouths import mouths_of, predicted
from scorecraft.drawing.paint import LinearGradient, RadialGradient, Stop
from scorecraft.drawing.picture import Ink, Label, Layer, Picture, Shape, box, line, ring
from scorecraft.drawing.plain_pdf import plain_pdf
from scorecraft.errors import ScorecraftError

RAMP = (Stop(0, "#ff0000"), Stop(0.3, "#ffff00"), Stop(1, "#0000ff"))
DPI = 150


def sheet(width, height):
    """A page with everything a picture knows: fills, inks, gradients, a clip, letters."""
    spike = np.array([[65, 70], [70, 56], [75, 70]])
    discs = (ring(55, 40, 8), ring(48, 40, 6))
    blue = Shape((box(40, 30, 30, 20),), closed=True, fill="#4444ff", fill_opacity=0.5)
    frame = (box(5, 5, 30, 20), box(12, 10, 8, 8))
    oval = RadialGradient((95, 15), (18, 9), RAMP, focus=(90, 12))
    items = (
        Shape(frame, closed=True, fill="#008844", ink=Ink(1, "#222222", join="miter")),
        Shape((box(40, 5, 30, 20),), closed=True, fill=LinearGradient((45, 5), (65, 25), RAMP)),
        Shape((box(75, 5, 40, 20),), closed=True, fill=oval),
        Layer("clipped", (blue,), clip=discs),
        Shape((line(5, 60, 60, 60),), ink=Ink(1, dash=(0, 2))),
        Shape((line(5, 65, 60, 65),), ink=Ink(2, dash=(5, 2), cap="butt", opacity=0.4)),
        Shape((spike,), ink=Ink(2, join="miter", cap="square")),
        Shape((spike * [0.2, 1] + [70, 0],), ink=Ink(2, join="miter")),
        Shape((), ink=Ink(1)),
        Label("Brot é 12°", (20, 80), 5, anchor="middle", bold=True, color="#884400", turn=0.3),
        Label("Äq", (60, 75), 5, level="top"),
    )
    return Picture(width, height, "sheet", items=items)


def pages(pictures):
    return pypdfium2.PdfDocument(door.pdf(pictures, "test"))


@pytest.fixture
def both(with_cairo, monkeypatch):
    """Print pictures twice, by Cairo and without it."""

    def printed(pictures):
        ours = pages(pictures)
        with monkeypatch.context() as hidden:
            hidden.setattr(door, "cairo", lambda: None)
            return list(zip(ours, pages(pictures), strict=True))

    return printed


def drawn(path):
    """The subpaths of a path; a lone point, which some glyphs have, draws nothing."""
    return shapely.MultiLineString([points for points in path if len(points) > 1])


def pixels(page):
    return np.asarray(page.render(scale=DPI / 72).to_pil().convert("RGB"), dtype=float)


def test_every_line_and_letter_is_where_cairo_prints_it(both):
    layout = make_layout(petals())
    for theirs, ours in both(guide_of(layout, tiled=True, paper="A4")):
        assert theirs.get_size() == pytest.approx(ours.get_size(), abs=0.001)
        pairs = list(zip(read_paths(theirs), read_paths(ours), strict=True))
        assert len(pairs) > 20
        assert max(shapely.hausdorff_distance(drawn(a), drawn(b)) for a, b in pairs) < 0.01


def test_everything_a_picture_knows_looks_as_cairo_draws_it(both):
    """Colours apart by no more than what renderers round, edges by part of a pixel."""
    for theirs, ours in both([sheet(120, 90), sheet(130, 140)]):
        apart = np.abs(pixels(theirs) - pixels(ours)).max(axis=2)
        assert apart.mean() < 0.2 and apart.max() < 40


def test_a_bloom_looks_as_cairo_draws_it(both):
    layout = make_layout(petals())
    ((theirs, ours),) = both([bloom(layout, mouths_of(predicted(layout)), width_mm=100.0)])
    apart = np.abs(pixels(theirs) - pixels(ours)).max(axis=2)
    assert apart.mean() < 0.5 and apart.max() < 40


def test_fills_holes_clips_and_gradients_are_right_on_every_page(without_cairo):
    """fpdf2 itself would put the gradients of the first page where the last one has them."""
    for page in pages([sheet(120, 90), sheet(130, 140)]):
        seen = pixels(page)

        def at(x, y, seen=seen):
            return tuple(seen[round(y / 25.4 * DPI), round(x / 25.4 * DPI)])

        assert at(8, 8) == (0, 0x88, 0x44) and at(16, 14) == (255, 255, 255)
        assert at(90, 12) == pytest.approx((255, 0, 0), abs=25)
        assert at(114, 6) == pytest.approx((0, 0, 255), abs=3)
        assert at(51, 11) == pytest.approx((255, 255, 0), abs=12)
        assert at(51.5, 40) == pytest.approx((161, 161, 255), abs=2)
        assert at(66, 40) == (255, 255, 255)


def test_the_same_page_is_the_same_bytes(without_cairo):
    assert door.pdf([sheet(120, 90)], "Brot") == door.pdf([sheet(120, 90)], "Brot")


@pytest.mark.parametrize("bad", [np.nan, np.inf])
def test_a_point_that_is_not_finite_is_refused(without_cairo, bad):
    picture = Picture(50, 50, "bad", items=(Shape((line(0, 0, bad, 1),), ink=Ink(1)),))
    with pytest.raises(ScorecraftError, match="not a finite number"):
        plain_pdf([picture], "bad", door.MADE)
