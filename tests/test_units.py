"""Units: exact factors, both ways, and the turntable's sense of direction."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecraft.units import (
    ANGLE,
    LENGTH,
    MASS,
    UNITS,
    degree_words,
    from_turntable,
    half_up,
    in_unit,
    mm_range,
    mm_words,
    mm_words_apart,
    percent_range,
    percent_words,
    plain,
    quantity,
    to_turntable,
    turntable_degrees,
)


@pytest.mark.parametrize(
    ("value", "unit", "inside", "dimension"),
    [
        (1, "in", 25.4, LENGTH),  # by definition, 1959 international yard and pound agreement
        (2.5, "cm", 25, LENGTH),
        (180, "deg", math.pi, ANGLE),
        (1, "lb", 453.59237, MASS),  # by definition, same agreement
        (16, "oz", 453.59237, MASS),
        (212, "F", 100, (0, 0, 0, 0, 1)),
        (-40, "F", -40, (0, 0, 0, 0, 1)),
    ],
)
def test_known_conversions(value, unit, inside, dimension):
    found = quantity(value, unit)
    assert found.value == pytest.approx(inside, rel=1e-12)
    assert found.dimension == dimension


@given(st.floats(-1e6, 1e6), st.sampled_from(sorted(UNITS)))
def test_there_and_back(value, unit):
    assert in_unit(quantity(value, unit).value, unit) == pytest.approx(value, abs=1e-6)


@pytest.mark.parametrize(
    ("x", "y", "degrees"), [(0, 1, 0), (1, 0, 90), (0, -1, 180), (-1, 0, 270), (1, 1, 45)]
)
def test_the_turntable_starts_at_twelve_and_runs_clockwise(x, y, degrees):
    assert turntable_degrees(math.atan2(y, x)) == pytest.approx(degrees)


@given(st.floats(0, 2 * math.pi - 1e-9))
def test_turntable_angles_come_back(angle):
    back = to_turntable(from_turntable(angle))
    assert math.cos(back - angle) == pytest.approx(1)
    assert 0 <= back < math.tau + 1e-12


@given(st.floats(allow_nan=False, allow_infinity=False, width=64))
def test_plain_numbers_read_back_exactly(value):
    text = plain(value)
    assert "e" not in text
    assert float(text) == value


def test_numbers_are_told_as_a_baker_says_them():
    assert mm_words(12.34) == "12 mm"
    assert mm_words(9.96) == "10 mm"
    assert (mm_words(10.5), mm_words(12)) == ("10.5 mm", "12 mm")
    assert mm_words(3.25) == "3.2 mm"
    assert mm_words(3.0) == "3 mm"
    assert [half_up(size) for size in (3.01, 3.5, 3.51)] == [3.5, 3.5, 4.0]
    assert degree_words(math.pi / 3) == "60°"
    assert percent_words(0.364) == "36%"


def test_ranges_are_told_no_finer_than_they_are_known():
    assert [mm_range(*each) for each in ((7.4, 10.6), (24.1, 33.8), (0.9, 1.2))] == [
        "7–11", "25–35", "1",
    ]  # fmt: skip
    assert percent_range(0.136, 0.2) == "14–20%" and percent_range(0.201, 0.204) == "20%"


def test_lengths_that_differ_do_not_read_the_same():
    assert mm_words_apart(14.2, 14.4) == ("14.2 mm", "14.4 mm")
    assert mm_words_apart(13.0, 14.4) == ("13 mm", "14 mm")
    assert mm_words_apart(3.5701, 3.6) == ("3.57 mm", "3.60 mm")
    assert mm_words_apart(4.0, 4.0) == ("4 mm", "4 mm")
