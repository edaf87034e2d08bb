"""Options of a print: what they take, what they refuse, what they name."""

import math

import pytest

from scorecraft.errors import UsageError
from scorecraft.prints import PRINTS
from scorecraft.prints.row import Option

LENGTH = Option("slot", "length", "")
FLAG = Option("tiled", "flag", "")
NAMES = Option("only", "names", "")
WORDS = Option("paper", "words", "")
HAND = Option("hand", "choice", "", choices=("right", "left"))


@pytest.mark.parametrize(
    ("option", "value", "found"),
    [
        (LENGTH, 3, 3.0),
        (LENGTH, 0.5, 0.5),
        (FLAG, False, False),
        (NAMES, " leaf, ,star", ("leaf", "star")),
        (NAMES, ["leaf", "star "], ("leaf", "star")),
        (WORDS, "A4", "A4"),
        (HAND, "left", "left"),
    ],
)
def test_an_option_takes_values_of_its_kind(option, value, found):
    assert option.checked(value) == found


@pytest.mark.parametrize(
    ("option", "value", "told"),
    [
        *((LENGTH, each, "a number, in mm") for each in (True, "3mm", math.nan, math.inf, [3])),
        *((FLAG, each, "true or false") for each in (1, "yes", 0.0)),
        *((NAMES, each, "names, like leaf,star") for each in (3, True, {"leaf": 1})),
        *((WORDS, each, "a text") for each in (4, ["A4"])),
        *((HAND, each, "one of: right, left") for each in ("both", ["left"], 1)),
    ],
)
def test_an_option_refuses_all_else_and_says_what_it_takes(option, value, told):
    with pytest.raises(UsageError) as refused:
        option.checked(value)
    assert f'"{option.key}" must be {told}' in str(refused.value)


def test_a_length_has_its_unit_in_its_key_only():
    assert (LENGTH.name, LENGTH.key, FLAG.key) == ("slot", "slot_mm", "tiled")


@pytest.mark.parametrize(
    ("name", "options", "file"),
    [
        ("guide", {"cutter": True}, "crown-guide.pdf"),
        ("bloom", {"before": True, "tension": False}, "crown-bloom.png"),
        ("bloom", {"tension": True}, "crown-tension.png"),
        ("bloom", {"proofed": True}, "crown-proofed.png"),
    ],
)
def test_a_file_is_named_after_pattern_and_print(name, options, file):
    assert PRINTS[name].file_name("crown", options) == file


def test_a_file_without_a_name_ends_in_the_form_asked_for():
    assert PRINTS["bloom"].file_name("crown", {"tension": True}, "svg") == "crown-tension.svg"
