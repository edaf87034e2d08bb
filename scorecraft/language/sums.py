"""What is wrong with an expression, when it is read and when it is worked out."""

from collections.abc import Iterable

from scorecraft.errors import Slip
from scorecraft.language.slips import listed, mean
from scorecraft.units import Quantity

IN_PARENTHESES = "put an expression in parentheses"
CLOSE = "close the expression with )"
CLOSE_CALL = "close the arguments with )"
NESTED = "this expression is nested too deeply"
SIGNS = "too many signs in a row"
CHAIN = Slip("comparisons do not chain", "write (a < b and b < c)")
ENDS = Slip("expected a value", "the expression ends too soon")
HUGE = "this comes out too large to be a number"
NO_NUMBER = Slip("this is not a number", "use a condition only after when")
NO_CONDITION = Slip("this is not a condition", "like (n > 0)")
BY_ZERO = Slip("a division by zero", "the divisor comes out as 0 here")
NEGATIVE_ROOT = Slip("the square root of a negative number", "use abs() inside")


def sign(wanted: str, hint: str) -> Slip:
    """Ask for a sign."""
    return Slip(f'expected "{wanted}"', hint)


def too_long(most: int) -> Slip:
    """Refuse an expression of too many operations."""
    return Slip("this expression is too long", f"at most {most:.0f} operations")


def levels(message: str, most: int) -> Slip:
    """Refuse an expression within expressions without end."""
    return Slip(message, f"at most {most:.0f} levels")


def no_value(text: str) -> Slip:
    """Refuse what cannot be a value."""
    return Slip(f'expected a value, not "{text}"', "a number, a name or (…)")


def unknown_function(name: str, close: str, known: Iterable[str]) -> Slip:
    """Refuse a function that is none."""
    return Slip(f'unknown function "{name}"', mean(close, f"functions: {listed(known)}"))


def function_takes(name: str, takes: int | None) -> Slip:
    """Refuse too many or too few values of a function."""
    says, like = ("one value", "a") if takes == 1 else ("one or more values", "a, b")
    return Slip(f"{name} takes {says}", f"{name}({like})")


def no_value_here(name: str) -> str:
    """Say that a name stands for nothing here."""
    return f'"{name}" has no value here'


def not_alike(left: Quantity, right: Quantity, done: str) -> Slip:
    """Refuse to add or compare quantities of different dimensions."""
    hint = "a share needs something to be a share of, like (60% * reach)"
    hint = hint if left.share != right.share else "give both the same kind of unit"
    return Slip(f"{left.called} and {right.called} cannot be {done}", hint)


def takes_angle(function: str, given: Quantity) -> Slip:
    """Refuse anything but an angle."""
    return Slip(f"{function} takes an angle, not {given.called}", "like sin(30deg)")


def takes_number(given: Quantity) -> Slip:
    """Refuse to round anything but a plain number."""
    return Slip(f"round takes a plain number, not {given.called}", "like round(width / 10mm)")


def no_root(given: Quantity) -> Slip:
    """Refuse the root of what has none."""
    return Slip(f"no square root of {given.called}", "use a number or an area")
