"""A line at the head of a pattern, with the places of its arguments in the text."""

import re
from collections.abc import Sequence
from typing import Self

from scorecraft.errors import Place, Problem, ScorecraftError
from scorecraft.frozen import dataclass, replace
from scorecraft.language.arguments import LineReader
from scorecraft.language.tokens import Token, source_lines
from scorecraft.language.tree import Argument
from scorecraft.language.words import WORDS

BREAK = re.compile(r"\r\n|\r|\n")
MARK = "\ufeff"


@dataclass(frozen=True, slots=True)
class Line:
    """A line that begins a statement of a word in the table, outside all blocks.

    `start` is where it begins in the whole text, `text` the line without its break, `tokens` and
    `arguments` what it says, `problems` what is wrong with it.
    """

    number: int
    start: int
    text: str
    tokens: tuple[Token, ...]
    arguments: tuple[Argument, ...]
    problems: tuple[Problem, ...]

    @classmethod
    def read(cls, text: str, start: int, number: int) -> Self:
        """Read one line that starts with a word of the table."""
        problems: list[Problem] = []
        (line,) = source_lines(text, "pattern", problems.append)
        arguments = LineReader(line.tokens, {}, problems.append).arguments(line.tokens[0].text)
        return cls(number, start, text, line.tokens, arguments, tuple(problems))

    @property
    def end(self) -> int:
        """Where the line ends in the whole text."""
        return self.start + len(self.text)

    @property
    def place(self) -> Place:
        """The place of its first word."""
        return Place("pattern", self.number, 1, len(self.tokens[0].text))

    @property
    def code(self) -> int:
        """Where what it says ends, in the line: before blanks and a comment."""
        last = self.tokens[-1].place
        return last.column - 1 + last.length

    def sound(self) -> tuple[Argument, ...]:
        """Give its arguments; raises ScorecraftError at the first thing wrong with the line."""
        if self.problems:
            first = self.problems[0]
            place = replace(first.place or self.place, line=self.number)
            raise ScorecraftError(first.message, place, first.hint)
        return self.arguments

    def piece(self, argument: Argument) -> tuple[int, int]:
        """Find where an argument, its key included, starts and ends in the line."""
        last = argument.span
        return argument.place.column - 1, last.column - 1 + last.length

    def has_key(self, argument: Argument) -> bool:
        """Tell whether an argument is written with its key before it."""
        start = argument.place.column
        return any(t.place.column == start and t.text == argument.key for t in self.tokens)


def lines_at_head(text: str) -> list[Line]:
    """Read the lines outside all blocks that begin with a header word; problems stay with them.

    No statement runs over the end of its line, so slips elsewhere do not matter.
    """
    found = []
    start = len(text) - len(text.removeprefix(MARK))
    for number, line in enumerate(BREAK.split(text[start:]), start=1):
        word = re.match(r"[^\W\d]\w*+", line)
        if word and word.group() in WORDS and WORDS[word.group()].group == "header":
            found.append(Line.read(line, start, number))
        start += len(line)
        separator = BREAK.match(text, start)
        start = separator.end() if separator else start
    return found


def find_line(lines: Sequence[Line], word: str, name: str = "") -> Line | None:
    """Find the line of a word (of a knob by its `name`); raises ScorecraftError at a second."""
    found = [line for line in lines if line.tokens[0].text == word]
    if name:
        found = [line for line in found if [t.text for t in line.tokens[1:2]] == [name]]
    if len(found) > 1:
        hint = f"keep one: the first is in line {found[0].number}"
        raise ScorecraftError(f'a second "{name or word}"', found[1].place, hint)
    return found[0] if found else None


def inserted(text: str, above: Line | None, new: str) -> str:
    """Put a new line below another one, or else above the first line that says something."""
    at = above.end if above else beginning(text)
    separator = BREAK.search(text)
    ending = separator.group() if separator else "\n"
    new = ending + new if above else new + ending
    return text[:at] + new + text[at:]


def beginning(text: str) -> int:
    """Find where the first line that is neither blank nor a comment starts."""
    at = len(text) - len(text.removeprefix(MARK))
    for line in re.finditer(r"[^\r\n]*+(?:\r\n|\r|\n)", text[at:]):
        said = line.group().strip()
        if said and not said.startswith("#"):
            return at + line.start()
    return at
