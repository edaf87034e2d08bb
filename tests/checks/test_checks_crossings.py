import math

import pytest

from scorecraft.checks.crossings import crossings
from scorecraft.practice import SHARP_CROSSING_DEG


def ray(angle, length=50.0):
    turn = math.radians(angle)
    end = (length * math.cos(turn), length * math.sin(turn))
    return (-end[0], -end[1]), end


def test_cross_and_lattice_of_one_figure_are_meant(cut, lay):
    for angle in (90, 60, 30):
        bars = [cut(*ray(0), depth=8, figure=1), cut(*ray(angle), depth=8, figure=1)]
        assert crossings(lay(*bars)) == []


def test_sharp_crossing_of_one_figure_warns(cut, lay):
    (found,) = crossings(lay(cut(*ray(0), depth=8, figure=1), cut(*ray(15), depth=8, figure=1)))
    assert found.severity == "warning"
    assert "cross at only 15° near the crown" in found.message
    assert found.figures["angle_deg"] == pytest.approx(15, abs=0.1)


def test_turning_by_the_told_angle_is_a_cure(cut, lay):
    first = cut(*ray(0), depth=8, figure=1)
    (found,) = crossings(lay(first, cut(*ray(15), depth=8, figure=1)))
    turned = 15 + found.figures["turn_deg"]
    assert turned >= SHARP_CROSSING_DEG.value
    assert crossings(lay(first, cut(*ray(turned + 0.1), depth=8, figure=1))) == []


def test_angle_is_measured_on_the_dough(cut, lay):
    """Low on the side the dough is narrower around the loaf than the sheet."""
    first = cut((80, -12), (140, 12), depth=8, figure=1)
    (found,) = crossings(lay(first, cut((80, 0), (140, 0), depth=8, figure=1)))
    flat = math.degrees(math.atan2(12, 30))
    assert found.figures["angle_deg"] < flat - 1


def test_figures_that_cross(cut, lay):
    vein = {"word": "leaf", "part": "outline", "depth": 6}
    (found,) = crossings(
        lay(cut((0, 0), (60, 0), figure=1, **vein), cut((50, -30), (50, 30), figure=2, **vein))
    )
    assert found.severity == "warning"
    assert found.message == "two leaf outlines cross at 3 o'clock"


def test_cures_of_crossing_figures_work(cut, lay):
    """Ended sooner, or moved apart, by the told length the figures are clear of each other."""
    upright = cut((50, -30), (50, 30), family=2, depth=8)
    (found,) = crossings(lay(cut((0, 0), (60, 0), depth=8), upright))
    assert found.severity == "note"
    shorter, apart = found.figures["shorten_mm"], found.figures["apart_mm"]
    assert 10 < shorter < 16
    assert f"shorten the slash by {shorter:.0f} mm" in [each.told for each in found.offers]
    assert crossings(lay(cut((0, 0), (60 - shorter, 0), depth=8), upright)) == []
    assert crossings(lay(cut((-apart, 0), (60 - apart, 0), depth=8), upright)) == []


def test_two_crossings_of_a_pair_are_both_trimmed(arc, cut, lay):
    """The line has to end past both crossings, at 19.6 mm to either side."""
    bow = cut(*arc(20, -90, 90, centre=(40, 0)), family=2, depth=6)
    (found,) = crossings(lay(cut((44, -22), (44, 60), depth=6), bow))
    assert found.figures["count"] == 2
    shorter = found.figures["shorten_mm"]
    assert 41.6 < shorter < 50
    assert crossings(lay(cut((44, shorter - 22), (44, 60), depth=6), bow)) == []


def test_joints_are_no_crossings(cut, lay):
    midrib = cut((0, 0), (0, 60), depth=6, figure=1, word="leaf", part="midrib")
    for figure in (1, 2):
        vein = cut((0, 20), (15, 35), depth=2, figure=figure, word="leaf", part="vein")
        tee = cut((-0.5, 40), (30, 40), depth=6, figure=figure)
        assert crossings(lay(midrib, vein, tee)) == []


def test_shallow_crossings_of_statements_are_noted_and_of_copies_passed_over(cut, lay):
    first = cut((0, 0), (60, 0), depth=3)
    (found,) = crossings(lay(first, cut((30, -30), (30, 30), family=2, depth=3)))
    assert found.severity == "note"
    assert crossings(lay(first, cut((30, -30), (30, 30), depth=3))) == []


def test_a_closed_ring_has_no_ends(arc, cut, lay):
    ring = arc(40, 0, 360)
    ring[-1] = ring[0]
    (found,) = crossings(lay(cut(*ring, depth=6), cut((0, 0), (60, 0), family=2, depth=6)))
    assert found.figures["count"] == 1


def test_cut_that_crosses_itself(cut, lay):
    loop = cut((0, 0), (40, 0), (40, 30), (20, 30), (20, -20), depth=6)
    (found,) = crossings(lay(loop))
    assert found.severity == "warning"
    assert "crosses itself" in found.message


def test_copies_are_told_once(cut, lay):
    rows = [cut((-60, y), (60, y), depth=8) for y in (-20, 0, 20)]
    columns = [cut((x, -60), (x, 60), depth=8, family=2) for x in (-20, 0, 20)]
    (found,) = crossings(lay(*rows, *columns))
    assert found.figures["count"] == 9
    assert len(found.cuts) == 6


def cured(found, layout):
    """The offers that leave no crossing, by their words."""
    return [each.told for each in found.offers if crossings(each.layout()) == []]


def test_every_offer_for_a_sharp_crossing_works(cut, lay):
    made = lay(cut(*ray(0), depth=8, figure=1), cut(*ray(15.3), depth=8, figure=2, family=2))
    (found,) = crossings(made)
    told = [each.told for each in found.offers]
    assert told[:2] == ["turn the slash 10° clockwise", "turn the slash 10° counter-clockwise"]
    assert found.figures["turn_deg"] == 10 and found.place.line == 2
    clockwise = found.offers[0].layout().cuts
    assert math.atan2(*clockwise[0].line[1][::-1]) == pytest.approx(math.radians(-10))
    assert clockwise[1] is made.cuts[1]
    assert found.offers[2].told.startswith("shorten the slash by")
    assert crossings(found.offers[2].layout()) == []


def test_a_line_of_a_figure_is_turned_alone_and_a_figure_whole(cut, lay):
    leaf = {"word": "leaf", "depth": 8, "figure": 1}
    rib, vein = cut(*ray(0), part="midrib", **leaf), cut(*ray(15.3), part="vein", **leaf)
    (found,) = crossings(lay(rib, vein))
    assert found.offers[0].told == "turn the leaf midrib 10° clockwise"
    assert [a is b for a, b in zip(found.offers[0].layout().cuts, (rib, vein), strict=True)] == [
        False,
        True,
    ]
    other = cut((0, 40), (20, 40), part="tip", **leaf)
    star = cut(*ray(15.3), word="star", depth=8, figure=2)
    (found,) = crossings(lay(rib, other, star))
    turned = found.offers[0].layout().cuts
    assert found.offers[0].told == "turn the leaf 10° clockwise"
    assert turned[2] is star and turned[1].line[0, 1] != 40


def test_several_sharp_crossings_are_not_turned(cut, lay):
    rows = [cut((-60, y), (60, y), depth=8) for y in (0, 30)]
    slope = cut((-60, -8), (60, 8 + 30), depth=8, family=2)
    (found,) = crossings(lay(*rows, slope))
    assert found.figures["count"] == 2 and len(found.offers) == 1


def test_offers_for_crossing_figures_part_them(cut, lay):
    made = lay(cut((0, 0), (60, 0), depth=8), cut((50, -30), (50, 30), family=2, depth=8))
    (found,) = crossings(made)
    assert cured(found, made) == ["move the figures 14 mm farther apart", SHORTEN]
    assert found.figures["apart_mm"] == pytest.approx(14)
    assert found.figures["angle_deg"] == pytest.approx(90, abs=1)
    left, right = found.offers[0].layout().cuts
    assert left.line[0, 0] == pytest.approx(-7) and right.line[0, 0] == pytest.approx(57)


SHORTEN = "shorten the slash by 14 mm"


def test_figures_about_one_middle_cannot_be_moved_apart(cut, lay):
    made = lay(cut((-60, 0), (60, 0), depth=8), cut((0, -30), (0, 30), family=2, depth=8))
    (found,) = crossings(made)
    assert "apart_mm" not in found.figures and len(found.offers) == 1


def test_the_crossing_that_needs_most_is_told(cut, lay):
    """Two columns stand 5 and 15 mm from the end of a row: it ends before the farther one."""
    row = cut((-60, 0), (60, 0), depth=8)
    columns = [cut((x, -40), (x, 40), depth=8, family=2) for x in (55, 20)]
    (found,) = crossings(lay(row, *columns))
    assert found.figures["count"] == 2
    assert found.figures["shorten_mm"] == pytest.approx(44, abs=0.5)
    assert found.message == "two slashes cross near the crown (1 more like it)"


def test_a_slanted_crossing_needs_more_of_the_cut_off(cut, lay):
    """4 mm of dough beside a line crossed at 30 degrees are 8 mm along the cut."""
    made = lay(cut(*ray(30, 20), depth=8), cut(*ray(0), depth=8, family=2))
    (found,) = crossings(made)
    assert found.figures["shorten_mm"] == pytest.approx(
        20 + 4 / math.sin(math.radians(30)), abs=0.2
    )


@pytest.mark.parametrize(("depth", "severity"), [(4.0, "note"), (4.5, "warning")])
def test_figures_that_cross_in_the_skin_are_only_noted(cut, lay, depth, severity):
    vein = {"word": "leaf", "part": "vein", "family": 2}
    made = lay(cut(*ray(0), depth=depth), cut(*ray(60), depth=2, **vein))
    (found,) = crossings(made)
    assert found.severity == severity


def test_a_cut_that_crosses_itself_in_the_skin_is_only_noted(cut, lay):
    points = (0, 0), (40, 0), (40, 30), (20, 30), (20, -20)
    loops = [cut(*points, depth=4), cut(*((x + 60, y) for x, y in points), depth=3)]
    (found,) = crossings(lay(*loops))
    assert found.severity == "note" and found.cuts == (0, 1)
    assert found.figures == {"count": 2, "clear_mm": 4}
    assert "the second ending 4 mm short" in found.hint


@pytest.mark.parametrize(("past", "count"), [(0.9, 0), (1.1, 1)])
def test_an_end_a_millimetre_past_a_cut_meets_it_on_purpose(cut, lay, past, count):
    made = lay(cut(*ray(0), depth=8), cut((0, -past), (0, 40), depth=8, family=2))
    assert len(crossings(made)) == count


def test_at_the_sharpest_a_cut_ends_five_clearances_sooner(cut, lay):
    """At 6 degrees 4 mm of dough would be 38 mm along the cut: 20 mm are told."""
    made = lay(cut(*ray(6, 30), depth=8), cut(*ray(0), depth=8, family=2))
    (found,) = crossings(made)
    assert found.figures["shorten_mm"] == pytest.approx(30 + 4 / 0.2, abs=0.2)


def test_what_is_written_later_is_told_whichever_is_cut_first(cut, lay):
    early, late = cut(*ray(0), depth=8, family=2), cut(*ray(90), depth=8, family=7)
    assert [crossings(lay(*pair))[0].place.line for pair in ((early, late), (late, early))] == [
        7,
        7,
    ]


@pytest.mark.parametrize(("off", "told"), [(0.8, False), (1.2, True)])
def test_figures_are_moved_apart_where_their_middles_tell_the_way(cut, lay, off, told):
    made = lay(cut((-60, 0), (60, 0), depth=8), cut((off, -30), (off, 30), family=2, depth=8))
    (found,) = crossings(made)
    assert ("apart_mm" in found.figures) is told
    if told:
        assert found.figures["apart_mm"] == pytest.approx(60 - off + 4)
