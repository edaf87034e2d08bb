"""The shipped patterns: written back they stay the same, and every turn of a knob is good."""

import itertools

import numpy as np
import pytest
from support.shelf_designs import some

from scorecraft.cuts import Layout
from scorecraft.expand import expand
from scorecraft.language.parse import parse
from scorecraft.shelf import shelf
from scorecraft.units import quantity

LOAVES = (
    "round width 180mm height 75mm", "round width 280mm height 115mm",
    "oval width 130mm length 210mm height 70mm", "oval width 180mm length 290mm height 95mm",
    "long width 90mm length 280mm height 60mm", "square width 200mm height 85mm",
)  # fmt: skip


def text_of(name: str) -> str:
    return shelf()[name].read_text("utf-8")


def drawn(text: str, **options) -> Layout:
    return expand(parse(text), text, **options)


@pytest.mark.parametrize("name", shelf())
def test_a_shipped_pattern_written_back_is_the_same_pattern(name):
    tree = parse(text_of(name))
    assert parse(str(tree)) == tree
    once, again = drawn(text_of(name)), drawn(str(tree))
    assert len(once.cuts) == len(again.cuts) > 0
    for one, other in zip(once.cuts, again.cuts, strict=True):
        assert np.array_equal(one.line, other.line)
        assert (one.name, one.kind, one.depth_mm, one.opens_mm, one.blade_rad, one.figure) == (
            other.name, other.kind, other.depth_mm, other.opens_mm, other.blade_rad, other.figure,
        )  # fmt: skip
    assert (once.title, once.notes) == (again.title, again.notes)
    assert (once.bench, once.size) == (again.bench, again.size)


def ends(layout: Layout):
    """Give every pair of knobs at each of their ends."""
    for pair in itertools.combinations(layout.knobs, 2):
        for values in itertools.product(*((knob.low, knob.high) for knob in pair)):
            knobs = zip(pair, values, strict=True)
            yield {knob.name: quantity(value, knob.unit) for knob, value in knobs}


@pytest.mark.parametrize("name", some(1, 2))
def test_every_pair_of_knob_ends_draws_all_its_strokes(name):
    usual = drawn(text_of(name))
    assert 2 <= len(usual.knobs) <= 5
    for knobs in ends(usual):
        turned = drawn(text_of(name), knobs=knobs)
        assert turned.cuts, knobs
        assert not [told for told, _ in turned.remarks if "too short for a blade" in told], knobs


@pytest.mark.parametrize(
    ("name", "loaf"), [(name, loaf) for k, loaf in enumerate(LOAVES) for name in some(k)]
)
def test_shipped_patterns_are_drawn_on_any_loaf(name, loaf):
    """Every pattern on two of the loaves."""
    found = drawn(text_of(name), loaf=loaf)
    assert found.cuts and all(np.isfinite(cut.line).all() for cut in found.cuts)
