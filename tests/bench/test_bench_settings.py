"""Which cuts share a setting: rings that go round together, figures that lie nearly alike."""

import math
from dataclasses import replace

import numpy as np
import pytest
from support.bench_layouts import cut, layout, rays, sprigs, turned

from scorecraft.bench.settings import Unit, by_depth, settings, units_of
from scorecraft.bench.strokes import care, strokes, table_angles
from scorecraft.practice import TURN_TABLE_S

MADE = layout([cut([[0, 20], [0, 50]]) for _ in range(12)])
HALF = math.tau / 2


def unit(number, family, at, steep=1.0, **more):
    """One cut whose care grows as the square of the degrees from its angle."""
    off = np.abs((np.arange(360) - at + 180) % 360 - 180)
    return Unit((number,), frozenset([family]), 5 + steep * off**2, at, (at + 180) % 360, **more)


def ring(family, first, count=3):
    return [
        unit(count * family + k, family, (first + 360 * k // count) % 360) for k in range(count)
    ]


def angles_of(units, way=1):
    """The cuts of each setting, and the angles it may be made at (whole degrees)."""
    made = settings(MADE, units, way)
    return [(each.cuts, np.degrees(each.choices).round(6).tolist()) for each in made]


def own(units):
    return [(each.cuts, [each.best, each.other]) for each in units]


def test_rings_that_lie_nearly_alike_go_round_together():
    """Halfway between is least care for both; the other angle is a quarter turn off."""
    joined = angles_of([*ring(0, 0), *ring(1, 10)])
    assert joined == [((0, 3), [5, 95]), ((1, 4), [125, 215]), ((2, 5), [245, 335])]
    (first, *_) = settings(MADE, [*ring(0, 0), *ring(1, 10)], 1)
    assert first.families == {0, 1}
    two = [unit(k, k // 2, 180 * (k % 2) + 10 * (k // 2)) for k in range(4)]
    assert [each.cuts for each in settings(MADE, two, 1)] == [(0, 2), (1, 3)]
    apart = [*ring(0, 0), *ring(1, 13)]
    assert angles_of(apart) == own(apart)


def test_rings_are_matched_wherever_they_begin():
    joined = angles_of([*ring(0, 0), *ring(1, 246)])
    assert joined == [((0, 4), [3, 93]), ((1, 5), [123, 213]), ((2, 3), [243, 333])]


def test_rings_of_other_numbers_or_under_a_turning_table_do_not_go_together():
    """Three and two; a spun one keeps its own."""
    more = [*ring(0, 0), *ring(4, 30, 2)]
    assert angles_of(more) == own(more)
    partly = [*ring(0, 0), unit(3, 1, 0), unit(4, 1, 120), unit(5, 1, 280)]
    assert [each.cuts for each in settings(MADE, partly, 1)] == [(k,) for k in range(6)]
    half = [*ring(0, 0), *(replace(each, spin_rad=6.0) for each in ring(1, 10))]
    assert [each.cuts for each in settings(MADE, half, 1)] == [(k,) for k in range(6)]
    spun = [unit(k, k // 2, 180 * (k % 2), spin_rad=6.0) for k in range(4)]
    assert [each.cuts for each in settings(MADE, spun, 1)] == [(0,), (1,), (2,), (3,)]


def test_figures_that_lie_nearly_alike_are_made_at_the_angle_that_costs_least():
    """Eleven degrees of the light one cost less than those of the other; across 0 as well."""
    for first in (0, 170, 355):
        near = [unit(0, 0, first, 0.1), unit(1, 1, (first + 11) % 360)]
        leader = own(near)[1][1]
        assert angles_of(near) == [((0,), leader), ((1,), leader)]
    far = [unit(0, 0, 0, 0.1), unit(1, 1, 13)]
    assert angles_of(far) == own(far)


def test_the_angle_of_a_ring_wins_so_that_its_steps_stay_even():
    units = [*ring(0, 0), unit(5, 2, 126, 100.0)]
    assert angles_of(units)[3] == ((5,), [120, 300])


def test_a_row_of_near_ones_is_counted_from_its_own_beginning():
    """351, 357, 2 and 8: the first three lie within 12 degrees, wherever the circle begins."""
    units = [unit(k, k, at, 10.0) for k, at in enumerate([2, 8, 351, 357])]
    assert [found[1][0] for found in angles_of(units)] == [357, 8, 357, 357]


def test_many_near_ones_in_a_row_are_met_two_by_two_from_the_first():
    """From the widest gap on: 0 and 11, 21 and 31, and so on; the steeper one of two leads."""
    made = layout([cut([[0, 20], [0, 50]]) for _ in range(24)])
    at = [0, *range(11, 241, 10)]
    units = [unit(k, 0, angle, 5.0 if k % 2 else 10.0) for k, angle in enumerate(at)]
    angles = [np.degrees(each.choices[0]) for each in settings(made, units, 1)]
    assert angles == pytest.approx([at[k - k % 2] for k in range(24)])


@pytest.mark.parametrize(("extra_s", "leans"), [(-0.01, True), (0.01, False)])
def test_one_that_lies_well_anyhow_goes_along_where_that_costs_less_than_a_turn(extra_s, leans):
    """Seen from 90 degrees off; one of several copies, or a spun one, keeps its angle."""
    steep = (TURN_TABLE_S.value + extra_s) / 90**2
    strict = unit(1, 1, 90, 10.0)
    at = 90 if leans else 0
    assert [found[1][0] for found in angles_of([unit(0, 0, 0, steep), strict])] == [at, 90]
    copies = [unit(0, 0, 0, steep), unit(2, 0, 180, steep), strict]
    assert {tuple(found[1]) for found in angles_of(copies)} == {(0, 180), (180, 0), (90, 270)}
    spun = [unit(0, 0, 0, steep, spin_rad=6.0), strict]
    assert [found[1][0] for found in angles_of(spun)] == [0, 90]


def test_of_several_it_goes_along_with_the_one_that_costs_it_least():
    units = [unit(0, 0, 0, 1e-5), unit(1, 1, 90, 10.0), unit(2, 2, 60, 10.0)]
    assert [found[1][0] for found in angles_of(units)] == [60, 90, 60]


def test_a_setting_says_what_its_angles_cost_and_how_it_begins_and_ends():
    cuts = [cut([[0, 20], [0, 50]], depth=3.0), cut([[0, 20], [0, 60]], depth=9.0, blade=40)]
    off = Unit((1, 0), frozenset([0]), unit(0, 0, 30).weight, 32, 210, spin_rad=6.0)
    (made,) = settings(layout(cuts), [off], -1)
    assert made.cuts == (0, 1)
    assert made.extra.tolist() == [4, 180**2]
    assert (made.first, made.last) == ((3.0, HALF / 2), (9.0, math.radians(40)))
    assert np.degrees(made.choices).tolist() == pytest.approx([328, 150])
    assert made.spin_rad == -6.0


def test_without_sharing_every_unit_keeps_its_angle():
    near = [unit(0, 0, 0, 0.1), unit(1, 1, 5)]
    made = settings(MADE, near, 1, shared=False)
    assert [math.degrees(each.choices[0]) for each in made] == pytest.approx([0, 5])
    assert settings(MADE, [], 1) == []


def units(cuts):
    made = layout(cuts)
    return units_of(made, strokes(made), range(len(cuts)), 1)


def test_the_other_angle_is_the_best_at_least_a_quarter_turn_away():
    """Whatever lies nearer: over all angles. Loops only face the eye: then it is just that far."""
    loop = [[0, 60], [3, 62], [0, 64], [-3, 62], [0, 60]]
    cuts = [cut([[10, 20], [40, 55]], depth=8), cut([[-60, 5], [-20, 9]], family=1)]
    cuts += [cut(turned(loop, turn), family=k) for k, turn in enumerate((12, 18), start=2)]
    edges = [(each.other - each.best) % 360 for each in units(cuts)[2:]]
    assert sorted(edges) == [90, 270]
    for each in units(cuts):
        assert each.weight[each.best] <= 1.03 * each.weight.min()
        off = np.abs((np.arange(360) - each.best + 180) % 360 - 180)
        assert off[each.other] >= 90
        assert each.weight[each.other] == each.weight[off >= 90].min()
        assert each.weight.tolist() == pytest.approx(
            care(strokes(layout(cuts)).rows(np.array(each.cuts)), table_angles(4, 1))[0].tolist()
        )


def test_figures_of_many_cuts_are_met_one_by_one_up_to_a_number():
    """Sixteen sprigs are sixteen units, each whole; of seventeen some may share an angle."""
    sixteen, seventeen = units(sprigs(16)), units(sprigs(17))
    assert [each.cuts for each in sixteen] == [tuple(range(5 * k, 5 * k + 5)) for k in range(16)]
    assert sorted(index for each in seventeen for index in each.cuts) == list(range(85))
    assert all(each.cuts[0] % 5 == 0 and len(each.cuts) % 5 == 0 for each in seventeen)


def test_single_strokes_of_a_statement_share_settings_and_ones_that_wind_are_spun():
    angles = np.radians(np.linspace(0, 360, 100))
    circle = 60 * np.column_stack([np.sin(angles), np.cos(angles)])
    hatch = [cut([[x, -40], [x, 40]], figure=k) for k, x in enumerate((-9, 0, 9))]
    assert [each.cuts for each in units(hatch[:2])] == [(0, 1)]
    found = units([cut(circle, family=3), *hatch])
    assert [each.cuts for each in found] == [(0,), (1, 2, 3)]
    assert found[0].best == np.argmin(found[0].weight)
    assert found[0].spin_rad == pytest.approx(math.tau) and found[1].spin_rad == 0
    assert [len(each.families) for each in units([*rays(2), *rays(1, family=4)])] == [1, 1, 1]


def test_figures_of_one_cut_and_of_two_are_met_whole():
    cuts = [cut([[x, 20], [x, 50]], figure=figure) for x, figure in [(-4, 0), (0, 0), (4, 1)]]
    assert [each.cuts for each in units(cuts)] == [(0, 1), (2,)]


def test_a_lone_figure_is_met_at_a_round_angle_and_copies_each_at_its_own():
    """Two lines that lie four degrees off: fifteen of them make no odds for one, not for a row."""
    pair = [turned([[x, 20], [x, 60]], 4) for x in (-4, 4)]
    (alone,) = units([cut(line) for line in pair])
    both = units([cut(turned(line, 180 * k), figure=k) for k in (0, 1) for line in pair])
    assert alone.best % 15 == 0 and all(each.best % 15 for each in both)


def test_cuts_go_from_light_to_deep_with_like_parts_together():
    cuts = [
        cut([[0, 0], [0, 9]], "leaf", part, 0, 0, depth)
        for part, depth in [("vein", 3.0), ("edge", 2.0), ("vein", 2.04), ("edge", 2.0), ("rib", 1)]
    ]
    assert by_depth(layout(cuts), [3, 2, 1, 0, 4]) == (4, 2, 1, 3, 0)
