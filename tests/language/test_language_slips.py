"""One slip in a pattern is one error: every shipped pattern, with one token changed at a time."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from support.shelf_designs import some

from scorecraft.errors import PatternError
from scorecraft.expand import expand
from scorecraft.language.parse import parse
from scorecraft.language.tokens import Token, source_lines
from scorecraft.shelf import shelf

EVERY = 13
"""So many slips are passed over for each one tried: another share of them in each pattern."""


def swapped(word: str) -> str:
    """Mistype a word: two letters change places, or one too many is struck."""
    if len(word) > 3 and word[1] != word[2]:
        return word[0] + word[2] + word[1] + word[3:]
    return word + word[-1]


def written(token: Token) -> Iterator[tuple[str, str]]:
    """Give what may stand in a token's place after a slip of each kind."""
    text = f'"{token.text}"' if token.kind == "text" else token.text
    yield "left out", ""
    yield "twice", f"{text} {text}"
    for extra in (" )", " zzz", " 7", ",", " @", " :"):
        yield f"followed by{extra}", text + extra
    if token.kind == "name":
        yield "mistyped", swapped(text)
    if token.kind == "number" and token.unit:
        number = text.removesuffix(token.unit)
        yield "mistyped unit", number + "mn"
        yield "no unit", number
        yield "another unit", number + ("mm" if token.unit == "deg" else "deg")
        yield "unit apart", f"{number} {token.unit}"


def slips(text: str) -> Iterator[tuple[int, str, str]]:
    """Give the line, the kind and the text of every slip of one token or one margin."""
    lines = text.split("\n")
    for line in source_lines(text, "", lambda problem: None):
        at, raw = line.number - 1, lines[line.number - 1]
        for token in line.tokens:
            start = token.place.column - 1
            end = start + token.place.length
            for kind, new in written(token):
                rest = raw[end:].removeprefix(" ") if not new else raw[end:]
                changed = raw[:start] + new + rest
                yield line.number, kind, "\n".join([*lines[:at], changed, *lines[at + 1 :]])
        for kind, margin in (("pushed in", "  " + raw), ("pulled out", raw.removeprefix("  "))):
            yield line.number, kind, "\n".join([*lines[:at], margin, *lines[at + 1 :]])


def told(text: str, path: Path) -> PatternError | None:
    try:
        expand(parse(text, path.name), text, folder=path.parent)
    except PatternError as error:
        return error
    return None


@pytest.mark.parametrize(("number", "name"), list(enumerate(some(2))))
def test_one_slip_is_one_error_with_a_place_in_the_file(number, name):
    path = shelf()[name]
    text = path.read_text("utf-8")
    kinds = set()
    for line, kind, slip in list(slips(text))[number % EVERY :: EVERY]:
        error = told(slip, path)
        if error is None:
            continue  # another pattern, but a good one
        kinds.add(kind)
        assert len(error.problems) == 1, f"{name}, line {line}, {kind}:\n{error}"
        (problem,) = error.problems
        assert problem.hint and problem.message
        source = slip.split("\n")[problem.place.line - 1]
        assert 1 <= problem.place.column <= len(source) + 1
    assert len(kinds) > 5


def test_slips_of_several_kinds_are_told_where_they_are():
    text = shelf()["fern"].read_text("utf-8")
    for line, kind, slip in slips(text):
        if kind in ("mistyped unit", "unit apart", "followed by @"):
            error = told(slip, shelf()["fern"])
            assert error is not None and error.problems[0].place.line == line


def test_a_mistyped_definition_is_told_once_with_every_line_that_used_the_name():
    text = "loaf round width 220mm\nknob leavs 8\naround leaves:\n    slash\nstar points leaves\n"
    error = told(text, Path("a.score"))
    (problem,) = error.problems
    assert problem.place.line == 3 and "also in line 5" in problem.hint and "leavs" in problem.hint


def test_two_slips_are_two_errors():
    text = shelf()["leaf-crown"].read_text("utf-8")
    text = text.replace("knob leaves", "knbo leaves").replace("veins 5", "viens 5")
    assert [p.message for p in told(text, Path("a.score")).problems] == [
        'unknown word "knbo"', '"leaf" has no key "viens"',
    ]  # fmt: skip
