"""The tree of a pattern: frozen dataclasses, each with its place; `str()` writes it back.

Places never count in a comparison: two trees are equal when they say the same.
"""

from collections.abc import Iterator

from scorecraft.errors import Place
from scorecraft.frozen import dataclass, field
from scorecraft.language.keys import Word
from scorecraft.language.words import WORDS, keys_of
from scorecraft.units import plain

NOWHERE = Place("", 0, 0)

PRECEDENCE = {
    "or": 1, "and": 2, "not": 3,
    "<": 4, "<=": 4, ">": 4, ">=": 4, "==": 4, "!=": 4,
    "+": 5, "-": 5, "*": 6, "/": 6,
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Measure:
    """A number with its unit as written; the unit is "" for a plain number."""

    value: float
    unit: str = ""
    place: Place = field(default=NOWHERE, compare=False, repr=False)

    def __str__(self) -> str:
        return plain(self.value) + self.unit


@dataclass(frozen=True, slots=True)
class Name:
    """A knob, a `let`, a name at hand, or a choice such as `round`."""

    name: str
    place: Place = field(default=NOWHERE, compare=False, repr=False)

    def __str__(self) -> str:
        return self.name


@dataclass(frozen=True, slots=True)
class Text:
    """A quoted text."""

    value: str
    place: Place = field(default=NOWHERE, compare=False, repr=False)

    def __str__(self) -> str:
        return '"' + self.value.replace("\\", "\\\\").replace('"', '\\"') + '"'


@dataclass(frozen=True, slots=True)
class Unary:
    """A sign or `not` before an expression."""

    operator: str
    operand: "Expression"
    place: Place = field(default=NOWHERE, compare=False, repr=False)

    def __str__(self) -> str:
        space = " " if self.operator == "not" else ""
        inner = str(self.operand)
        return self.operator + space + (inner if bare(self.operand) else f"({inner})")


@dataclass(frozen=True, slots=True)
class Binary:
    """Two expressions joined by an operator."""

    operator: str
    left: "Expression"
    right: "Expression"
    place: Place = field(default=NOWHERE, compare=False, repr=False)

    def __str__(self) -> str:
        rank = PRECEDENCE[self.operator]
        # comparisons do not chain, so an equal rank on the left needs its parentheses too
        left = wrapped(self.left, rank + (rank == PRECEDENCE["<"]))
        return f"{left} {self.operator} {wrapped(self.right, rank + 1)}"


@dataclass(frozen=True, slots=True)
class Call:
    """A function of the language with its arguments."""

    function: str
    arguments: tuple["Expression", ...]
    place: Place = field(default=NOWHERE, compare=False, repr=False)

    def __str__(self) -> str:
        return f"{self.function}({', '.join(str(a) for a in self.arguments)})"


@dataclass(frozen=True, slots=True)
class Points:
    """Points in the frame: each an (x, y) pair of expressions, and from where to where they stand.

    `spans` are the places of all x and y, each whole.
    """

    pairs: tuple[tuple["Expression", "Expression"], ...]
    place: Place = field(default=NOWHERE, compare=False, repr=False)
    spans: tuple[tuple[Place, Place], ...] = field(default=(), compare=False, repr=False)

    def __str__(self) -> str:
        return " ".join(f"({x}, {y})" for x, y in self.pairs)


@dataclass(frozen=True, slots=True)
class Figure:
    """A word with its arguments used as a value: a region, a texture or a path."""

    word: str
    arguments: tuple["Argument", ...]
    place: Place = field(default=NOWHERE, compare=False, repr=False)

    def __str__(self) -> str:
        return " ".join([self.word, *written(self.arguments, WORDS[self.word], inner=True)])


@dataclass(frozen=True, slots=True)
class Join:
    """Two regions joined by `and` (both together) or `less` (the first without the second)."""

    operator: str
    left: "Region"
    right: Figure
    place: Place = field(default=NOWHERE, compare=False, repr=False)

    def __str__(self) -> str:
        return f"{self.left} {self.operator} {self.right}"


@dataclass(frozen=True, slots=True)
class Broken:
    """Stands where something could not be read, so that one slip is told once."""

    place: Place = field(default=NOWHERE, compare=False, repr=False)


Expression = Measure | Name | Text | Unary | Binary | Call | Broken
Region = Figure | Join
Value = Expression | Points | Figure | Join


def as_expression(value: Value) -> Expression:
    """Take a value as the expression the grammar lets stand there; raises TypeError if none."""
    if isinstance(value, Points | Figure | Join):
        raise TypeError(f"{value} is no expression")
    return value


def as_region(value: Value) -> Region:
    """Take a value as the region the grammar lets stand there; raises TypeError if none."""
    if not isinstance(value, Figure | Join):
        raise TypeError(f"{value} is no region")
    return value


@dataclass(frozen=True, slots=True)
class Argument:
    """A key and its value; `span` is the place of the whole value, parentheses and all."""

    key: str
    value: Value
    place: Place = field(default=NOWHERE, compare=False, repr=False)
    span: Place = field(default=NOWHERE, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Statement:
    """One line of a pattern, with the block below it if it has one.

    A `define` keeps the rule's name under the key `name` and its own keys, with their default
    values, under theirs. `place` is that of its word, `span` that of all its line says.
    """

    word: str
    arguments: tuple[Argument, ...] = ()
    body: tuple["Statement", ...] = ()
    place: Place = field(default=NOWHERE, compare=False, repr=False)
    span: Place = field(default=NOWHERE, compare=False, repr=False)

    def __str__(self) -> str:
        return "\n".join(written_lines(self, 0))

    def get(self, key: str) -> Argument | None:
        """Find the argument of a key, or None."""
        return next((a for a in self.arguments if a.key == key), None)


@dataclass(frozen=True, slots=True)
class Pattern:
    """A whole pattern file."""

    statements: tuple[Statement, ...]

    def __str__(self) -> str:
        return "".join(f"{statement}\n" for statement in self.statements)


def bare(expression: Expression) -> bool:
    """Tell whether an expression can follow a sign without parentheses and stay itself."""
    return isinstance(expression, Name | Call)


def wrapped(expression: Expression, rank: int) -> str:
    """Write an operand, in parentheses where it binds more weakly than `rank`."""
    own = {Binary: 0, Unary: 0}.get(type(expression), 9)
    if isinstance(expression, Binary):
        own = PRECEDENCE[expression.operator]
    elif isinstance(expression, Unary):
        own = PRECEDENCE["not"] if expression.operator == "not" else 8
    return f"({expression})" if own < rank else str(expression)


def outside(value: Value) -> str:
    """Write a value as an argument: an expression that is not a single thing in parentheses."""
    return f"({value})" if isinstance(value, Unary | Binary | Call) else str(value)


def written(
    arguments: tuple[Argument, ...], word: Word | None, inner: bool = False
) -> Iterator[str]:
    """Write arguments as `key value`, those that come first by habit without their key.

    A bare name could be taken for a key of the line, so an `inner` figure gives it its key.
    """
    mains = word.mains if word else ()
    keys = keys_of(word) if word else {}
    leading = True
    for index, argument in enumerate(arguments):
        leading = leading and index < len(mains) and argument.key == mains[index]
        clash = isinstance(argument.value, Name) and (inner or argument.value.name in keys)
        if leading and not clash:
            yield outside(argument.value)
        else:
            leading = False
            yield f"{argument.key} {outside(argument.value)}"


def written_lines(statement: Statement, depth: int) -> Iterator[str]:
    """Write a statement and its block, four spaces a level."""
    if statement.word == "define":
        name, *defaults = statement.arguments
        parts = [str(name.value), *(f"{a.key}={outside(a.value)}" for a in defaults)]
    else:
        parts = list(written(statement.arguments, WORDS.get(statement.word)))
    line = " ".join([statement.word, *parts])
    yield "    " * depth + line + (":" if statement.body else "")
    for child in statement.body:
        yield from written_lines(child, depth + 1)
