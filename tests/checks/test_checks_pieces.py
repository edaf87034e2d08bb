import math

import pytest

from scorecraft.checks.pieces import pieces
from scorecraft.motifs.leaf import leaf


def triangle(cut, depth, side=30.0, **more):
    corners = [(0, 0), (side, 0), (side / 2, side * math.sqrt(3) / 2)]
    return [cut(corners[k], corners[(k + 1) % 3], depth=depth, **more) for k in range(3)]


@pytest.mark.parametrize(
    ("depth", "severity"), [(9, "stop"), (8, "stop"), (6, "warning"), (4, "note"), (2.5, None)]
)
def test_deeper_is_graver_and_light_cells_are_passed_over(cut, lay, depth, severity):
    found = pieces(lay(*triangle(cut, depth)))
    assert [each.severity for each in found] == ([severity] if severity else [])


def test_figures(cut, lay):
    (found,) = pieces(lay(*triangle(cut, 9)))
    assert found.figures["area_cm2"] == pytest.approx(30**2 * math.sqrt(3) / 4 / 100)
    assert "a piece of 3.9 cm² near the crown" in found.message
    assert {tuple(p) for p in found.shapes[0].round(6)} == {(0, 0), (30, 0), (15, 25.980762)}


def test_cures_work(cut, lay):
    """With the told gap in one cut, or one cut as shallow as told, nothing lifts off."""
    (found,) = pieces(lay(*triangle(cut, 9)))
    first, second, third = triangle(cut, 9)
    gapped = cut((found.figures["gap_mm"], 0), (30, 0), depth=9)
    assert pieces(lay(gapped, second, third)) == []
    shallow = cut((0, 0), (30, 0), depth=found.figures["shallow_mm"])
    assert pieces(lay(shallow, second, third)) == []
    assert pieces(lay(first, second, third)) != []


def test_the_shallowest_side_counts(cut, lay):
    _, second, third = triangle(cut, 9)
    (found,) = pieces(lay(cut((0, 0), (30, 0), depth=5.5), second, third))
    assert found.severity == "warning"


def test_ends_that_just_fail_to_meet_are_taken_to_meet(cut, lay):
    _, second, third = triangle(cut, 9)
    assert pieces(lay(cut((0.8, 0), (29.2, 0), depth=9), second, third)) != []
    assert pieces(lay(cut((5, 0), (25, 0), depth=9), second, third)) == []


def test_large_piece_is_a_lid(cut, lay):
    (found,) = pieces(lay(*triangle(cut, 9, side=100)))
    assert found.severity == "note"
    assert "lid" in found.message


def test_ring(arc, cut, lay):
    ring = arc(20, 0, 360)
    ring[-1] = ring[0]
    (found,) = pieces(lay(cut(*ring, depth=8)))
    assert found.figures["area_cm2"] == pytest.approx(math.pi * 4, rel=0.01)


def test_leaf_keeps_its_stem(cut, lay):
    strokes = leaf(length=58, width=24, veins=4, vein_angle=math.radians(38))
    assert pieces(lay(*(cut(*s.line, depth=8, figure=1) for s in strokes))) == []


def test_pieces_of_one_statement_are_told_once_and_deep_ones_not_again(cut, lay):
    rows = [cut((-30, y), (30, y), depth=9) for y in (-20, 0, 20)]
    columns = [cut((x, -30), (x, 30), depth=9) for x in (-20, 0, 20)]
    (found,) = pieces(lay(*rows, *columns))
    assert found.figures["count"] == 4
    assert found.message.endswith("(3 more like it)")
    assert len(found.shapes) == 4


def test_no_cuts(lay):
    assert pieces(lay()) == []


def test_open_cross_has_no_pieces(cut, lay):
    assert pieces(lay(cut((-50, 0), (50, 0), depth=9), cut((0, -50), (0, 50), depth=9))) == []
