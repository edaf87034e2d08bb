"""Marks of statements: the same through edits elsewhere, another where the statement changes."""

from scorecraft.language.fingerprint import fingerprints
from scorecraft.language.parse import parse

TEXT = """\
loaf round width 200mm height 85mm
knob far 60mm min 50mm max 70mm
slash far depth 8mm
around 6 radius 30mm:
    leaf 40mm width 12mm
around 3 radius 30mm:
    leaf 40mm width 12mm
"""


def marks(text, word):
    lines = text.split("\n")
    told = fingerprints(parse(text, "t"))
    return [mark for place, mark in told.items() if lines[place.line - 1].strip().startswith(word)]


def test_lines_spaces_comments_and_knobs_elsewhere_do_not_count():
    edited = "# mine\n\n" + TEXT.replace("far 60mm", "far 55mm").replace(
        "40mm width", "40mm  width"
    )
    assert marks(edited, "leaf") == marks(TEXT, "leaf")
    assert marks(edited, "slash") == marks(TEXT, "slash")


def test_the_same_words_in_another_block_are_another_statement():
    one, other = marks(TEXT, "leaf")
    assert one != other


def test_a_changed_statement_or_block_has_another_mark():
    before = marks(TEXT, "leaf")
    assert marks(TEXT.replace("6 radius 30mm", "6 radius 35mm"), "leaf")[0] != before[0]
    assert marks(TEXT.replace("6 radius 30mm", "6 radius 35mm"), "leaf")[1] == before[1]
    assert marks(TEXT.replace("depth 8mm", "depth 9mm"), "slash") != marks(TEXT, "slash")


def test_writing_keys_out_says_the_same():
    assert marks(TEXT.replace("leaf 40mm", "leaf length 40mm"), "leaf") == marks(TEXT, "leaf")
