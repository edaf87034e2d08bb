"""Strings are counted as a baker lays them."""

import numpy as np

from scorecraft.bench.strings import Strings, strings_of


def spoke(hour, reach=100.0):
    angle = np.pi / 2 - hour * np.pi / 6
    return np.array([[0.0, 0.0], [reach * np.cos(angle), reach * np.sin(angle)]])


def ring(radius=40.0):
    return np.vstack([radius * spoke(hour, 1.0)[1] for hour in range(13)])


CHORD = np.array([[-50.0, 20.0], [50.0, 20.0]])


def test_opposite_spokes_are_one_string():
    assert strings_of([spoke(hour) for hour in (0, 3, 6, 9)]) == Strings(2, 0, 0, 0)
    assert strings_of([spoke(hour) for hour in (0, 4, 8)]) == Strings(0, 3, 0, 0)
    assert strings_of([spoke(12), spoke(6, 60.0)]) == Strings(1, 0, 0, 0)


def test_rings_and_other_lines_are_strings_of_their_own():
    found = strings_of([spoke(0), spoke(6), ring(), ring(70.0), CHORD])
    assert found == Strings(1, 0, 2, 1) and found.count == 4
    assert strings_of([]).count == 0


def test_a_string_is_seen_to_half_a_millimetre():
    """Spokes that miss one line, or the crown, and rings that do not close, by a little more."""
    down = [np.array([[0.0, 0.0], [aside, -100.0]]) for aside in (0.4, 0.6)]
    assert strings_of([spoke(12), down[0]]) == Strings(1, 0, 0, 0)
    assert strings_of([spoke(12), down[1]]) == Strings(0, 2, 0, 0)
    assert strings_of([spoke(12, 60.0), 0.5 * down[1]]) == Strings(1, 0, 0, 0)
    off = [np.add(spoke(3), [0.0, aside]) for aside in (0.4, 0.6)]
    assert [strings_of([each]) for each in off] == [Strings(0, 1, 0, 0), Strings(0, 0, 0, 1)]
    ends = [np.vstack([ring()[:-1], np.add(ring()[:1], [0.0, gap])]) for gap in (0.4, 0.6)]
    assert [strings_of([each]) for each in ends] == [Strings(0, 0, 1, 0), Strings(0, 0, 0, 1)]
