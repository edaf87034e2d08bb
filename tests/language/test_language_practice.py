"""Rules and limits stand once: the table of words takes them from practice.py and limits.py."""

import runpy
from dataclasses import replace

import pytest

from scorecraft import baking, limits
from scorecraft.expand.header import bake_of, head_values
from scorecraft.language import header_words, texture_words, words
from scorecraft.language.parse import parse
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dough import Dough

TAKEN = [  # a rule or limit, another value for it, and what the table then says
    ("MOST_SPRING", 2.5, "bake", "spring", "most", 2.5),
    ("SPREAD", 0.4, "bake", "spread", "default", "40%"),
    ("LEAST_PROOF", 1.5, "dough", "proof", "least", 1.5),
    ("MOST_PROOF", 4.0, "dough", "proof", "most", 4.0),
    ("LEAST_PROFILE", 1.2, "loaf", "profile", "least", 1.2),
    ("MOST_PROFILE", 9.0, "loaf", "profile", "most", 9.0),
    ("LEAST_DOUGH_G", 50.0, "loaf", "dough", "least", 50.0),
    ("MOST_DOUGH_G", 5000.0, "loaf", "dough", "most", 5000.0),
    ("USUAL_C", 22.5, "dough", "temperature", "default", "22.5C"),
    ("USUAL_WATER", 0.75, "dough", "hydration", "default", "75%"),
    ("GRID_MARGIN_MM", 18.0, "whole", "margin", "default", "18mm"),
    ("CRUMB_MM", 5.0, "hatch", "shortest", "default", "5mm"),
]


@pytest.mark.parametrize(("rule", "value", "word", "key", "field", "said"), TAKEN)
def test_the_table_follows_practice(rule, value, word, key, field, said, monkeypatch):
    if hasattr(limits, rule):
        monkeypatch.setattr(limits, rule, value)
    else:
        monkeypatch.setattr(baking, rule, replace(getattr(baking, rule), value=value))
    table = runpy.run_path(words.__file__)["WORDS"]
    header = runpy.run_path(header_words.__file__)["HEADER"]
    textures = runpy.run_path(texture_words.__file__)["TEXTURES"]
    table |= {each.name: each for each in (*header, *textures)}
    assert getattr(table[word].key(key), field) == said


@pytest.mark.parametrize(
    ("line", "column"),
    [
        ("loaf round dough 900g proof 5.5", 29),
        ("loaf round width 200mm profile 12.5", 32),
        ("loaf round dough 25kg", 18),
        ("bake spring 3.5", 13),
    ],
)
def test_limits_point_at_the_value_itself(line, column):
    with pytest.raises(Exception, match="above") as caught:
        parse(f"{line}\n")
    assert caught.value.place.column == column


def test_no_bake_line_is_an_empty_bake():
    (steam,) = parse("bake steam yes\n").statements
    assert bake_of(None, Dough()) == bake_of(steam, Dough()) == Bake()
    assert head_values("bench", None) == head_values("bench", parse("bench\n").statements[0])
