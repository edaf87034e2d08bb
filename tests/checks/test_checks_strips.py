import math

import numpy as np
import pytest

from scorecraft.checks import LOOKS
from scorecraft.checks.cures import holds
from scorecraft.checks.strips import strips
from scorecraft.motifs.leaf import leaf
from scorecraft.motifs.spiral import spiral
from scorecraft.practice import STRIP_PER_DEPTH


def level(cut, y, depth, **more):
    return cut((-50, y), (50, y), depth=depth, **more)


@pytest.mark.parametrize(
    ("width", "depths", "severity"),
    [
        (12, (8, 8), None),
        (8, (8, 8), "warning"),
        (3, (8, 8), "stop"),
        (8, (8, 4), None),
        (4, (3, 3), None),
        (3, (3, 3), "note"),
        (1.5, (3, 3), "warning"),
        (1.5, (1, 1), "note"),
    ],
)
def test_width_that_holds_depends_on_both_depths(cut, lay, width, depths, severity):
    found = strips(lay(level(cut, 0, depths[0]), level(cut, width, depths[1])))
    assert [each.severity for each in found] == ([severity] if severity else [])


def test_figures(cut, lay):
    (found,) = strips(lay(level(cut, 0, 8), level(cut, 7, 6, family=2)))
    assert found.figures["width_mm"] == pytest.approx(7, abs=0.2)
    assert found.figures["wanted_mm"] == pytest.approx(STRIP_PER_DEPTH.value * 7)
    assert found.figures["run_mm"] == pytest.approx(100, abs=4)
    assert found.place.line == 2
    assert "of dough between one slash and the next, near the crown" in found.message


def test_cures_work(cut, lay):
    """Moved apart by the told distance, or cut at the told depth, the strip holds."""
    (found,) = strips(lay(level(cut, 0, 8), level(cut, 7, 8)))
    assert found.offers[0].told == "move them 3 mm farther apart"
    assert strips(lay(level(cut, 0, 8), level(cut, 7 + 3, 8))) == []
    shallow = found.figures["depth_mm"] - 0.1
    assert strips(lay(level(cut, 0, shallow), level(cut, 7, shallow))) == []


def test_width_is_measured_on_the_dough(cut, lay):
    """Low on the side the sheet is wider around the loaf than the dough."""
    spokes = [cut((110, y), (145, y), depth=6) for y in (-4, 4)]
    (found,) = strips(lay(*spokes))
    assert found.figures["width_mm"] < 7
    assert strips(lay(cut((-20, -4), (20, -4), depth=6), cut((-20, 4), (20, 4), depth=6))) == []


@pytest.mark.parametrize(("depth", "vein_depth"), [(6, 2.5), (7, 3)])
def test_leaf_is_no_strip(cut, lay, depth, vein_depth):
    """Tips, veins at the midrib and veins near the outline come together at an angle."""
    strokes = leaf(length=58, width=24, veins=4, vein_angle=math.radians(38))
    cuts = [
        cut(
            *(stroke.line + np.array([0, 26])),
            depth=vein_depth if stroke.part == "vein" else depth,
            word="leaf",
            part=stroke.part,
            figure=1,
        )
        for stroke in strokes
    ]
    assert strips(lay(*cuts)) == []


def test_slender_leaf_is(cut, lay):
    strokes = leaf(length=80, width=9, veins=0, vein_angle=1.0)
    cuts = [cut(*s.line, depth=6, word="leaf", part=s.part, figure=1) for s in strokes]
    (found,) = strips(lay(*cuts))
    assert "the leaf midrib and the leaf outline" in found.message
    assert found.figures["count"] == 2


def test_rays_that_part_are_no_strips(cut, lay):
    turns = [math.radians(15 * k) for k in range(24)]
    rays = [
        cut(*(r * np.array([math.cos(t), math.sin(t)]) for r in (8, 70)), depth=5) for t in turns
    ]
    assert strips(lay(*rays)) == []


def test_crossing_lines_are_no_strips(cut, lay):
    rows = [cut((-60, y), (60, y), depth=5) for y in range(-40, 41, 8)]
    columns = [cut((x, -60), (x, 60), depth=5) for x in range(-40, 41, 8)]
    assert strips(lay(*rows, *columns)) == []


def test_turns_of_a_spiral(cut, lay):
    def turns(pitch):
        (stroke,) = spiral(radius=10 + 5 * pitch, inner=10, turns=5, clockwise=True)
        return lay(cut(*stroke.line, depth=6))

    (found,) = strips(turns(5))
    assert "the turns of the slash" in found.message
    assert found.figures["width_mm"] == pytest.approx(5, abs=0.3)
    assert strips(turns(8)) == []


@pytest.mark.parametrize("radius", [3.5, 30])
def test_a_ring_is_not_beside_itself(arc, cut, lay, radius):
    """However small: its far side is the same bend, not a next turn."""
    ring = arc(radius, 0, 360, n=200)
    ring[-1] = ring[0]
    assert strips(lay(cut(*ring, depth=8))) == []


def test_legs_of_a_hairpin(arc, cut, lay):
    bend = arc(3, 0, 180, centre=(0, 40))
    (found,) = strips(lay(cut((3, -40), *bend, (-3, -40), depth=6)))
    assert found.figures["width_mm"] == pytest.approx(6, abs=0.2)


def test_short_strokes_side_by_side(cut, lay):
    assert strips(lay(cut((0, 0), (6, 0), depth=4), cut((0, 2), (6, 2), depth=4))) != []
    assert strips(lay(cut((0, 0), (6, 0), depth=5), cut((0, 5), (6, 5), depth=5))) == []


def test_lines_end_to_end_are_no_strip(cut, lay):
    assert strips(lay(cut((-60, 0), (-2, 0), depth=8), cut((2, 0), (60, 0), depth=8))) == []


def test_copies_are_told_once(cut, lay):
    (found,) = strips(lay(*(level(cut, y, 8) for y in (0, 6, 13, 18.5))))
    assert found.figures["count"] == 3
    assert found.figures["width_mm"] == pytest.approx(5.5, abs=0.15)
    assert len(found.cuts) == 4
    assert strips(lay()) == []


def test_a_strip_that_almost_holds_is_told_with_figures_that_differ(cut, lay):
    (found,) = strips(lay(level(cut, 0, 12), level(cut, 14.24, 12)))
    width, wanted = found.figures["width_mm"], found.figures["wanted_mm"]
    assert f"{width:.0f}" == f"{wanted:.0f}" == "14"
    assert f"only {width:.1f} mm of dough" in found.message
    assert f"leave {wanted:.1f} mm" in found.message


def test_no_cure_makes_a_cut_too_shallow_for_what_it_is_for(cut, lay):
    """A strip that an expansion cut of 2 mm would leave: the depth check would warn of that."""
    (found,) = strips(lay(level(cut, 0, 8), level(cut, 2.6, 8)))
    assert holding(lay(level(cut, 0, 8), level(cut, 2.6, 8)), found) == [
        "move them 7.5 mm farther apart"
    ]
    (found,) = strips(lay(level(cut, 0, 4), level(cut, 2.6, 4)))
    assert "cut them no deeper than 2.1 mm" in [each.told for each in found.offers]


def holding(layout, found):
    return [each.told for each in found.offers if holds(each, layout, found, [found], LOOKS)]


def test_offers_work(cut, lay):
    made = lay(level(cut, 0, 8), level(cut, 7, 8))
    (found,) = strips(made)
    apart, shallower = found.offers
    assert [each.line[0, 1] for each in apart.layout().cuts] == pytest.approx([-1.5, 8.5])
    assert shallower.told == "cut them no deeper than 5.7 mm"
    assert [each.depth_mm for each in shallower.layout().cuts] == [5.7, 5.7]
    assert strips(apart.layout()) == strips(shallower.layout()) == []
    assert found.figures["apart_mm"] == pytest.approx(9.6 - 7, abs=0.3)
    assert found.figures["depth_mm"] == pytest.approx(7 / 1.2, abs=0.2)


def test_turns_of_one_cut_cannot_be_moved_apart_and_count_once(arc, cut, lay):
    bend = arc(3, 0, 180, centre=(0, 40))
    (found,) = strips(lay(cut((3, -40), *bend, (-3, -40), depth=6)))
    assert [each.told.split()[0] for each in found.offers] == ["cut"]
    assert found.figures["run_mm"] == pytest.approx(80, abs=6) and found.figures["count"] == 1


@pytest.mark.parametrize(
    ("run", "length", "any_strip"),
    [(8.0, 60, False), (12.0, 60, True), (5.0, 12, False), (8.5, 12, True)],
)
def test_a_strip_counts_from_ten_millimetres_or_from_most_of_the_shorter_cut(
    cut, lay, run, length, any_strip
):
    """Two cuts 3 mm apart that lie side by side for a stretch of their ways."""
    made = lay(cut((0, 0), (60, 0), depth=4), cut((60 - run, 3), (60 - run + length, 3), depth=4))
    assert bool(strips(made)) is any_strip


def test_a_strip_is_longer_than_wide(cut, lay):
    """Half as long again: short strokes further apart than that are a row, no strip."""
    made = [lay(*(cut((0, y), (9, y), depth=6) for y in (0, wide))) for wide in (5.8, 6.6)]
    assert [bool(strips(each)) for each in made] == [True, False]


def test_a_strip_is_told_where_its_middle_is(cut, lay):
    (found,) = strips(lay(cut((60, -80), (60, 80), depth=6), cut((64, -80), (64, 80), depth=6)))
    assert "at 3 o'clock" in found.message


@pytest.mark.parametrize(("width", "severity"), [(2.3, "stop"), (2.5, "warning")])
def test_less_than_four_tenths_of_what_is_wanted_between_cuts_through_the_skin_stops(
    cut, lay, width, severity
):
    """Cuts 5 mm deep want 6 mm."""
    (found,) = strips(lay(level(cut, 0, 5), level(cut, width, 5)))
    assert found.severity == severity


def test_where_a_tenth_of_a_strip_is_narrower_it_is_told_by_the_rest(cut, lay):
    """Two cuts 6 mm apart, one with a short step toward the other."""
    step = [(-50, 6), (40, 6), (44, 3), (46, 3), (50, 6)]
    (found,) = strips(lay(level(cut, 0, 8), cut(*step, depth=8)))
    assert found.figures["width_mm"] == pytest.approx(6, abs=0.1)


def test_the_strip_that_lacks_most_for_its_depth_is_told(cut, lay):
    """6 of 9.6 mm between deep cuts before 4.5 of 5.4 mm between lighter ones."""
    deep, light = (level(cut, y, 8) for y in (0, 6)), (level(cut, y, 4.5) for y in (40, 44.5))
    (found,) = strips(lay(*light, *deep))
    assert found.figures["count"] == 2 and found.figures["wanted_mm"] == pytest.approx(9.6)
    assert found.offers[1].told == "cut them no deeper than 3.6 mm"


@pytest.mark.parametrize(
    ("depths", "severity"),
    [((4.5, 5), "warning"), ((4.5, 5.5), "stop"), ((4, 4), "warning"), ((2, 8), "stop")],
)
def test_what_stops_are_cuts_that_part_the_skin_between_them(cut, lay, depths, severity):
    """1.5 mm are less than four tenths of what any of them wants; 5 mm deep on average stop."""
    (found,) = strips(lay(level(cut, 0, depths[0]), level(cut, 1.5, depths[1])))
    assert found.severity == severity


@pytest.mark.parametrize(("width", "severity"), [(2.8, "warning"), (3.0, "note")])
def test_between_cuts_in_the_skin_six_tenths_are_only_noted(cut, lay, width, severity):
    """Cuts 4 mm deep want 4.8 mm; with one of 4.1 mm nothing is a note."""
    (found,) = strips(lay(level(cut, 0, 4), level(cut, width, 4)))
    assert found.severity == severity
    (deeper,) = strips(lay(level(cut, 0, 4), level(cut, width, 4.1)))
    assert deeper.severity == "warning"


def test_however_thin_a_strip_is_a_depth_that_it_holds_is_told(cut, lay):
    (found,) = strips(lay(level(cut, 0, 8), level(cut, 0.63, 8)))
    assert found.offers[1].told == "cut them no deeper than 0.5 mm"
    assert found.offers[0].told == "move them 9.5 mm farther apart"


def test_every_pair_of_cuts_is_told_whatever_their_order(cut, lay):
    (found,) = strips(lay(*(level(cut, y, 8) for y in (0, 12, 6))))
    assert found.figures["count"] == 2 and found.cuts == (0, 1, 2)
