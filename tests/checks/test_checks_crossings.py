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
