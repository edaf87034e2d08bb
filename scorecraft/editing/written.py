"""A pattern text beside its tree: where statements and values stand, and how text is changed."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cached_property
from hashlib import sha256
from typing import NamedTuple

from scorecraft.editing.line import BREAK, MARK
from scorecraft.errors import Place
from scorecraft.frozen import dataclass
from scorecraft.language.parse import parse
from scorecraft.language.tree import Figure, Pattern, Statement

INDENT = "    "
LETTERS = 16


class Edit(NamedTuple):
    """A new piece of text in place of what stands from `start` to `end` (offsets)."""

    start: int
    end: int
    new: str


def edited(text: str, edits: Iterable[Edit]) -> str:
    """Make edits that do not overlap; those at one offset keep their order."""
    out, at = [], 0
    for start, end, new in sorted(edits, key=lambda edit: edit[:2]):
        assert at <= start <= end, "edits overlap"
        out += [text[at:start], new]
        at = end
    return "".join([*out, text[at:]])


def mark_of(text: str) -> str:
    """Mark a text, in a few letters, so that it is known whether it is still the same."""
    return sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:LETTERS]


@dataclass(frozen=True)
class Written:
    """A text and its tree. Statements are known by the numbers of their lines."""

    text: str
    tree: Pattern

    @classmethod
    def read(cls, text: str, name: str = "pattern") -> "Written":
        """Read a text; raises PatternError as `parse` does."""
        return cls(text, parse(text, name))

    @cached_property
    def statements(self) -> Mapping[int, Statement]:
        """Every statement by its line, in the order of the text."""
        return {each.place.line: each for each, _ in walked(self.tree.statements, None)}

    @cached_property
    def parents(self) -> Mapping[int, Statement | None]:
        """The statement that each line's statement stands in."""
        return {each.place.line: parent for each, parent in walked(self.tree.statements, None)}

    @cached_property
    def starts(self) -> Sequence[int]:
        """Where each line begins in the text, and its end at last."""
        first = len(self.text) - len(self.text.removeprefix(MARK))
        return [first, *(found.end() for found in BREAK.finditer(self.text)), len(self.text)]

    @cached_property
    def ending(self) -> str:
        """How lines end here."""
        found = BREAK.search(self.text)
        return found.group() if found else "\n"

    def span(self, place: Place) -> tuple[int, int]:
        """Give where a place starts and ends in the text."""
        start = self.starts[place.line - 1] + place.column - 1
        return start, start + place.length

    def slice(self, place: Place) -> str:
        """Give what stands at a place."""
        start, end = self.span(place)
        return self.text[start:end]

    def replaced(self, place: Place, new: str) -> Edit:
        """Write something over a place."""
        return Edit(*self.span(place), new)

    def lines(self, statement: Statement) -> range:
        """Give the numbers of the lines from a statement to the last one of its block."""
        last = statement
        while last.body:
            last = last.body[-1]
        return range(statement.place.line, last.place.line + 1)

    def line(self, number: int) -> str:
        """Give a line with its break."""
        return self.text[self.starts[number - 1] : self.starts[number]]

    def after(self, statement: Statement | None) -> int:
        """Give the offset behind the last line of a statement's block, or of the last statement."""
        within = statement or self.tree.statements[-1]
        return self.starts[self.lines(within)[-1]]

    def code_end(self, owner: Statement | Figure) -> int:
        """Give the offset behind the last value of a statement or figure, before its colon."""
        places = [owner.place, *(argument.span for argument in owner.arguments)]
        return max(self.span(place)[1] for place in places)


def walked(
    block: tuple[Statement, ...], parent: Statement | None
) -> Iterator[tuple[Statement, Statement | None]]:
    """List every statement of a block and of those in it, each with the one it stands in."""
    for statement in block:
        yield statement, parent
        yield from walked(statement.body, statement)


def indent_of(statement: Statement) -> str:
    """Give the blanks a statement begins with."""
    return " " * (statement.place.column - 1)
