"""Names of a pattern: every name must be known where it is used."""

from collections.abc import Container, Iterator, Mapping
from itertools import chain

from scorecraft.errors import EnoughError, Problem, nearest
from scorecraft.language import slips
from scorecraft.language.keys import Key, Word
from scorecraft.language.tokens import Report
from scorecraft.language.tree import (
    Argument,
    Binary,
    Call,
    Figure,
    Join,
    Name,
    Pattern,
    Points,
    Statement,
    Unary,
    Value,
)
from scorecraft.language.words import AT_HAND, KEYS, WORDS, keys_of

MOST_NAMES = 500
"""The most names (knob, let, define) of one pattern."""
KEY_NAMES = {key for keys in KEYS.values() for key in keys}


def check_names(
    pattern: Pattern,
    rules: Mapping[str, tuple[Key, ...]],
    report: Report,
    doubtful: Container[str] = (),
) -> None:
    """Report the names that nothing defines, and those defined twice or in vain.

    `doubtful` names stand where a definition could not be read: nothing is said of them.
    """

    def telling(problem: Problem) -> None:
        if not problem.about or problem.about not in doubtful:
            report(problem)

    check_block(pattern.statements, set(AT_HAND), rules, telling)


def check_block(
    block: tuple[Statement, ...],
    outer: set[str],
    rules: Mapping[str, tuple[Key, ...]],
    report: Report,
) -> None:
    """Check the statements of one block in order; names it defines end with it.

    Raises EnoughError when there are too many names.
    """
    known = set(outer)
    for statement in block:
        row = WORDS.get(statement.word)
        if row is None:
            row = Word(statement.word, "rule", "", rules.get(statement.word, ()), attributes=True)
        new = defined(statement)
        for argument in statement.arguments:
            if argument.key != "name" or not new:
                for unknown in check_value(argument, row, known, new):
                    report(unknown)
        if new and (problem := check_new(statement, new, known)):
            report(problem)
        if statement.word == "define":
            own = {key.name for key in rules.get(new, ())}
            check_block(statement.body, known | own, rules, report)
            continue
        known |= {new} if new else set()
        if len(known) > MOST_NAMES:
            report(slips.MANY_NAMES(most=MOST_NAMES).at(statement.place))
            raise EnoughError
        check_block(statement.body, known, rules, report)


def defined(statement: Statement) -> str:
    """Give the name that a knob, a let or a define makes, or ""."""
    if statement.word not in ("knob", "let", "define"):
        return ""
    argument = statement.get("name")
    return argument.value.name if argument and isinstance(argument.value, Name) else ""


def check_new(statement: Statement, new: str, known: set[str]) -> Problem | None:
    """Check that a new name does not hide one that is at hand."""
    argument = statement.get("name")
    if new not in known or argument is None or statement.word == "define":
        return None
    slip = slips.ALWAYS_AT_HAND if new in AT_HAND else slips.NAME_TAKEN
    return slip(name=new).at(argument.place, trails=True)


def check_value(argument: Argument, row: Word, known: set[str], new: str) -> Iterator[Problem]:
    """Check the names in the value of one argument."""
    key = keys_of(row).get(argument.key)
    if isinstance(argument.value, Name) and key and key.choices:
        return
    for name in names_in(argument.value):
        if name.name in known:
            continue
        if name.name == new:
            slip = slips.DEFINED_BY_ITSELF(name=new)
        else:
            slip = slips.UNKNOWN_NAME(name=name.name).meant(nearest(name.name, sorted(known)))
        trails = name.name in KEY_NAMES  # a value before it may be amiss
        yield slip.at(name.place, trails=trails, about=name.name)


def names_in(value: Value) -> Iterator[Name]:
    """Find every name in a value that stands for a number."""
    if isinstance(value, Name):
        yield value
    elif isinstance(value, Unary):
        yield from names_in(value.operand)
    elif isinstance(value, Binary | Join):
        yield from names_in(value.left)
        yield from names_in(value.right)
    elif isinstance(value, Call):
        for argument in value.arguments:
            yield from names_in(argument)
    elif isinstance(value, Points):
        for number in chain(*value.pairs):
            yield from names_in(number)
    elif isinstance(value, Figure):
        for given in value.arguments:
            key = WORDS[value.word].key(given.key)
            if not (isinstance(given.value, Name) and key and key.choices):
                yield from names_in(given.value)
