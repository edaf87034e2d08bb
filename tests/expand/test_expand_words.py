"""The table of words is whole: examples read, defaults fit, keys do not collide."""

import importlib
import inspect

import pytest

from scorecraft.expand.read import MADE, default_value, own, read
from scorecraft.language.parse import parse
from scorecraft.language.words import ATTRIBUTES, WORDS, keys_of, starts_statement

DRAWN = [w for w in WORDS.values() if w.group in ("motif", "texture") and w.name != "trace"]


@pytest.mark.parametrize("word", WORDS.values(), ids=lambda w: w.name)
def test_every_example_is_a_pattern_that_uses_its_word(word):
    tree = parse(word.example)
    assert word.name in str(tree)
    assert word.help and word.help[0].islower()


@pytest.mark.parametrize("word", WORDS.values(), ids=lambda w: w.name)
def test_every_default_is_a_value_of_its_kind(word):
    for key in keys_of(word).values():
        if key.default:
            assert str(default_value(word.name, key.name))
    assert set(word.mains) <= {key.name for key in word.keys}


@pytest.mark.parametrize("word", DRAWN, ids=lambda w: w.name)
def test_every_motif_and_texture_has_a_function_that_takes_its_keys(word):
    room = "motifs" if word.group == "motif" else "textures"
    function = getattr(importlib.import_module(f"scorecraft.{room}.{word.name}"), word.name)
    takes = set(inspect.signature(function).parameters) - {"bounds", "loaf"}
    gives = {key.parameter for key in word.keys if not key.name.endswith("_depth")} - {
        "turn",
        *(["from"] if word.origin else []),
    }
    gives -= MADE.get(word.name, set())
    if word.group == "texture":
        gives -= {"shift", "shortest"}
    assert takes == gives


def test_keys_of_a_line_never_collide_with_those_of_a_figure_on_it():
    """`fill ... with hatch size 5mm turn 30deg` must not leave in doubt whose `turn` it is."""
    inner = {"region": "region", "texture": "texture", "path": "motif"}
    for word in WORDS.values():
        for key in word.keys:
            if key.kind not in inner:
                continue
            outer = set(keys_of(word)) - {key.name}
            for figure in WORDS.values():
                if figure.group == inner[key.kind]:
                    own_keys = {k.name for k in figure.keys} - {a.name for a in ATTRIBUTES}
                    assert not outer & own_keys, (word.name, figure.name, outer & own_keys)


def test_defaults_are_read_in_inside_units():
    leaf = WORDS["leaf"]
    values = read(leaf, (), None, parse("leaf").statements[0].place)
    assert values["length"] == 60.0 and values["veins"] == 4
    assert values["vein_angle"] == pytest.approx(0.6632251)
    assert "vein_depth" not in own(leaf, values)


def test_only_statements_start_a_line():
    assert starts_statement("leaf") and not starts_statement("disc") and not starts_statement("x")
