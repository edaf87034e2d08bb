"""Whatever is written, the answer is a layout or an error with its place, and soon."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.steps import TooManyCallsError, at_most

from scorecraft.errors import PatternError, ScorecraftError
from scorecraft.expand import expand
from scorecraft.language.evaluate import FUNCTIONS
from scorecraft.language.parse import parse
from scorecraft.language.tokens import source_lines
from scorecraft.language.words import AT_HAND, KEYS, WORDS
from scorecraft.reading import decoded
from scorecraft.shelf import shelf

TEXTS = [path.read_text("utf-8") for path in shelf().values()]
VOCABULARY = sorted({*WORDS, *FUNCTIONS, *AT_HAND, *(k for keys in KEYS.values() for k in keys)})
ODD = [
    "0", "0mm", "-1mm", "999999999999mm", "0.0000000001mm", "1e9", "9999%", "-50%", "100000",
    "-360deg", "99999deg", "(1mm / 0)", "(0mm - 0mm)", "sqrt(-1)", '"x"', "(k / k)", "1/3in",
    "(999999999 * 999999999 * 999999999mm)", ")", "(", ":", ",", "=", "", "@", "\x00", "ｍｍ",
]  # fmt: skip
MOST_CALLS = 20_000_000
"""Far above what any of them takes (85 000): a run that never ends is what this finds."""

quick = settings(max_examples=120, derandomize=True)


def ignored(problem: object) -> None:
    """Say nothing."""


def answered(text: str) -> None:
    """Read and draw a text, and judge what comes back."""
    try:
        with at_most(MOST_CALLS):
            layout = expand(parse(text, "a.score"), text)
    except PatternError as error:
        lines = text.count("\n") + text.count("\r") + 1
        for problem in error.problems:
            assert problem.message and problem.place is not None
            assert problem.place.file == "a.score" and 1 <= problem.place.line <= lines
            assert problem.place.column >= 1
        assert str(error)
    except ScorecraftError as error:
        assert error.message
    else:
        assert all(np.isfinite(cut.line).all() and len(cut.line) > 1 for cut in layout.cuts)
        assert all(cut.depth_mm > 0 and 0 < cut.blade_rad < 2 for cut in layout.cuts)


def test_what_never_ends_is_noticed():
    with pytest.raises(TooManyCallsError), at_most(1000):
        while True:
            len(TEXTS)


@quick
@given(st.text(max_size=200))
def test_any_text(text):
    answered(text)


@quick
@given(st.lists(st.sampled_from([*VOCABULARY, *ODD, "\n", "\n    ", "8", "20mm"]), max_size=40))
def test_any_heap_of_words(words):
    answered("loaf round width 220mm height 95mm\n" + " ".join(words) + "\n")


@quick
@given(st.binary(max_size=200))
def test_any_bytes(data):
    try:
        answered(decoded(data, "a.score"))
    except ScorecraftError as error:
        assert error.place is not None and error.place.file == "a.score"


@st.composite
def mangled(draw):
    """Take a shipped pattern and change a few of its tokens and lines."""
    lines = draw(st.sampled_from(TEXTS)).split("\n")
    for _ in range(draw(st.integers(1, 4))):
        number = draw(st.integers(0, len(lines) - 1))
        change = draw(st.sampled_from(["delete", "double", "swap", "token", "token", "token"]))
        if change == "delete":
            del lines[number]
            lines = lines or [""]
        elif change == "double":
            lines.insert(number, lines[number])
        elif change == "swap":
            other = draw(st.integers(0, len(lines) - 1))
            lines[number], lines[other] = lines[other], lines[number]
        elif tokens := [t for row in source_lines(lines[number], "", ignored) for t in row.tokens]:
            place = draw(st.sampled_from(tokens)).place
            before, after = place.column - 1, place.column - 1 + place.length
            new = draw(st.sampled_from([*ODD, *VOCABULARY]))
            lines[number] = lines[number][:before] + new + lines[number][after:]
    return "\n".join(lines)


@quick
@given(mangled())
def test_any_mangled_shipped_pattern(text):
    answered(text)
