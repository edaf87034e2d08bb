"""No pattern runs away: each is drawn, or refused with the limit it reached and its line."""

import numpy as np
import pytest

from scorecraft.errors import PatternError
from scorecraft.expand import expand
from scorecraft.expand.limits import lengths_mm
from scorecraft.language.parse import parse

ROUND = "loaf round width 220mm height 95mm\n"


def layout(text: str):
    return expand(parse(ROUND + text, "a.score"), ROUND + text)


def problems(text: str):
    with pytest.raises(PatternError) as caught:
        layout(text)
    return caught.value.problems


@pytest.mark.parametrize(
    ("text", "message", "line"),
    [
        ("repeat 200:\n    repeat 200:\n        slash 2mm\n", "more than 20,000 cuts", 4),
        ("repeat 2000:\n    repeat 2000:\n        when (k < 0):\n            slash\n",
         "more than 100,000 statements", 4),
        ("inside disc radius 1mm:\n    at x 90mm:\n        repeat 2000:\n"
         "            spiral 20mm turns 20\n", "more than 500,000 points", 5),
        ("repeat 2000:\n    slash 9000mm\n", "more than 1,000,000 mm of cuts", 3),
        ("define a n=1:\n    a\na\n", 'rule "a" uses itself more than 40 levels deep', 3),
        ("define a n=1:\n    b\ndefine b n=1:\n    a\na\n", "more than 40 levels deep", 5),
        ("define a n=1:\n    mirror:\n        mirror:\n            mirror:\n"
         "                mirror:\n                    a\na\n",
         "more than 150 levels of blocks", 7),
        ("define t n=40:\n    when (n > 0):\n        t n (n - 1)\n        t n (n - 1)\nt n 39\n",
         "more than 100,000 statements", 4),
        ("grid square spacing 0.001mm:\n    slash 3mm\n", "too fine to lay out", 2),
        ("grid square spacing 1mm columns 900000000:\n    slash 3mm\n", "too fine to lay out", 2),
        ("at x 9000mm:\n    slash 3000mm turn 90deg\n", "runs too far from the crown", 3),
        ("at x 9000mm:\n    at x 9000mm:\n        slash\n", "lands too far from the crown", 3),
        ("repeat 99 scale 100 turn 3deg:\n    slash 1mm\n", "drawn too large", 2),
        ("repeat 99 scale 0.01 shift (9mm, 0mm):\n    slash 1mm\n", "drawn too small", 2),
        ("slash 99999mm\n", "above 10000mm", 2),
        ("slash 99999%\n", "too large", 2),
        ("let far (500% * 500%)\nslash far\n", "too large", 3),
        ("arc 60mm from 0deg to 999999deg\n", "above 36000deg", 2),
        ("slash 20mm blade 0deg\n", "below 5deg", 2),
        ("bench temperature -200C\nslash\n", "below -5C", 2),
        ("marks lines 100000\n", "too many string lines", 2),
        ("fill box width 9000mm length 0.1mm with herringbone size 0.1mm gap 0.001mm\n",
         "too fine", 2),
        ("fill box width 9000mm length 9mm with circles size 1.7mm turn 45deg\n", "too fine", 2),
        ("fill whole with basket size 3mm strokes 100\n", "too fine", 2),
    ],
)  # fmt: skip
def test_each_limit_is_told_once_with_its_line(text, message, line):
    (problem,) = problems(text)
    assert message in problem.message
    assert problem.place.line == line
    assert problem.hint


def test_a_value_that_cannot_be_worked_out_is_told_once():
    """A name whose let or knob failed used to be told again at every use."""
    for text in (
        "let a (3mm / 0)\nlet b (2 * a)\nslash a\nslash b depth a\nmarks ring radius a\n",
        "knob a 3mm min 5mm max 9mm\nlet b (2 * a)\nslash b\nslash a\n",
        "around 3:\n    let a (3mm + 3deg)\n    let b (2 * a)\n    slash b\n",
    ):
        (problem,) = problems(text)
        assert problem.message != '"a" has no value here'


def test_strokes_no_blade_can_make_are_dropped_and_told():
    found = layout("repeat 40 scale 0.7:\n    slash 60mm\narc 60mm from 0deg to 0deg\n")
    lengths = [np.hypot(*(cut.line[1] - cut.line[0])) for cut in found.cuts]
    assert len(lengths) == 18 and min(lengths) >= 0.1
    assert [(text, place.line) for text, place in found.remarks] == [
        ("22 strokes were too short for a blade: left out", 3),
        ("1 stroke was too short for a blade: left out", 4),
    ]


def test_lengths_of_many_lines_are_measured_at_once():
    lines = [np.array([[0, 0], [3, 4]]), np.array([[9, 9], [9, 10], [9, 12]]), np.zeros((2, 2))]
    assert lengths_mm(lines).tolist() == [5, 3, 0]


def test_a_hundred_problems_are_enough():
    assert len(problems("".join(f"slash ({k}mm / 0)\n" for k in range(300)))) == 100


@pytest.mark.parametrize(
    "text",
    ["petal 9999mm width 0.0001mm\n", "slash 9999mm bend 0.00001mm\n", "spiral 9999mm turns 20\n",
     "ring 0.5mm\n", "leaf 9000mm width 9000mm veins 40\n", "wheat 1mm width 5000mm grains 60\n"],
)  # fmt: skip
def test_the_largest_and_thinnest_figures_are_drawn_with_finite_points(text):
    found = layout(text)
    assert found.cuts
    assert all(np.isfinite(cut.line).all() for cut in found.cuts)
