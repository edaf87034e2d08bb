"""Large, deep and odd texts are read, or refused with the limit they reached."""

import pytest

from scorecraft.errors import PatternError
from scorecraft.language.parse import parse


def problems(text: str):
    with pytest.raises(PatternError) as caught:
        parse(text, "a.score")
    return caught.value.problems


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("slash (1mm" + "+1mm" * 5000 + ")\n", "expression is too long"),
        ("when (1 < 2" + " and 1 < 2" * 5000 + "):\n    slash\n", "expression is too long"),
        ("slash (" + "+" * 5000 + "(1mm))\n", "too many signs in a row"),
        ("when (" + "not " * 5000 + "(1 < 2)):\n    slash\n", "nested too deeply"),
        ("slash (" + "sin(" * 5000 + "1deg" + ")" * 5001 + "\n", "nested too deeply"),
        ("fill disc radius 9mm" + " less disc radius 1mm" * 5000 + " with hatch\n",
         "a region of too many parts"),
        ("".join(f"let a{k} {k}\n" for k in range(5000)), "too many names"),
        ('title "a\x1b[31mb"\n', "control character U+001B"),
        ('title "a\ud800b"\n', "control character U+D800"),
    ],
)  # fmt: skip
def test_a_limit_is_told_once(text, message):
    (problem,) = problems(text)
    assert message in problem.message
    assert problem.hint


def test_a_long_expression_of_many_points_is_no_long_expression():
    points = " ".join(f"({k}mm + 1mm, {k}mm * 2)" for k in range(300))
    assert len(parse(f"path {points}\n").statements[0].arguments[0].value.pairs) == 300


def test_a_hundred_problems_are_told_and_then_that_there_may_be_more():
    """The text was split anew for each problem: a file of slips took minutes to tell."""
    text = "slash 3mmm\n" * 50_000
    with pytest.raises(PatternError) as caught:
        parse(text, "a.score")
    assert len(caught.value.problems) == 101
    assert "may be more" in caught.value.problems[-1].message
    assert str(caught.value).count('did you mean "mm"?') == 100


def test_lines_are_counted_as_editors_count_them():
    """A form feed or a Unicode line separator ended a line, and moved every place below it."""
    (problem,) = problems("# a\x0cb\x85c\u2028d\r\nslash 3mm\rleef 3mm\n")
    assert problem.place.line == 3
    assert parse("\x0c\nslash\x0b3mm\u2028depth 2mm\n") == parse("slash 3mm depth 2mm\n")


def test_what_steers_a_terminal_is_never_shown():
    with pytest.raises(PatternError) as caught:
        parse('title "x" \x1b[31m leef\x07\n')
    assert "\x1b" not in str(caught.value) and "\x07" not in str(caught.value)
