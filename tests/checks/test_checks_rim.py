import numpy as np
import pytest

from scorecraft.checks.rim import rim
from scorecraft.loaf.dome import make_loaf
from scorecraft.practice import RIM_MARGIN_MM

REACH = 161.22  # of the 220 x 95 mm round loaf


def test_cut_well_inside_is_fine(cut, lay):
    assert rim(lay(cut((0, -100), (0, REACH - RIM_MARGIN_MM.value), depth=8))) == []
    assert rim(lay()) == []


def test_cut_off_the_loaf_stops_and_says_by_how_much(cut, lay):
    (found,) = rim(lay(cut((100, 0), (170, 0))))
    assert found.severity == "stop"
    assert found.figures["over_mm"] == pytest.approx(170 - REACH, abs=0.01)
    assert "8.8 mm off the loaf at 3 o'clock" in found.message
    assert found.cuts == (0,)


def test_deep_cuts_near_the_rim_warn_and_light_ones_are_noted(cut, lay):
    for depth, severity in ((8, "warning"), (2, "note")):
        (found,) = rim(lay(cut((100, 0), (155, 0), depth=depth)))
        assert found.severity == severity
        assert "within 6.2 mm of the rim" in found.message


def test_cures_work(cut, lay):
    """Shortened by the told length, or moved by it toward the crown, the cut keeps the margin."""
    (found,) = rim(lay(cut((100, 0), (170, 0))))
    offered = [each.told for each in found.offers]
    assert offered == ["shorten it by 21 mm", "move it 21 mm toward the crown"]
    shorter, move = found.figures["shorten_mm"], found.figures["move_mm"]
    assert rim(lay(cut((100, 0), (170 - shorter, 0)))) == []
    assert rim(lay(cut((100 - move, 0), (170 - move, 0)))) == []
    assert rim(lay(cut((100, 0), (170 - shorter + 3, 0)))) != []


def test_cut_that_bulges_over_the_rim_cannot_be_shortened(arc, cut, lay):
    (found,) = rim(lay(cut(*arc(60, -80, 80, centre=(105, 0)))))
    assert found.severity == "stop"
    assert not any("shorten" in each.told for each in found.offers)
    move = found.figures["move_mm"]
    assert rim(lay(cut(*arc(60, -80, 80, centre=(105 - move, 0))))) == []


def test_copies_are_told_once(cut, lay):
    copies = [cut((100, y), (170 + y / 10, y)) for y in (-10, 0, 10)]
    (found,) = rim(lay(*copies, cut((0, 100), (0, 200), family=2)))[:1]
    assert found.figures["count"] == 3
    assert found.message.endswith("(2 more like it)")
    assert len(found.cuts) == 3
    assert len(rim(lay(*copies, cut((0, 100), (0, 200), family=2)))) == 2


def test_the_rim_of_a_long_loaf_is_nearer_at_its_sides(cut, lay):
    loaf = make_loaf("long", 120, 320, 70)
    assert rim(lay(cut((0, 0), (0, 150)), loaf=loaf)) == []
    (found,) = rim(lay(cut((0, 0), (150, 0)), loaf=loaf))
    assert found.severity == "stop"


def test_both_offers_work(cut, lay):
    made = lay(cut((100, 0), (170, 0)), cut((0, 170), (0, 100)))
    (found,) = rim(made)
    for offer in found.offers:
        assert rim(offer.layout()) == []
    shorter, inward = (each.layout().cuts for each in found.offers)
    assert shorter[0].line[:, 0] == pytest.approx([100, 149])
    assert shorter[1].line[:, 1] == pytest.approx([149, 100])
    assert inward[0].line == pytest.approx(made.cuts[0].line - [21, 0])
    assert inward[1].line == pytest.approx(made.cuts[1].line - [0, 21])


def test_a_cut_that_is_off_in_the_middle_or_altogether_is_not_shortened(arc, cut, lay):
    both_ends = cut((-170, 20), (170, 20))
    outside = cut((170, -20), (170, 20))
    for each in (both_ends, outside):
        (found,) = rim(lay(each))
        assert "shorten_mm" not in found.figures
        assert [offer.told.split()[0] for offer in found.offers] == ["move"]


@pytest.mark.parametrize(("over", "severity"), [(-12.6, None), (-11.6, None), (-11.4, "note"),
                                                (0.4, "note"), (0.6, "stop")])  # fmt: skip
def test_half_a_millimetre_is_let_pass(cut, lay, over, severity):
    found = rim(lay(cut((100, 0), (REACH + over, 0), depth=2)))
    assert [each.severity for each in found] == ([severity] if severity else [])


def test_the_furthest_point_tells_the_place(cut, lay):
    (found,) = rim(lay(cut((0, 100), (0, 165)), cut((0, -100), (0, -168), (0, -90))))
    assert found.place.line == 1 and "at 6 o'clock" in found.message
    assert found.figures["over_mm"] == pytest.approx(168 - REACH, abs=0.01)


RING = make_loaf("ring", 280, None, 45, (2.0, 2.0), hole_mm=100)
"""Half a torus: its hole ends 50 mm from the middle, its rim 191.4 mm."""


@pytest.mark.parametrize(
    ("near", "severity"), [(61.0, "note"), (61.6, None), (50.4, "note"), (40.0, "stop")]
)
def test_the_hole_of_a_ring_is_a_rim_too(cut, lay, near, severity):
    found = rim(lay(cut((0, 110), (0, near), depth=3), loaf=RING))
    assert [each.severity for each in found] == ([severity] if severity else [])


def test_a_cut_into_the_hole_is_shortened_or_moved_outward(cut, lay):
    made = lay(cut((0, 110), (0, 42)), cut((90, 0), (42, 0)), loaf=RING)
    (found,) = rim(made)
    assert found.message.startswith("the slash runs 8 mm into the hole at 12 o'clock")
    assert found.figures["over_mm"] == pytest.approx(8)
    assert found.figures["move_mm"] == pytest.approx(20)
    assert found.figures["shorten_mm"] == pytest.approx(20, abs=0.02)
    shorter, outward = found.offers
    assert (shorter.told, outward.told) == (
        "shorten it by 20 mm",
        "move it 20 mm away from the hole",
    )
    assert shorter.layout().cuts[0].line[:, 1] == pytest.approx([110, 62])
    assert outward.layout().cuts[1].line == pytest.approx(made.cuts[1].line + np.array([20, 0]))


def test_a_cut_across_the_hole_is_found_between_its_points(cut, lay):
    """It ends on the dough on either side: the middle of the way is 50 mm into the hole."""
    (found,) = rim(lay(cut((-100, 0), (100, 0)), loaf=RING))
    assert found.severity == "stop" and found.figures["over_mm"] == pytest.approx(50, abs=0.1)
    assert "shorten_mm" not in found.figures


def test_of_cuts_at_either_rim_each_moves_its_own_way(cut, lay):
    """One 8 mm into the hole, one 8.6 mm off the rim."""
    made = lay(cut((0, 110), (0, 42)), cut((150, 0), (200, 0)), loaf=RING)
    (found,) = rim(made)
    (inward,) = (each for each in found.offers if each.told.startswith("move"))
    assert inward.told == "move it 21 mm toward the crown"
    assert "off the loaf at 3 o'clock, just above the base" in found.message
    moves = [a.line[0] - b.line[0] for a, b in zip(inward.layout().cuts, made.cuts, strict=True)]
    assert moves == [pytest.approx([0, 21]), pytest.approx([-21, 0])]


def test_close_to_the_hole_is_told_by_its_distance(cut, lay):
    (found,) = rim(lay(cut((0, 110), (0, 55), depth=8), loaf=RING))
    assert found.severity == "warning" and "comes within 5 mm of the rim" in found.message
    assert found.offers[0].told == "shorten it by 7 mm"


def test_the_end_that_is_too_far_is_shortened_however_the_cut_bends(cut, lay):
    """The middle point is farther from the rim at 12 o'clock than either end."""
    made = lay(cut((20, 0), (-40, 0), (0, 165)), cut((0, 165), (-40, 0), (20, 0)))
    (found,) = rim(made)
    shorter = found.offers[0].layout().cuts
    assert shorter[0].line[0].tolist() == shorter[1].line[-1].tolist() == [20, 0]
    assert rim(found.offers[0].layout()) == []


def test_near_the_outer_rim_of_a_ring_a_cut_moves_inward(cut, lay):
    (found,) = rim(lay(cut((150, 0), (185, 0)), loaf=RING))
    assert found.offers[-1].told == "move it 6 mm toward the crown"
    assert rim(found.offers[-1].layout()) == []
