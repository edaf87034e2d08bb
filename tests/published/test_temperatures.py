"""Temperatures in both scales, at points fixed by definition (F = 1.8 C + 32)."""

import pytest

from scorecraft.baking import LEAN_DONE_C, OVEN_TIMES
from scorecraft.drawing.card.telling import heat
from scorecraft.units import in_unit, quantity


@pytest.mark.parametrize(
    ("celsius", "fahrenheit"),
    [(-40, -40), (0, 32), (37, 98.6), (100, 212), (232.2222, 450), (260, 500)],
)
def test_celsius_and_fahrenheit_agree(celsius, fahrenheit):
    assert in_unit(celsius, "F") == pytest.approx(fahrenheit, abs=1e-3)
    assert quantity(fahrenheit, "F").value == pytest.approx(celsius, abs=1e-4)


@pytest.mark.parametrize(
    "given", sorted({c for row in OVEN_TIMES for c in (row.first_c, row.then_c)})
)
def test_an_oven_is_told_in_steps_of_its_dial(given):
    """Rounded to 5 °F, so never further off than 2.5 °F."""
    celsius, fahrenheit = (float(part.split()[0]) for part in heat(given).split(" / "))
    assert celsius == given
    assert fahrenheit % 5 == 0
    assert abs(fahrenheit - (1.8 * given + 32)) <= 2.5


def test_the_centre_is_told_to_a_degree():
    told = [heat(rule.value) for rule in LEAN_DONE_C]
    assert told == ["93 °C / 199 °F", "99 °C / 210 °F"]
    assert heat(24.0) == "24 °C / 75 °F"
