"""What a statement says, in a short mark: to know it again after the pattern was edited."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from scorecraft.errors import Place
from scorecraft.language.tree import Pattern, Statement

LETTERS = 10


def fingerprints(pattern: Pattern) -> Mapping[Place, str]:
    """Mark every statement by what it says and the heads of the blocks it stands in.

    Lines above and below, comments, spaces and the values of knobs do not count. Statements that
    say the same in the same blocks have the same mark.
    """
    from hashlib import sha256

    return {
        place: sha256("\n".join(lines).encode()).hexdigest()[:LETTERS]
        for statement in pattern.statements
        for place, lines in _said(statement, ())
    }


def _said(statement: Statement, heads: tuple[str, ...]) -> Iterator[tuple[Place, tuple[str, ...]]]:
    """List a statement and those in its block, each with its own words after all heads."""
    said = (*heads, str(replace(statement, body=())))
    yield statement.place, said
    for inner in statement.body:
        yield from _said(inner, said)
