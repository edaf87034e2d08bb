"""Arguments to plain values: lengths in mm, angles in radians, counts, names and points."""

from dataclasses import replace
from functools import cache
from typing import Any, TypeAlias

import numpy as np

from scorecraft.errors import Place, Problem, ScorecraftError
from scorecraft.expand import telling as say
from scorecraft.expand.scope import Scope
from scorecraft.language.arguments import LineReader
from scorecraft.language.evaluate import evaluate
from scorecraft.language.keys import FREE, Key, Word, length
from scorecraft.language.kinds import check_quantity
from scorecraft.language.tokens import source_lines
from scorecraft.language.tree import (
    Argument,
    Expression,
    Measure,
    Name,
    Points,
    Text,
    Value,
    as_expression,
)
from scorecraft.language.words import WORDS, keys_of

Read: TypeAlias = Any  # which of these a key has is said by the table of words, not by types
Values = dict[str, Read]
"""Plain values by key: float mm or rad, int, bool, str, (x, y), an (N, 2) array or a Quantity."""

MADE = {"snip": {"hinge", "lay"}}
"""Keys of a motif that say how it is made, not how it is drawn."""
LAZY = ("region", "texture", "path", "condition", "new name")


def read(word: Word, arguments: tuple[Argument, ...], scope: Scope | None, place: Place) -> Values:
    """Read the arguments of a word, and the defaults of those not given, by the keys' names.

    `scope` is None for the head of a pattern, where no loaf is known yet. Regions, textures,
    paths and conditions are left to whoever runs the word. Raises ScorecraftError with the
    place of the value that does not fit.
    """
    keys = keys_of(word)
    fixed, shares = defaults(word.name)
    values: Values = dict(fixed)
    given = set()
    for argument in arguments:
        key = keys[argument.key]
        given.add(key.name)
        if key.kind not in LAZY:
            values[key.name] = read_value(key, argument.value, scope)
    for name, value in shares:
        if name not in given:
            try:
                values[name] = read_value(keys[name], value, scope)
            except ScorecraftError as error:
                raise ScorecraftError(error.message, place, error.hint) from error
    return values


@cache
def defaults(word: str) -> tuple[Values, tuple[tuple[str, Value], ...]]:
    """Read the defaults of a word: those that are always the same, and shares of the reach."""
    fixed: Values = {}
    shares = []
    for key in keys_of(WORDS[word]).values() if word in WORDS else ():
        if key.default:
            value = default_value(word, key.name)
            if isinstance(value, Measure) and value.unit == "%" and key.kind == "length":
                shares.append((key.name, value))
            else:
                fixed[key.name] = read_value(key, value, None)
    return fixed, tuple(shares)


def default_value(word: str, key: str) -> Value:
    """Read a default of the table as the parser would."""
    problems: list[Problem] = []
    text = f"{word} {key} {keys_of(WORDS[word])[key].default}"
    (line,) = source_lines(text, "table of words", problems.append)
    found: list[Argument] = []
    LineReader(line.tokens, {}, problems.append).pairs(
        replace(WORDS[word], attributes=True), found, whole_line=True
    )
    assert not problems, problems
    return found[0].value


def read_value(key: Key, value: Value, scope: Scope | None) -> Read:
    """Read one value as the kind its key takes."""
    if key.choices and isinstance(value, Name):
        return value.name == "yes" if key.kind == "flag" else value.name
    if isinstance(value, Text):
        return value.value
    if isinstance(value, Points):
        pairs = [[length_of(item, scope) for item in pair] for pair in value.pairs]
        return (pairs[0][0], pairs[0][1]) if key.kind == "pair" else np.array(pairs)
    return read_quantity(key, as_expression(value), scope)


def length_of(value: Expression, scope: Scope | None) -> float:
    """Work out a coordinate in mm; a share is one of the reach."""
    free = length("coordinate", "0mm", "", FREE)
    found = read_quantity(free, value, scope)
    assert isinstance(found, float)
    return found


def read_quantity(key: Key, value: Expression, scope: Scope | None) -> Read:
    """Work out an expression and check that it fits its key.

    Raises ScorecraftError where it does not.
    """
    found = evaluate(value, scope.names if scope else {})
    if problem := check_quantity(key, found, value.place):
        raise ScorecraftError(problem.message, problem.place, problem.hint)
    if key.kind == "any":
        return found
    if key.kind == "count":
        return int(found.value)
    if found.share and key.kind == "length":
        if scope is None:
            raise ScorecraftError(say.NO_REACH, value.place)
        return found.value * scope.reach_mm
    return found.value


def own(word: Word, values: Values) -> Values:
    """Pick the values a motif's or texture's function takes, by its parameters' names."""
    others = {f"{part}_depth" for part in word.parts}
    if word.group == "motif":
        others |= {"turn", "from"} if word.origin else {"turn"}
    others |= MADE.get(word.name, set())
    return {
        key.parameter: values[key.name]
        for key in word.keys
        if key.name in values and key.name not in others
    }
