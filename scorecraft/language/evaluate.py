"""Expressions to quantities: arithmetic that knows its units."""

import math
import operator
from collections.abc import Callable, Mapping

from scorecraft.errors import Place, ScorecraftError
from scorecraft.language import sums
from scorecraft.language.tree import Binary, Call, Expression, Measure, Name, Unary
from scorecraft.units import ANGLE, NUMBER, Dimension, Quantity, quantity

Names = Mapping[str, Quantity]
FUNCTIONS = {
    "sin": 1, "cos": 1, "sqrt": 1, "abs": 1, "round": 1, "min": None, "max": None,
}  # fmt: skip
"""Functions of the language, and how many arguments each takes (None: one or more)."""
COMPARE: dict[str, Callable[[float, float], bool]] = {
    "<": operator.lt, "<=": operator.le, ">": operator.gt, ">=": operator.ge,
    "==": operator.eq, "!=": operator.ne,
}  # fmt: skip


def evaluate(expression: Expression, names: Names) -> Quantity:
    """Work out an expression to a quantity in inside units.

    Raises ScorecraftError where units do not go together, a value is no number, or a name is
    not known.
    """
    found = work_out(expression, names)
    if not math.isfinite(found.value):
        raise ScorecraftError(sums.HUGE, expression.place)
    return found


def work_out(expression: Expression, names: Names) -> Quantity:
    """Work out one node of an expression; raises ScorecraftError where it has no value."""
    if isinstance(expression, Measure):
        return quantity(expression.value, expression.unit)
    if isinstance(expression, Name):
        if expression.name not in names:
            raise ScorecraftError(sums.NO_VALUE_HERE.format(name=expression.name), expression.place)
        return names[expression.name]
    if isinstance(expression, Unary) and expression.operator == "-":
        inner = evaluate(expression.operand, names)
        return Quantity(-inner.value, inner.dimension, inner.share)
    if isinstance(expression, Binary) and expression.operator in ("+", "-", "*", "/"):
        return arithmetic(expression, names)
    if isinstance(expression, Call):
        return call(expression, names)
    raise sums.NO_NUMBER.error(expression.place)


def holds(expression: Expression, names: Names) -> bool:
    """Tell whether a condition holds; raises ScorecraftError if it is none."""
    if isinstance(expression, Unary) and expression.operator == "not":
        return not holds(expression.operand, names)
    if isinstance(expression, Binary) and expression.operator == "and":
        return holds(expression.left, names) and holds(expression.right, names)
    if isinstance(expression, Binary) and expression.operator == "or":
        return holds(expression.left, names) or holds(expression.right, names)
    if isinstance(expression, Binary) and expression.operator in COMPARE:
        left, right = evaluate(expression.left, names), evaluate(expression.right, names)
        alike(left, right, expression.place, "compared")
        return COMPARE[expression.operator](left.value, right.value)
    raise sums.NO_CONDITION.error(expression.place)


def alike(left: Quantity, right: Quantity, place: Place, done: str) -> None:
    """Refuse to add or compare quantities of different dimensions; raises ScorecraftError."""
    if left.dimension == right.dimension and left.share == right.share:
        return
    slip = sums.SHARE_OF_WHAT if left.share != right.share else sums.NOT_ALIKE
    raise slip(left=left, right=right, done=done).error(place)


def arithmetic(expression: Binary, names: Names) -> Quantity:
    """Add, subtract, multiply or divide.

    Raises ScorecraftError for quantities that do not go together and a division by 0.
    """
    left, right = evaluate(expression.left, names), evaluate(expression.right, names)
    if expression.operator in ("+", "-"):
        adds = expression.operator == "+"
        alike(left, right, expression.place, "added" if adds else "subtracted")
        value = left.value + right.value if adds else left.value - right.value
        return Quantity(value, left.dimension, left.share)
    if expression.operator == "*":
        dimension = Dimension(*map(operator.add, left.dimension, right.dimension))
        share = (left.share or right.share) and dimension == NUMBER
        return Quantity(left.value * right.value, dimension, share)
    if right.value == 0:
        raise sums.BY_ZERO.error(expression.place)
    dimension = Dimension(*map(operator.sub, left.dimension, right.dimension))
    share = left.share and right.dimension == NUMBER and not right.share
    return Quantity(left.value / right.value, dimension, share)


def call(expression: Call, names: Names) -> Quantity:
    """Work out a function; raises ScorecraftError for an argument it does not take."""
    values = [evaluate(argument, names) for argument in expression.arguments]
    first = values[0]
    if expression.function in ("sin", "cos"):
        if first.dimension != ANGLE:
            slip = sums.TAKES_ANGLE(function=expression.function, given=first)
            raise slip.error(expression.place)
        wave = math.sin if expression.function == "sin" else math.cos
        return Quantity(wave(first.value))
    if expression.function == "sqrt":
        return root(first, expression.place)
    if expression.function == "abs":
        return Quantity(abs(first.value), first.dimension, first.share)
    if expression.function == "round":
        if first.dimension != NUMBER or first.share:
            raise sums.TAKES_NUMBER(given=first).error(expression.place)
        return Quantity(float(math.floor(first.value + 0.5)))
    for other in values[1:]:
        alike(first, other, expression.place, "compared")
    pick = min if expression.function == "min" else max
    return Quantity(pick(v.value for v in values), first.dimension, first.share)


def root(found: Quantity, place: Place) -> Quantity:
    """Take a square root, of the unit too; raises ScorecraftError where there is none."""
    if found.value < 0:
        raise sums.NEGATIVE_ROOT.error(place)
    if any(power % 2 for power in found.dimension):
        raise sums.NO_ROOT(given=found).error(place)
    half = Dimension(*(power // 2 for power in found.dimension))
    return Quantity(math.sqrt(found.value), half, found.share)
