"""Sheets of a large drawing: laid together they are the drawing again."""

import numpy as np
import pytest
import shapely
from support.drawing_layouts import make_layout, petals
from support.guides import guide_of

from scorecraft.drawing.paper.seams import TILE_OVERLAP_MM
from scorecraft.drawing.paper.sheet import paper
from scorecraft.drawing.paper.telling import joined_words
from scorecraft.drawing.paper.tiles import ink_points, register_crosses, shared_marks, tile
from scorecraft.drawing.paper.windows import windows
from scorecraft.drawing.picture import Ink, Label, Layer, Picture, Shape, line, ring, walk, words
from scorecraft.loaf.dome import make_loaf
from scorecraft.practice import PRINTER_MARGIN_MM

EDGE = PRINTER_MARGIN_MM.value


@pytest.fixture(scope="module")
def big():
    """Lines in many directions over 500 x 400 mm, and a label."""
    random = np.random.default_rng(7)
    ends = random.uniform([5, 5], [495, 395], (60, 2, 2))
    shapes = tuple(
        Shape((each,), ink=Ink(0.5), data={"cut": str(k)}) for k, each in enumerate(ends)
    )
    border = Shape((ring(250, 200, 195),), closed=True, ink=Ink(0.35))
    items = (Layer("cuts", shapes), border, Label("middle", (250, 200), 6, anchor="middle"))
    return Picture(500, 400, "big", items=items)


def parts_of(picture, name):
    return windows(ink_points(picture.items), paper(name))


def on_drawing(sheet, part):
    """The shapes of a sheet clipped to its window, moved back to where they were drawn."""
    group = next(i for i in sheet.items if isinstance(i, Layer) and i.name.startswith("part"))
    clip = shapely.Polygon(group.clip[0])
    for item in walk(group.items):
        if isinstance(item, Shape) and item.data:
            drawn = shapely.intersection(shapely.linestrings(item.lines[0]), clip)
            shift = np.array([part.x - EDGE, part.y - EDGE])
            yield item.data["cut"], shapely.transform(drawn, lambda p, by=shift: p + by)


def test_sheets_laid_together_are_the_drawing(big):
    parts = parts_of(big, "A4")
    pieces = {}
    for sheet, part in zip(tile(big, parts), parts, strict=True):
        for cut, drawn in on_drawing(sheet, part):
            pieces.setdefault(cut, []).append(drawn)
    originals = {
        item.data["cut"]: shapely.linestrings(item.lines[0])
        for item in walk(big.items)
        if isinstance(item, Shape) and item.data
    }
    assert pieces.keys() == originals.keys()
    for cut, original in originals.items():
        whole = shapely.union_all(pieces[cut])
        assert shapely.hausdorff_distance(whole, original) < 1e-6
        assert shapely.covers(shapely.buffer(whole, 1e-6), original)


def test_crosses_of_neighbours_meet_at_both_ends_of_the_shared_edge(big):
    parts = parts_of(big, "A4")
    sheets = tile(big, parts)
    seen = {}
    for sheet, part in zip(sheets, parts, strict=True):
        groups = [item for item in sheet.items if isinstance(item, Layer)]
        group = next(each for each in groups if each.name == "register crosses")
        for shape in group.items:
            centre = shape.lines[0].mean(axis=0) - EDGE + [part.x, part.y]
            seen.setdefault(tuple(np.round(centre, 2)), []).append(part.name)
    assert len(seen) >= 2 * (len(parts) - 1)
    assert all(len(names) == 2 for names in seen.values())


def test_a_cross_lies_on_the_edge_of_the_sheet_on_top_and_inside_the_one_below(big):
    parts = parts_of(big, "A4")
    for index, one in enumerate(parts):
        for other in parts[index + 1 :]:
            for x, y in shared_marks(one, other):
                below, on_top = (shapely.box(p.x, p.y, p.right, p.bottom) for p in (one, other))
                assert on_top.exterior.distance(shapely.Point(x, y)) == pytest.approx(0, abs=1e-9)
                within = below.exterior.distance(shapely.Point(x, y))
                assert within == pytest.approx(TILE_OVERLAP_MM)
    assert register_crosses(parts[:1], parts[0]) == []


def test_every_sheet_has_its_name_the_rules_and_stays_off_the_margin(big):
    sheets = tile(big, parts_of(big, "Letter"))
    names = []
    for sheet in sheets:
        told = words(sheet.items)
        names.append(next(each for each in told if len(each) == 2 and each[1].isdigit()))
        assert any("100%" in each for each in told)
        assert any(i.name == "100 mm rule" for i in walk(sheet.items) if isinstance(i, Layer))
        for item in sheet.items:
            if isinstance(item, Layer) and item.clip:
                low, high = item.clip[0].min(axis=0), item.clip[0].max(axis=0)
                assert low.min() >= EDGE - 1e-9
                assert high[0] <= sheet.width_mm - EDGE + 1e-9
        foot = next(i for i in sheet.items if isinstance(i, Layer) and i.name == "foot")
        points = ink_points([i for i in walk(foot.items) if isinstance(i, Shape)])
        assert points.min() >= EDGE - 1e-9
        assert points[:, 0].max() <= sheet.width_mm - EDGE + 1e-9
        assert points[:, 1].max() <= sheet.height_mm - EDGE + 1e-9
    assert len(set(names)) == len(sheets) > 2


def test_tiled_guide_has_words_first_and_all_cuts_at_full_size_after():
    layout = make_layout(petals(12, 60, 150), make_loaf("round", 600.0, None, 180.0))
    first, *sheets = guide_of(layout, tiled=True)
    assert len(sheets) <= 10
    told = words(first.items)
    assert "petal rib" in told and "B2" in told
    rims = [
        item.lines[0]
        for sheet in sheets
        for item in walk(sheet.items)
        if isinstance(item, Shape) and item.closed and len(item.lines[0]) > 300
    ]
    assert any(np.ptp(rim, axis=0) == pytest.approx((600, 600), abs=0.05) for rim in rims)
    cuts = {
        item.data["cut"]
        for sheet in sheets
        for item in walk(sheet.items)
        if isinstance(item, Shape) and item.data
    }
    assert cuts == {str(k) for k in range(len(layout.cuts))}


def test_tiled_is_one_page_where_it_fits(small_layout, petal_layout):
    assert len(guide_of(small_layout, tiled=True)) == 1
    assert len(guide_of(petal_layout, tiled=True, paper="a3")) == 1
    assert len(guide_of(petal_layout, tiled=True)) == 3
    assert len(guide_of(petal_layout)) == 1


def test_frames_are_black_hairlines_that_a_printer_can_print(big):
    """A line of 0.25 mm is the thinnest of ISO 128-2 that office printers draw solid."""
    for sheet in tile(big, parts_of(big, "A4")):
        (edge,) = [item for item in sheet.items if isinstance(item, Shape)]
        assert (edge.ink.width, edge.ink.color) == (0.25, "#000000")


def test_a_tiled_print_says_why_and_how_to_join(petal_layout):
    pages = guide_of(petal_layout, tiled=True)
    told = " ".join(words(pages[0].items))
    assert "Too large for one sheet of A4, so it is spread over 2" in told
    assert joined_words(pages).startswith("too large for one sheet, so it is on 3 pages")
    assert joined_words(pages[:1]) == ""


def test_a_small_picture_is_one_sheet():
    small = Picture(50, 50, "s", items=(Shape((line(0, 0, 50, 50),), ink=Ink(1)),))
    (sheet,) = tile(small, parts_of(small, "A4"))
    assert "A1" in words(sheet.items)
