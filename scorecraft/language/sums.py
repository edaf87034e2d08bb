"""What is wrong with an expression, when it is read and when it is worked out."""

from scorecraft.errors import Slip

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
SIGN = Slip('expected "{wanted}"', "{hint}")
TOO_LONG = Slip("this expression is too long", "at most {most:.0f} operations")
LEVELS = Slip("{message}", "at most {most:.0f} levels")
NO_VALUE = Slip('expected a value, not "{text}"', "a number, a name or (…)")
UNKNOWN_FUNCTION = Slip('unknown function "{name}"', "functions: {known}")
TAKES_ONE = Slip("{name} takes one value", "{name}(a)")
TAKES_SOME = Slip("{name} takes one or more values", "{name}(a, b)")
NO_VALUE_HERE = '"{name}" has no value here'
NOT_ALIKE = Slip(
    "{left.called} and {right.called} cannot be {done}", "give both the same kind of unit"
)
SHARE_OF_WHAT = NOT_ALIKE._replace(
    hint="a share needs something to be a share of, like (60% * reach)"
)
TAKES_ANGLE = Slip("{function} takes an angle, not {given.called}", "like sin(30deg)")
TAKES_NUMBER = Slip("round takes a plain number, not {given.called}", "like round(width / 10mm)")
NO_ROOT = Slip("no square root of {given.called}", "use a number or an area")
