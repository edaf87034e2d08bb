"""Which sheets are used: all ink is covered, with overlap, by few sheets."""

from itertools import combinations, pairwise
from math import ceil

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from support.shelf_designs import some

from scorecraft.designing import make
from scorecraft.drawing.guide.guide import drawing_box
from scorecraft.drawing.guide.plan import guide_plan
from scorecraft.drawing.paper.seams import TILE_OVERLAP_MM
from scorecraft.drawing.paper.sheet import PAPERS, paper
from scorecraft.drawing.paper.tiles import ink_points
from scorecraft.drawing.paper.windows import FOOT_MM, room_for_drawing, windows
from scorecraft.drawing.picture import ring
from scorecraft.errors import UsageError
from scorecraft.groups import groups
from scorecraft.practice import PRINTER_MARGIN_MM

OVERLAP = TILE_OVERLAP_MM


def ellipse(wide, high):
    return ring(0, 0, 0.5, chord_mm=1e-6) * [wide, high]


def filled(wide, high):
    x, y = np.meshgrid(np.linspace(0, wide, 120), np.linspace(0, high, 120))
    return np.column_stack([x.ravel(), y.ravel()])


def strips(parts):
    """The strips that two sheets share, as boxes: the seam is the later one's edge in it."""
    for one, other in combinations(parts, 2):
        both = shapely.intersection(
            *(shapely.box(p.x, p.y, p.right, p.bottom) for p in (one, other))
        )
        if both.area > 0:
            yield both


def covered(ink, parts):
    inside = np.zeros(len(ink), dtype=bool)
    for part in parts:
        inside |= (
            (ink[:, 0] >= part.x)
            & (ink[:, 0] <= part.right)
            & (ink[:, 1] >= part.y)
            & (ink[:, 1] <= part.bottom)
        )
    return inside.all()


@given(st.floats(30, 900), st.floats(30, 900), st.sampled_from(PAPERS), st.booleans())
@settings(max_examples=15)
def test_all_ink_is_covered_by_windows_that_fit_their_sheets(wide, high, sheet, full):
    ink = filled(wide, high) if full else ellipse(wide, high)
    parts = windows(ink, sheet)
    assert covered(ink, parts)
    assert len({part.name for part in parts}) == len(parts)
    for part in parts:
        edge = 2 * PRINTER_MARGIN_MM.value
        assert part.size.width == pytest.approx(part.paper.width_mm - edge)
        assert part.size.height == pytest.approx(part.paper.height_mm - edge - FOOT_MM)


@given(st.floats(150, 700), st.floats(150, 700), st.sampled_from(PAPERS))
@settings(max_examples=12)
def test_never_more_sheets_than_a_plain_grid_of_one_kind(wide, high, sheet):
    def grid(room):
        return ceil((wide + 2 - OVERLAP) / (room.width - OVERLAP)) * ceil(
            (high + 2 - OVERLAP) / (room.height - OVERLAP)
        )

    best = min(grid(room_for_drawing(sheet)), grid(room_for_drawing(sheet.across)))
    assert len(windows(filled(wide, high), sheet)) <= best


def test_mixed_sheets_beat_either_kind_alone():
    """618 mm square: 4 x 3 upright or 3 x 4 turned sheets make 12; two columns and one make 10."""
    parts = windows(filled(618, 618), paper("A4"))
    assert len(parts) == 10
    assert {part.paper.width_mm for part in parts} == {210, 297}


def test_corners_without_ink_cost_no_sheet():
    sheet = paper("A4")
    assert len(windows(ellipse(600, 600), sheet)) < len(windows(filled(600, 600), sheet))


def test_a_band_is_as_long_as_all_the_ink_in_it():
    slant = np.linspace([0, 0], [900, 700], 2000)
    for ink in (slant, slant * [-1, 1], slant[:, ::-1]):
        assert covered(ink, windows(ink, paper("A4")))


def test_neighbours_overlap_by_the_rule():
    parts = sorted(windows(filled(700, 150), paper("A4")), key=lambda part: part.x)
    assert len(parts) == 3
    for one, other in pairwise(parts):
        assert one.right - other.x == pytest.approx(OVERLAP)


def test_one_sheet_where_it_fits_and_an_error_where_none_would_help():
    assert len(windows(ellipse(180, 180), paper("A4"))) == 1
    with pytest.raises(UsageError, match="sheets of A4") as caught:
        windows(filled(2500, 2500), paper("A4"))
    assert "larger paper" in caught.value.hint


CROSS_MM = 3.5
"""Half the span of the crown's cross."""


LONG = ("baguette-five",)
"""As long as two sheets of A4: no shift takes their seam off the crown."""


@pytest.mark.parametrize("name", [name for name in some(1, 6) if name not in LONG])
def test_no_seam_of_a_shipped_pattern_runs_through_the_crown(name):
    layout = make(name).layout
    crown = drawing_box(layout.loaf)[:2]
    ink = ink_points([guide_plan(layout, groups(layout), crown)])
    for sheet in PAPERS:
        parts = windows(ink, sheet, crown)
        assert covered(ink, parts)
        for strip in strips(parts):
            assert strip.distance(shapely.Point(crown)) > CROSS_MM


@given(st.floats(290, 370), st.floats(-0.3, 0.3))
@settings(max_examples=15)
def test_the_seam_of_two_sheets_keeps_off_the_crown_where_a_shift_lets_it(across, off):
    """The seam may lie wherever both sheets together still reach the ink's ends."""
    ink, at = filled(across, 90.0), across * (0.5 + off)
    parts = sorted(windows(ink, paper("A4"), (at, 45.0)), key=lambda part: part.x)
    assert covered(ink, parts) and len(parts) == 2
    seam, first, second = parts[1].x, parts[0].size.width, parts[1].size.width
    leftmost, rightmost = across + 2 - second, first - OVERLAP - 2
    clear = at + CROSS_MM < rightmost or leftmost < at - CROSS_MM - OVERLAP
    assert not clear or not at - CROSS_MM - OVERLAP < seam < at + CROSS_MM


def test_seams_go_where_the_least_ink_is():
    """Stripes everywhere but in one gap: the seam runs in the gap."""
    rim = ellipse(300, 150) + np.array([150, 75])
    stripes = [
        np.column_stack([np.linspace(0, 300, 301)[keep], np.full(keep.sum(), y)])
        for y in range(10, 150, 10)
        for keep in [np.abs(np.linspace(0, 300, 301) - 170) > 8]
    ]
    parts = windows(np.vstack([rim, *stripes]), paper("A4"))
    seam = max(part.x for part in parts)
    assert abs(seam - 170) < 8
