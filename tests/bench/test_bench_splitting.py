"""How many settings cuts are worth: worked by hand from what turns and looks cost."""

import numpy as np
import pytest

from scorecraft.bench.splitting import apart, split
from scorecraft.practice import NEXT_FIGURE_S, TURN_DEG_PER_S, TURN_TABLE_S

ANGLES = np.radians(np.arange(360))
HALF_TURN_S = TURN_TABLE_S.value + 180 / TURN_DEG_PER_S.value
LOOK_S = NEXT_FIGURE_S.value


def sharp(care, *at):
    """Rows of no care at their own angle, and so much at any other."""
    rows = np.full((len(at), 360), float(care))
    for row, angles in zip(rows, at, strict=True):
        row[angles] = 0.0
    return rows


def bells(steep, *at, least=0.0):
    """Rows of care that grows as the square of the degrees from their angle."""
    off = np.abs((np.arange(360) - np.array(at)[:, None] + 180) % 360 - 180)
    return least + steep * off**2


def found(rows, **how):
    return sorted((part.tolist(), angle) for part, angle in split(rows, ANGLES, **how))


@pytest.mark.parametrize("copies", [False, True])
def test_two_opposite_settings_are_worth_half_a_turn_and_a_look(copies):
    """Of copies the look is a glance, a quarter of it."""
    worth = HALF_TURN_S + LOOK_S * (0.25 if copies else 1.0)
    one = found(sharp(worth - 0.01, 40, 220), copies=copies)
    assert len(one) == 1 and one[0][0] == [0, 1]
    assert found(sharp(worth + 0.01, 40, 220), copies=copies) == [([0], 40), ([1], 220)]


@pytest.mark.parametrize("copies", [False, True])
def test_uneven_settings_must_save_a_tenth_more(copies):
    """An even pair cannot lie 47 degrees apart: one setting has all the care of the other row."""
    worth = (HALF_TURN_S + LOOK_S * (0.25 if copies else 1.0)) / 0.9
    assert len(found(sharp(worth - 0.01, 40, 87), copies=copies)) == 1
    assert found(sharp(worth + 0.01, 40, 87), copies=copies) == [([0], 40), ([1], 87)]


@pytest.mark.parametrize(("more", "settings"), [(-0.01, 2), (0.01, 3)])
def test_a_further_setting_must_save_its_turn_from_the_nearest_and_a_look(more, settings):
    """Beside two rows that each need their own, 47 degrees apart, one 43 degrees on."""
    worth = TURN_TABLE_S.value + 43 / TURN_DEG_PER_S.value + LOOK_S
    rows = np.concatenate([sharp(100, 40, 87), sharp(worth + more, 130)])
    assert [angle for _, angle in found(rows)] == [40, 87, 130][:settings]


@pytest.mark.parametrize("at", [(50, 170, 290), (7, 97, 187, 277), (40, 100, 160)])
def test_even_rows_have_a_setting_each(at):
    """All round, or over half a turn where every row has two ends."""
    ends = [[each, each + 180] if at[1] - at[0] == 60 else [each] for each in at]
    parts = found(sharp(20, *ends), copies=True)
    assert [part for part, _ in parts] == [[k] for k in range(len(at))]
    assert all(angle in ends[k] for k, (_, angle) in enumerate(parts))


@pytest.mark.parametrize(
    ("at", "even"),
    [((40, 222), [41, 221]), ((10, 131, 252), [11, 131, 251]),
     ((40, 132), [41, 131]), ((10, 56, 101, 146), [11, 56, 101, 146])],
)  # fmt: skip
def test_almost_even_settings_become_even(at, even):
    """All round where rows have one end; over half a turn where they may be cut either way."""
    rows = bells(0.1, *at)
    if at[-1] < 180:
        rows = np.minimum(rows, np.roll(rows, 180, axis=1))
    assert [angle for _, angle in split(rows, ANGLES, copies=True)] == even


def test_two_rows_that_lie_apart_have_a_setting_each():
    assert found(bells(0.05, 40, 87)) == [([0], 40), ([1], 87)]


def test_settings_of_uneven_rows_move_to_the_middle_of_their_own():
    """The first angle tried lies between the two heaps; both end in the middle of their heap."""
    rows = bells(0.05, 35, 45, 135, 145)
    assert found(rows) == [([0, 1], 40), ([2, 3], 140)]


@pytest.mark.parametrize(
    ("least", "rounded", "angle"),
    [(49 / 0.029, True, 0), (49 / 0.031, True, 7), (49 / 0.029, False, 7)],
)
def test_a_round_angle_is_taken_where_it_is_almost_as_good(least, rounded, angle):
    """Seven degrees off cost 49 more: 2.9 or 3.1 of a hundred."""
    assert found(bells(1.0, 7, least=least), rounded=rounded) == [([0], angle)]


def test_round_angles_are_multiples_of_fifteen_degrees():
    rows = bells(1.0, 20, least=1e4)
    assert found(rows) == [([0], 15)]
    assert found(bells(1.0, 23, least=1e4)) == [([0], 30)]


def test_angles_are_apart_by_the_shorter_way():
    a, b = np.radians([10.0, 350.0, 180.0, 0.0]), np.radians([350.0, 10.0, 0.0, 90.0])
    np.testing.assert_allclose(np.degrees(apart(a, b)), [20, 20, 180, 90])
