"""Every slip of a file is told once, at its place, with a way out."""

import pytest

from scorecraft.errors import PatternError, Problem
from scorecraft.language.parse import parse
from scorecraft.language.tree import Argument, Measure, Name, Statement

LEAF_CROWN = """
title "Leaf crown"
loaf round width 220mm height 95mm   # a comment
knob leaves 8 min 5 max 12
around leaves radius 26mm:
    leaf length 58mm width 24mm depth 6mm vein_depth 2.5mm
fill disc radius 16mm less box width 3mm length 4mm with scales size 6mm depth 2mm
"""


def problems(text: str) -> tuple[Problem, ...]:
    with pytest.raises(PatternError) as caught:
        parse(text, "a.score")
    return caught.value.problems


def test_a_pattern_becomes_statements_with_places():
    tree = parse(LEAF_CROWN, "a.score")
    assert [s.word for s in tree.statements] == ["title", "loaf", "knob", "around", "fill"]
    around = tree.statements[3]
    assert around.arguments == (
        Argument("count", Name("leaves")),
        Argument("radius", Measure(26.0, "mm")),
    )
    assert around.body[0].word == "leaf"
    assert str(around.body[0].place) == "a.score:6:5"
    assert str(around.arguments[1].place) == "a.score:5:15"


def test_main_values_may_come_with_or_without_their_key():
    bare, keyed = parse("slash 40mm depth 3mm"), parse("slash length 40mm depth 3mm")
    assert bare == keyed


@pytest.mark.parametrize(
    ("line", "message", "column", "hint"),
    [
        ("leef length 3mm", 'unknown word "leef"', 1, '"leaf"'),
        ("leaf lenght 3mm", 'no key "lenght"', 6, '"length"'),
        ("rose 30mm base", 'no key "base"', 11, '"from base"'),
        ("around 8 inward:", 'no key "inward"', 10, '"facing in"'),
        ("slash 20mmm", '"mmm" is not a unit', 9, '"mm"'),
        ("slash 20", "needs a unit", 7, "mm"),
        ("slash -20mm", "cannot be negative", 7, "above zero"),
        ("slash 0mm", "cannot be zero", 7, "above zero"),
        ("slash 0%", "cannot be zero", 7, "above zero"),
        ("slash 20mm depth 3deg", "takes a length", 18, "mm"),
        ("slash 20mm depth 50%", "takes a length", 18, "mm"),
        ("slash 20mm kind deep", '"slash" has no kind "deep"', 17, "expansion"),
        ("star 20mm points 2.5", "whole number", 18, "8"),
        ("star 20mm points 1", "below 2", 18, "2 or more"),
        ("leaf 20mm veins 99", "above 40", 17, "40 or less"),
        ("slash 20mm length 30mm", "given twice", 12, "one of them"),
        ("slash (20mm", 'expected ")"', 12, "close"),
        ("slash (1 < 2 < 3)", "do not chain", 14, "and"),
        ("slash (sine(3deg) * 2mm)", 'unknown function "sine"', 8, '"sin"'),
        ("slash (sin(3deg, 4deg) * 2mm)", "sin takes one value", 8, "sin(a)"),
        ("slash (missing * 2mm)", 'unknown name "missing"', 8, "knob or let"),
        ("slash 20mm :", "takes no block", 12, "remove"),
        ("fill disk radius 3mm with scales", "not a region", 6, '"disc"'),
        ("fill disc radius 3mm with scalse", "not a texture", 27, '"scales"'),
        ("fill disc radius 3mm", 'needs "with"', 1, "like:"),
        ("disc radius 3mm", "is a region, not a statement", 1, "fill"),
        ("slash 20mm ×2", '"×" has no meaning', 12, "write * instead"),
        ('note "open', "no closing quote", 6, "end it"),
        ("note yes", "takes text in quotes", 6, "quotes"),
        ("20mm slash", "starts with a word", 1, "slash"),
        ("let a (a + 1)", "defined by itself", 8, "above it"),
        ("let k 3", "always at hand", 5, "another name"),
        ("knob n 8 min", '"min" needs a value', 13, "scorecraft words knob"),
        ("trace drawing", "takes text in quotes", 7, "quotes"),
        ("path (1mm 2mm)", 'expected ","', 11, "(x, y)"),
        ("slash 1/0in", "zero below the line", 7, "1/2in"),
        ("slash 9999999999999mm", "too large", 7, "million"),
    ],
)
def test_a_slip_is_told_once_with_its_place_and_a_way_out(line, message, column, hint):
    (problem,) = problems(f"loaf round width 220mm\n{line}\n")
    assert message in problem.message
    assert (problem.place.line, problem.place.column) == (2, column)
    assert hint in problem.hint


def test_all_slips_of_a_file_are_told_in_one_run():
    text = 'titel "x"\nloaf ruond width 220\naround 8 radius 26mm:\n    leef 3mm\nslash 3mm 4mm\n'
    told = problems(text)
    assert [p.place.line for p in told] == [1, 2, 2, 4, 5]


@pytest.mark.parametrize(
    ("text", "message", "line"),
    [
        ("around 8:\nslash 3mm\n", "nothing stands under", 1),
        ("around 8\n    slash 3mm\n", "needs a block", 1),
        ("slash 3mm\n    slash 4mm\n", "nothing opens a block", 2),
        ("around 8:\n    slash 3mm\n  slash 4mm\n", "nothing opens a block", 3),
        ("around 8:\n\tslash 3mm\n\tslash 4mm\n", "a tab in the indentation", 2),
        ("around 8:\n    loaf round width 9mm\n", "cannot stand in a block", 2),
        ("", "empty", 1),
        ("# only a comment\n\n", "empty", 1),
        ("let a 3mm\nlet a 4mm\n", "already taken", 2),
        ("define slash:\n    leaf 3mm\n", "is a word of the language", 1),
    ],
)
def test_a_slip_of_layout_is_told_once(text, message, line):
    (problem,) = problems(text)
    assert message in problem.message
    assert problem.place.line == line


def test_windows_line_ends_and_a_byte_order_mark_change_nothing():
    assert parse("\ufeff" + LEAF_CROWN.replace("\n", "\r\n")) == parse(LEAF_CROWN)


def test_a_tab_after_the_margin_is_a_space():
    assert parse("slash\t20mm\tdepth 3mm") == parse("slash 20mm depth 3mm")


def test_nesting_is_bounded_and_the_limit_is_said():
    deep = "".join(" " * i + "mirror:\n" for i in range(60)) + " " * 60 + "slash 3mm\n"
    (problem,) = problems(deep)
    assert "nested too deeply" in problem.message
    assert "40 levels" in problem.hint
    (problem,) = problems("slash " + "(" * 5000 + "1mm" + ")" * 5000)
    assert "nested too deeply" in problem.message
    (problem,) = problems("slash (" + "-" * 5000 + "(1mm))")
    assert "signs in a row" in problem.message


def test_an_error_shows_the_line_and_a_caret():
    with pytest.raises(PatternError) as caught:
        parse("slash 20mm\nleef 3mm\n", "a.score")
    shown = str(caught.value).splitlines()
    assert shown[0] == 'a.score:2:1: unknown word "leef"'
    assert shown[1].endswith("| leef 3mm")
    assert shown[2].index("^") == shown[1].index("leef")
    assert shown[2].count("^") == 4
    assert shown[3].strip() == 'did you mean "leaf"?'


def test_a_long_line_is_shown_around_the_caret():
    with pytest.raises(PatternError) as caught:
        parse('note "' + "x" * 500 + '" leef\n', "a.score")
    shown = str(caught.value).splitlines()
    assert len(shown[1]) < 100
    assert shown[1][shown[2].index("^") :].startswith("leef")


def test_a_rule_is_known_before_and_within_itself():
    text = "twig n 3\ndefine twig size=30mm n=2:\n    slash size\n    when (n > 0):\n"
    tree = parse(text + "        twig n (n - 1)\n")
    assert [s.word for s in tree.statements] == ["twig", "define"]
    assert isinstance(tree.statements[1].body[1].body[0], Statement)
    (problem,) = problems(text + "        twig m 3\n")
    assert 'no key "m"' in problem.message


@pytest.mark.parametrize("length", ["٣mm", ".٣mm", "²mm"])
def test_a_digit_of_another_script_is_told(length):
    with pytest.raises(PatternError) as caught:
        parse(f"loaf round width 220mm height 95mm\nslash {length}\n")
    assert caught.value.problems[0].message == "this digit is not one of 0 to 9"
