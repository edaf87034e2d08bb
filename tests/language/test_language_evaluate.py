"""Arithmetic knows its units, and refuses what does not go together."""

import math

import pytest

from scorecraft.errors import ScorecraftError
from scorecraft.language.evaluate import evaluate, holds
from scorecraft.language.parse import parse
from scorecraft.units import ANGLE, AREA, LENGTH, NUMBER, Quantity

NAMES = {"k": Quantity(3.0), "reach": Quantity(150.0, LENGTH), "width": Quantity(220.0, LENGTH)}


def value(text: str) -> Quantity:
    return evaluate(parse(f"let a {text}").statements[0].arguments[1].value, NAMES)


@pytest.mark.parametrize(
    ("text", "number", "dimension"),
    [
        ("12mm", 12.0, LENGTH),
        ("1.5cm", 15.0, LENGTH),
        ("1/2in", 12.7, LENGTH),
        ("(3mm * 2 + 1in)", 31.4, LENGTH),
        ("(60% * reach)", 90.0, LENGTH),
        ("(reach - 20mm)", 130.0, LENGTH),
        ("(width / 10mm)", 22.0, NUMBER),
        ("(width * reach)", 33000.0, AREA),
        ("(sqrt(9mm * 4mm))", 6.0, LENGTH),
        ("(k * 45deg)", 3 * math.pi / 4, ANGLE),
        ("(sin(30deg) * 10mm)", 5.0, LENGTH),
        ("(cos(60deg))", 0.5, NUMBER),
        ("(min(20mm, 30% * reach, 50mm))", 20.0, LENGTH),
        ("(max(1, k))", 3.0, NUMBER),
        ("(abs(-(k)))", 3.0, NUMBER),
        ("(round(width / 30mm))", 7.0, NUMBER),
        ("(2 - 3 - 4)", -5.0, NUMBER),
        ("(12 / 3 / 2)", 2.0, NUMBER),
        ("(2 + 3 * 4)", 14.0, NUMBER),
        ("-5mm", -5.0, LENGTH),
        ("(1lb)", 453.59237, (0, 0, 1, 0, 0)),
        ("75F", 75 * 5 / 9 - 160 / 9, (0, 0, 0, 0, 1)),
    ],
)
def test_values(text, number, dimension):
    found = value(text)
    assert found.value == pytest.approx(number, rel=1e-12)
    assert found.dimension == dimension


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("(3mm + 2)", "cannot be added"),
        ("(3mm - 2deg)", "cannot be subtracted"),
        ("(3mm + 60%)", "cannot be added"),
        ("(3mm / (k - 3))", "division by zero"),
        ("(sqrt(0 - 4))", "square root of a negative"),
        ("(sqrt(4mm))", "no square root"),
        ("(sin(30))", "takes an angle"),
        ("(round(3.4mm))", "plain number"),
        ("(max(1mm, 2))", "cannot be compared"),
        ("(k > 2)", "not a number"),
        ("(999999999999 * 999999999999 * 999999999999 * 999999999999 * 999999999999 "
         + "* 999999999999 " * 22 + ")", "too large"),
    ],
)  # fmt: skip
def test_what_does_not_go_together_is_refused_at_its_place(text, message):
    with pytest.raises(ScorecraftError, match=message) as caught:
        value(text)
    assert caught.value.place.line == 1


@pytest.mark.parametrize(
    ("text", "truth"),
    [
        ("k > 2", True), ("k >= 3 and k < 3", False), ("k == 3 or k < 0", True),
        ("not k != 3", True), ("reach > 100mm", True), ("not (k < 2 or k > 4)", True),
    ],
)  # fmt: skip
def test_conditions(text, truth):
    tree = parse(f"when ({text}):\n    slash 3mm")
    assert holds(tree.statements[0].arguments[0].value, NAMES) is truth


def test_a_number_is_no_condition():
    with pytest.raises(ScorecraftError, match="not a condition"):
        holds(parse("when (k):\n    slash 3mm").statements[0].arguments[0].value, NAMES)
