import numpy as np
import pytest
import shapely

from scorecraft.checks.linework import points_along
from scorecraft.checks.overlaps import overlaps


def test_cut_drawn_twice(cut, lay):
    (found,) = overlaps(lay(cut((0, 0), (60, 0)), cut((60, 0), (0, 0), family=2)))
    assert found.severity == "warning"
    assert "cut twice" in found.message
    assert found.place.line == 2
    assert found.figures["shared_mm"] == pytest.approx(60, abs=2)


def test_cures_work(cut, lay):
    """Moved apart by the told distance, or ended sooner by the told length, nothing is shared."""
    first = cut((0, 0), (60, 0))
    (found,) = overlaps(lay(first, cut((40, 0.1), (100, 0.1), family=2)))
    assert found.figures["shared_mm"] == pytest.approx(20, abs=2)
    apart, shared = found.figures["apart_mm"], found.figures["shared_mm"]
    assert overlaps(lay(first, cut((40, apart), (100, apart), family=2))) == []
    assert overlaps(lay(first, cut((40 + shared, 0), (100, 0), family=2))) == []


def test_short_strokes_count_by_their_share(cut, lay):
    assert len(overlaps(lay(cut((0, 0), (6, 0)), cut((2, 0), (60, 0))))) == 1
    assert overlaps(lay(cut((0, 0), (6, 0)), cut((4, 0), (60, 0)))) == []


def test_end_to_end_crossing_and_touching_are_no_overlaps(arc, cut, lay):
    assert overlaps(lay(cut((0, 0), (40, 0)), cut((40, 0), (80, 0)))) == []
    assert overlaps(lay(cut((0, 0), (40, 0)), cut((20, -20), (20, 20)))) == []
    ring, other = arc(14, 0, 360), arc(14, 0, 360, centre=(28, 0))
    assert overlaps(lay(cut(*ring), cut(*other))) == []


def test_many_touches_of_two_waves_are_not_added_up(arc, cut, lay):
    upper = [p for k in range(8) for p in arc(14, 180, 360, centre=(28 * k - 98, 14))]
    lower = [p for k in range(8) for p in arc(14, 180, 0, centre=(28 * k - 98, -14))]
    assert overlaps(lay(cut(*upper), cut(*lower))) == []


def test_copies_are_told_once(cut, lay):
    cuts = [cut((0, y), (60, y), family=f) for y in (0, 20, 40) for f in (1, 2)]
    (found,) = overlaps(lay(*cuts))
    assert found.figures["count"] == 3
    assert found.offers[0].told == "remove 3 of them"


def test_of_three_cuts_on_one_line_two_are_to_be_dropped(cut, lay):
    (found,) = overlaps(lay(*(cut((0, 0), (60, 0)) for _ in range(3))))
    assert found.offers[0].told == "remove 2 of them"
    assert overlaps(lay(cut((0, 0), (60, 0)))) == []


@pytest.mark.parametrize("share", [4.0, 6.0, 9.6, 20.0])
@pytest.mark.parametrize("start", [0.0, 13.0, 31.3, 90.0])
def test_a_stretch_is_found_wherever_it_lies(cut, lay, share, start):
    """A cut that joins another one for a while and leaves it again."""
    ways = (-8.0, 0.0, share, share + 8.0)
    joins = cut(*((start + x, 0.0 if 0 <= x <= share else 12.0) for x in ways))
    tail = [(start + share + 8.0, 60.0)] if start > 50 else []
    long = cut(*joins.line, *tail, family=2)
    found = overlaps(lay(cut((-30, 0), (150, 0)), long))
    assert bool(found) is (share > 8.0)


def test_points_along_lines_are_those_of_the_library():
    rng = np.random.default_rng(2)
    lines = np.array([shapely.LineString(rng.normal(size=(n, 2)) * 30) for n in (2, 3, 9, 40)])
    line, share = rng.integers(0, 4, 200), rng.uniform(0, 1, 200)
    expected = shapely.line_interpolate_point(lines[line], share, normalized=True)
    assert shapely.distance(points_along(lines, line, share), expected).max() < 1e-9


def test_no_cuts_no_findings(cut, lay):
    assert overlaps(lay()) == []
    assert overlaps(lay(cut((0, 0), (60, 0)))) == []


def test_offers_work_and_the_likelier_one_comes_first(cut, lay):
    twice = lay(cut((0, 0), (60, 0), depth=6), cut((60, 0), (0, 0), family=2, depth=4))
    (found,) = overlaps(twice)
    drop, side = found.offers
    assert drop.told.startswith("remove") and len(drop.layout().cuts) == 1
    assert side.told == "move them 6 mm apart"
    assert sorted(each.line[0, 1] for each in side.layout().cuts) == pytest.approx([-3, 3])
    part = lay(cut((0, 0), (60, 0), depth=6), cut((40, 0), (100, 0), family=2, depth=4))
    (found,) = overlaps(part)
    assert [each.told.split()[0] for each in found.offers] == ["move", "remove"]
    assert all(overlaps(each.layout()) == [] for each in found.offers)


@pytest.mark.parametrize(("share", "twice"), [(0.85, False), (0.95, True)])
def test_nine_tenths_on_another_cut_are_cut_twice(cut, lay, share, twice):
    start = 60 * (1 - share)
    made = lay(cut((0, 0), (80, 0)), cut((-start, 0), (60 - start, 0), family=2))
    (found,) = overlaps(made)
    assert ("cut twice" in found.message) is twice


@pytest.mark.parametrize(("shared", "told"), [(6.9, False), (9.1, True)])
def test_eight_millimetres_at_a_stretch_overlap(cut, lay, shared, told):
    made = lay(cut((0, 0), (60, 0)), cut((60 - shared, 0), (120 - shared, 0), family=2))
    assert bool(overlaps(made)) is told


@pytest.mark.parametrize(("off", "told"), [(0.2, True), (0.3, False)])
def test_lines_a_quarter_of_a_millimetre_apart_are_one(cut, lay, off, told):
    assert bool(overlaps(lay(cut((0, 0), (60, 0)), cut((0, off), (60, off))))) is told


def test_the_place_is_that_of_the_middle_point_of_the_shorter_cut(cut, lay):
    (found,) = overlaps(lay(cut((-90, 0), (90, 0)), cut((0, 0), (60, 0), family=2)))
    assert "at 3 o'clock" in found.message
    bent = cut((0, 0), (0, 50), (0, 52), (-3, 54), (-3, 90), family=2)
    (found,) = overlaps(lay(cut((0, -90), (0, 52)), bent))
    assert "at 12 o'clock" in found.message


@pytest.mark.parametrize("way", [1, -1])
def test_a_stretch_at_either_end_is_found(cut, lay, way):
    """The first, or the last, 9 mm of a cut of 60 mm lie on another one."""
    leaves = [(0.0, 0.0), (9.2, 0.0), (9.2, 51.0)][::way]
    (found,) = overlaps(lay(cut((-60, 0), (60, 0)), cut(*leaves, family=2)))
    assert found.figures["shared_mm"] == pytest.approx(9.2, abs=1.5)
