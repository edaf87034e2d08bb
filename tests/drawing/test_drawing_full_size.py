import numpy as np
import pytest

from scorecraft.drawing.paper.full_size import FullSize, full_size_pages
from scorecraft.drawing.paper.sheet import paper
from scorecraft.drawing.picture import Ink, Layer, Shape, box, walk, words

EDGE = 5.0


def figure(width, height):
    edge = box(0, 0, width, height)
    items = (Layer("frame", (Shape((edge,), closed=True, ink=Ink(0.3)),)),)
    return FullSize(items, edge, width, height, "Plate", "For a loaf", ("Cut it.", "Use it."), "x")


def frame_of(page):
    """The figure's frame as drawn on a page."""
    (group,) = [item for item in walk(page.items) if getattr(item, "name", "") == "frame"]
    return group.items[0].lines[0]


def test_a_small_figure_takes_the_smallest_paper():
    (page,) = full_size_pages(figure(150, 120))
    assert (page.width_mm, page.height_mm) == (210, 297)
    assert np.ptp(frame_of(page), axis=0) == pytest.approx((150, 120))


def test_a_larger_one_takes_a_larger_paper_of_the_family():
    (page,) = full_size_pages(figure(240, 250))
    assert (page.width_mm, page.height_mm) == (297, 420)
    (page,) = full_size_pages(figure(240, 250), home=paper("Letter"))
    assert (page.width_mm, page.height_mm) == (279.4, 431.8)


@pytest.mark.parametrize("size", [(150, 120), (190, 180), (240, 250)])
def test_all_lies_within_the_printable_part(size):
    (page,) = full_size_pages(figure(*size))
    for item in walk(page.items):
        if isinstance(item, Shape):
            points = np.concatenate(item.lines)
            assert points.min() >= EDGE - 1e-6
            assert points[:, 0].max() <= page.width_mm - EDGE + 1e-6
            assert points[:, 1].max() <= page.height_mm - EDGE + 1e-6


def test_one_too_large_for_any_paper_is_spread_over_sheets():
    pages = full_size_pages(figure(400, 380))
    assert len(pages) > 2
    assert "Plate" in words(pages[0].items) and "A1" in words(pages[0].items)
    assert {(page.width_mm, page.height_mm) for page in pages} <= {(210, 297), (297, 210)}


def test_or_gets_a_sheet_of_its_own():
    (page,) = full_size_pages(figure(400, 380), one_sheet=True)
    assert page.width_mm == pytest.approx(400 + 2 * EDGE)
    assert np.ptp(frame_of(page), axis=0) == pytest.approx((400, 380))


def test_tiled_on_the_paper_asked_for():
    pages = full_size_pages(figure(240, 250), name="A4", tiled=True)
    assert len(pages) > 1
    assert len(full_size_pages(figure(150, 120), name="A4", tiled=True)) == 1


def test_the_caution_and_the_rules_are_on_the_page():
    (page,) = full_size_pages(figure(150, 120))
    texts = " ".join(words(page.items))
    assert "Razor blades" in texts and "100 mm" in texts and "4 in" in texts
    assert "Cut it." in texts and "Use it." in texts
