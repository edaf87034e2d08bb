import math
from dataclasses import replace

import numpy as np
import pytest

from scorecraft.checks.pieces import pieces
from scorecraft.motifs.leaf import leaf


def triangle(cut, depth, side=30.0, **more):
    corners = [(0, 0), (side, 0), (side / 2, side * math.sqrt(3) / 2)]
    return [cut(corners[k], corners[(k + 1) % 3], depth=depth, **more) for k in range(3)]


@pytest.mark.parametrize(
    ("depth", "severity"), [(11, "stop"), (9, "warning"), (7, "warning"), (4, None), (2.5, None)]
)
def test_deeper_is_graver_and_light_cells_are_passed_over(cut, lay, depth, severity):
    """A triangle of 30 mm has a circle of 17.3 mm inside."""
    found = pieces(lay(*triangle(cut, depth)))
    assert [each.severity for each in found] == ([severity] if severity else [])


@pytest.mark.parametrize(
    ("side", "severity"), [(14, "stop"), (30, "warning"), (60, "note"), (70, None)]
)
def test_smaller_is_graver(cut, lay, side, severity):
    found = pieces(lay(*triangle(cut, 8, side=side)))
    assert [each.severity for each in found] == ([severity] if severity else [])


@pytest.mark.parametrize(("rises", "undercut"), [(1, True), (-1, False)])
def test_only_the_lip_that_lies_over_a_piece_undercuts_it(cut, lay, rises, undercut):
    """A triangle cut counter-clockwise has its inside on the left of every stroke."""
    sides = [replace(each, rises=rises) for each in triangle(cut, 7, blade=45)]
    (found,) = pieces(lay(*sides))
    assert bool(found.figures["undercut_share"] > 0.5) is undercut
    assert found.severity == ("stop" if undercut else "warning")
    assert ("undercut" in found.message) is undercut
    for offer in found.offers:
        assert [each.severity for each in pieces(offer.layout())] in ([], ["warning"])
    first = "hold the blade upright" if undercut else "cut the slash no deeper than 5.5 mm"
    assert found.offers[0].told == first


def test_figures(cut, lay):
    (found,) = pieces(lay(*triangle(cut, 9)))
    assert found.figures["area_cm2"] == pytest.approx(30**2 * math.sqrt(3) / 4 / 100)
    assert "a piece of 3.9 cm² near the crown" in found.message
    assert {tuple(p) for p in found.shapes[0].round(6)} == {(0, 0), (30, 0), (15, 25.980762)}


def test_the_shallowest_side_counts(cut, lay):
    """One side that leaves the skin whole is a hinge."""
    _, second, third = triangle(cut, 9)
    assert pieces(lay(cut((0, 0), (30, 0), depth=5.5), second, third)) == []
    (found,) = pieces(lay(cut((0, 0), (30, 0), depth=6.5), second, third))
    assert found.figures["depth_mm"] == 6


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


def test_both_offers_work(cut, lay):
    made = lay(*triangle(cut, 9))
    (found,) = pieces(made)
    assert [each.told for each in found.offers] == [
        "cut the slash no deeper than 5.5 mm",
        "leave a gap of 8 mm in the slash",
    ]
    shallow, gapped = (each.layout() for each in found.offers)
    assert gapped.cuts[0].line == pytest.approx(np.array([[7, 0], [30, 0]]), abs=6.1)
    assert pieces(gapped) == []
    assert sorted(each.depth_mm for each in shallow.cuts) == [5.5, 9, 9] and pieces(shallow) == []
    assert found.figures["depth_mm"] == 9


@pytest.mark.parametrize(("side", "any_piece"), [(2.9, False), (3.2, True)])
def test_a_crumb_is_no_piece(cut, lay, side, any_piece):
    """Four square millimetres are too small to lift."""
    assert bool(pieces(lay(*triangle(cut, 9, side=side)))) is any_piece


@pytest.mark.parametrize(("short", "any_piece"), [(0.9, True), (2.1, False)])
def test_ends_within_a_millimetre_of_another_cut_meet_it(cut, lay, short, any_piece):
    """Both ends are carried on by 1 mm, along the cut."""
    square = [((0, 0), (0, 30)), ((30, 0), (30, 30)), ((-5, 0), (35, 0))]
    lid = cut((short, 30), (30 - short, 30), depth=9)
    assert bool(pieces(lay(*(cut(*each, depth=9) for each in square), lid))) is any_piece


def test_pieces_and_lids_are_told_apart(arc, cut, lay):
    """Each by its smallest, where that is."""

    def ring(radius, x):
        points = arc(radius, 0, 360, centre=(x, 0))
        points[-1] = points[0]
        return cut(*points, depth=9)

    found = pieces(lay(ring(8, -70), ring(12, 70), ring(45, 0)))
    assert [each.severity for each in found] == ["warning", "note"]
    assert found[0].figures["area_cm2"] == pytest.approx(math.pi * 0.64, rel=0.01)
    assert found[0].figures["count"] == 2 and "at 9 o'clock" in found[0].message
    assert "near the crown" in found[1].message and found[1].cuts == (2,)


def ring_of(arc, cut, radius, x=0.0, **more):
    points = arc(radius, 0, 360, centre=(x, 0), n=200)
    points[-1] = points[0]
    return cut(*points, **more)


@pytest.mark.parametrize(
    ("radii", "depth", "told"),
    [
        ((18, 22), 16, "6.5"),  # a fifth of 36 mm is 7.2, half a step less; of 44 mm 8.8
        ((20.5, 20.5), 16, "7.5"),  # a fifth of 41 mm is 8.2: 8 mm would be too near it
        ((8, 8), 9, "5.5"),  # under 6 mm it may be 0.6 of 16 mm deep: less than 6 mm then
        ((4.5, 4.5), 6, "5"),  # 0.6 of 9 mm are 5.4
        ((2.0, 2.0), 6, "3.5"),  # 0.6 of 4 mm are less than what is looked at at all
    ],
)
def test_the_depth_that_holds_is_told_for_the_smallest_as_a_hand_can_cut(
    arc, cut, lay, radii, depth, told
):
    rings = [ring_of(arc, cut, r, x, depth=depth) for r, x in zip(radii, (-50, 50), strict=True)]
    (found,) = pieces(lay(*rings))
    assert found.figures["count"] == 2
    assert found.offers[0].told == f"cut the slash no deeper than {told} mm"


@pytest.mark.parametrize(("depth", "radius", "severity"), [
    (5.9, 4.0, "note"), (5.9, 4.3, None), (6.0, 8.5, "warning"), (6.0, 8.7, "note"),
    (6.0, 4.9, "stop"), (6.0, 5.1, "warning"), (6.0, 14.9, "note"), (6.0, 15.1, None),
    (3.9, 1.2, None),
])  # fmt: skip
def test_how_grave_a_piece_is_goes_by_its_depth_over_its_width(
    arc, cut, lay, depth, radius, severity
):
    """A disc is as wide as its diameter; 5.9 mm count as 5: 0.6 of the width at 8.3 mm."""
    found = pieces(lay(ring_of(arc, cut, radius, depth=depth)))
    assert [each.severity for each in found] == ([severity] if severity else [])


@pytest.mark.parametrize(("radius", "lid"), [(30.8, False), (31.0, True)])
def test_more_than_thirty_square_centimetres_are_a_lid(arc, cut, lay, radius, lid):
    found = pieces(lay(ring_of(arc, cut, radius, depth=20)))
    assert [("lid" in each.message) for each in found] == [lid]


@pytest.mark.parametrize("rises", [1, None])
def test_a_slanted_ring_undercuts_what_its_lip_lies_over(arc, cut, lay, rises):
    """6 mm deep at 45 degrees leave a disc of 14 mm of one of 20 mm: 0.51 of its area is lost.

    Drawn counter-clockwise its inside is on the left; that is taken where nothing is said, too.
    """
    ring = replace(ring_of(arc, cut, 20.0, depth=6, blade=45), rises=rises)
    (found,) = pieces(lay(ring))
    assert found.figures["undercut_share"] == pytest.approx(1 - 0.7**2, abs=0.01)
    assert found.figures["width_mm"] == pytest.approx(40 * 0.49, rel=0.01)


def test_a_gap_is_left_in_every_piece(arc, cut, lay):
    rings = [ring_of(arc, cut, 12.0, x, depth=9) for x in (-50, 50)]
    (found,) = pieces(lay(*rings))
    gapped = found.offers[-1].layout()
    assert found.offers[-1].told == "leave a gap of 8 mm in the slash" and pieces(gapped) == []
    assert [int(each.line[:, 0].mean() > 0) for each in gapped.cuts].count(1) == 2
    lost = 2 * 2 * math.pi * 12 - sum(
        np.hypot(*np.diff(c.line, axis=0).T).sum() for c in gapped.cuts
    )
    assert lost == pytest.approx(16, abs=0.1)
    assert found.cuts == (0, 1) and len(found.shapes) == 2
