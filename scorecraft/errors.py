"""What went wrong, where in the pattern, and what to do about it."""

import re
from collections.abc import Iterable, Sequence
from typing import NamedTuple, Self, TypeVar

from scorecraft.frozen import dataclass

E = TypeVar("E", bound="ScorecraftError")
STEERING = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]")


@dataclass(frozen=True, slots=True)
class Place:
    """A stretch of a pattern file: line and column count from 1, in characters."""

    file: str
    line: int
    column: int
    length: int = 1

    def __lt__(self, other: "Place") -> bool:
        return (self.file, self.line, self.column) < (other.file, other.line, other.column)

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong with a pattern: what, where, and the way out.

    `quoted` is the line at its place where that is in another file than the pattern (a drawing,
    the words of an option). `trails` marks what may follow from a slip to its left on the same
    line, and is told only if there is none. Problems `about` the same name are told once, with the
    lines of all of them.
    """

    message: str
    place: Place | None = None
    hint: str = ""
    trails: bool = False
    about: str = ""
    quoted: str = ""


class Slip(NamedTuple):
    """What is wrong and the way out, in the user's words, wherever it may be.

    Gaps in braces are filled by a call, which raises KeyError for one that is not given.

    >>> Slip("a loaf called {shape} has no hole")(shape="round").message
    'a loaf called round has no hole'
    """

    message: str
    hint: str = ""

    def __call__(self, **gaps: object) -> Self:
        """Fill the gaps."""
        message, hint = (each.format(**gaps) for each in self)
        return self._replace(message=message, hint=hint)

    def meant(self, close: str) -> Self:
        """Ask whether the nearest known name is meant, where one is near."""
        return self._replace(hint=f'did you mean "{close}"?') if close else self

    def at(self, place: Place | None, *, trails: bool = False, about: str = "") -> Problem:
        """Make it a problem at a place."""
        return Problem(self.message, place, self.hint, trails, about)

    def error(self, place: Place | None = None) -> "ScorecraftError":
        """Make it an error at a place."""
        return ScorecraftError(self.message, place, self.hint)

    def usage(self, place: Place | None = None) -> "UsageError":
        """Make it the refusal of a request."""
        return UsageError(self.message, place, self.hint)

    def as_error(self, kind: type[E]) -> E:
        """Make it an error of a kind."""
        return kind(self.message, None, self.hint)


class EnoughError(Exception):
    """A limit was reached and told: what is being read or drawn ends here."""


class Problems:
    """The problems found so far; raises EnoughError once there are too many to tell."""

    def __init__(self, most: int) -> None:
        self.most = most
        self.found: list[Problem] = []

    def report(self, problem: Problem) -> None:
        """Keep a problem; raises EnoughError when there are too many."""
        self.found.append(problem)
        if len(self.found) >= self.most:
            more = "there may be more errors"
            self.found.append(Problem(more, problem.place, f"fix these {self.most} first"))
            raise EnoughError


class ScorecraftError(Exception):
    """Anything scorecraft refuses to do, told in the user's words.

    `exit_code` is what the command line returns for it.
    """

    exit_code = 2

    def __init__(
        self, message: str, place: Place | None = None, hint: str = "", quoted: str = ""
    ) -> None:
        super().__init__(message)
        self.message = message
        self.place = place
        self.hint = hint
        self.quoted = quoted

    @property
    def problems(self) -> tuple[Problem, ...]:
        """All that is wrong, in the order of the file."""
        return (Problem(self.message, self.place, self.hint, quoted=self.quoted),)

    def __str__(self) -> str:
        return "\n".join(shown(problem) for problem in self.problems)


def quoting(error: ScorecraftError, text: str) -> ScorecraftError:
    """Give an error of a file other than the pattern with the line it is about."""
    lines = lines_of(text) if error.place else []
    line = lines[error.place.line - 1] if error.place and error.place.line <= len(lines) else ""
    return type(error)(error.message, error.place, error.hint, line)


class UsageError(ScorecraftError):
    """A request that cannot be met as it was asked: a bad option, file or size."""


class PatternError(ScorecraftError):
    """A pattern that cannot be read; carries every problem found in one run."""

    def __init__(self, problems: Sequence[Problem], text: str = "") -> None:
        first = problems[0]
        super().__init__(first.message, first.place, first.hint)
        self._problems = tuple(problems)
        self.text = text

    @property
    def problems(self) -> tuple[Problem, ...]:
        """All that is wrong, in the order of the file."""
        return self._problems

    def __str__(self) -> str:
        lines = lines_of(self.text)
        return "\n".join(shown(problem, lines) for problem in self.problems)


class ToldError(ScorecraftError):
    """What follows from a problem that has been told already: not told again."""


def shown_plainly(text: str) -> str:
    r"""Write a text so that a terminal only shows it: what would steer it stands as `\u001b`.

    That is control characters (but line ends and tabs) and marks that turn the reading direction.
    JSON stays the same JSON.
    """
    return STEERING.sub(lambda found: f"\\u{ord(found.group()):04x}", text)


def lines_of(text: str) -> list[str]:
    """Split a text into lines as editors count them: at LF, CR LF or a lone CR."""
    return re.split(r"\r\n|\r|\n", text)


def shown(problem: Problem, lines: Sequence[str] = ()) -> str:
    """Write a problem as `file:line:column: message`, its line with a caret, and the hint."""
    place = problem.place
    out = [f"{place}: {problem.message}" if place else problem.message]
    if place and problem.quoted:
        out += caret(problem.quoted, place)
    elif place and 0 < place.line <= len(lines):
        out += caret(lines[place.line - 1], place)
    if problem.hint:
        out.append(f"    {problem.hint}")
    return "\n".join(out)


def caret(line: str, place: Place, width: int = 76) -> list[str]:
    """Show a window of a source line with the place underlined.

    A tab, or a character that would steer the terminal, becomes one space.
    """
    line = "".join(c if c.isprintable() else " " for c in line)
    start = max(0, place.column - 1 - width // 2) if len(line) > width else 0
    window = line[start : start + width]
    number = f"{place.line:>5} | "
    at = place.column - 1 - start
    length = max(1, min(place.length, len(window) - at))
    return [number + window, " " * 6 + "| " + " " * at + "^" * length]


def nearest(name: str, names: Iterable[str], cutoff: float = 0.6) -> str:
    """Find the known name most like `name`, which may have been meant, or ""."""
    from difflib import get_close_matches

    return next(iter(get_close_matches(name, list(names), n=1, cutoff=cutoff)), "")
