"""Names that a slip may have kept from being defined: what is said of them is no second error."""

from collections.abc import Iterable, Sequence

from scorecraft.errors import Problem, nearest
from scorecraft.frozen import dataclass
from scorecraft.language.tokens import SourceLine
from scorecraft.language.words import AT_HAND, WORDS, starts_statement

DEFINING = ("let", "knob", "define")


@dataclass(frozen=True, slots=True)
class Doubt:
    """What slips leave in doubt: some names or `any_name`, and with a rule `any_word`."""

    names: frozenset[str]
    any_name: bool
    any_word: bool
    lines: frozenset[int]
    """The lines of the slips themselves: their own problems stand."""

    def covers(self, problem: Problem) -> bool:
        """Tell whether an unknown word or key may only follow from a slip in a rule's head."""
        here = problem.place is not None and problem.place.line in self.lines
        return bool(self.any_word and problem.about and not here)


def doubt_of(lines: Sequence[SourceLine], problems: Iterable[Problem]) -> Doubt:
    """Find what the lines with problems may have been meant to define."""
    slipped = {problem.place.line for problem in problems if problem.place}
    bad = [line for line in lines if line.number in slipped]
    heads = [line for line in bad if meant_as(line.tokens[0].text, DEFINING)]
    odd = [line for line in bad if not starts_statement(line.tokens[0].text)]
    return Doubt(
        names=frozenset(token.text for line in (*heads, *odd) for token in line.tokens),
        any_name=any(not names_something(line) for line in heads),
        any_word=any(meant_as(line.tokens[0].text, ("define",)) for line in heads),
        lines=frozenset(line.number for line in heads),
    )


def names_something(line: SourceLine) -> bool:
    """Tell whether a line that defines a name says which, one that is free to use."""
    if len(line.tokens) < 2 or line.tokens[1].kind != "name":
        return False
    return line.tokens[1].text not in (*AT_HAND, *WORDS)


def meant_as(word: str, words: Sequence[str]) -> bool:
    """Tell whether a line starts with one of some words, or was meant to."""
    return word in words or (word not in WORDS and nearest(word, WORDS) in words)


def like_define(word: str) -> bool:
    """Tell whether a line that starts with a word defines a rule, or may have been meant to."""
    return word == "define" or (word not in WORDS and nearest(word, ("define",)) == "define")
