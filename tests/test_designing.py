"""The one path through the house."""

import pytest

from scorecraft import design
from scorecraft.designing import make
from scorecraft.errors import UsageError
from scorecraft.shelf import shelf

SMALL = {
    "round": "round width 180mm height 80mm",
    "oval": "oval width 120mm length 210mm height 70mm",
    "long": "long width 80mm length 280mm height 55mm",
    "square": "square width 170mm height 75mm",
}


def test_a_design_knows_its_tree_layout_findings_and_groups():
    made = make("leaf-crown")
    assert made.tree.statements[0].word == "title"
    assert made.layout.title == "Leaf crown"
    assert made.cuts == made.layout.cuts
    assert [group.number for group in made.groups] == list(range(1, len(made.groups) + 1))
    assert sum(group.count for group in made.groups) == len(made.cuts)


@pytest.mark.parametrize("name", shelf())
def test_every_shipped_pattern_has_no_stop_on_its_own_loaf_and_a_smaller_one(name):
    own = make(name)
    assert not [f.message for f in own.findings if f.severity == "stop"]
    small = make(name, loaf=SMALL[own.layout.loaf.shape])
    assert not [f.message for f in small.findings if f.severity == "stop"]


@pytest.mark.parametrize("name", shelf())
def test_knobs_stay_good_over_their_whole_range(name):
    own = make(name)
    assert 2 <= len(own.layout.knobs) <= 5
    for knob in own.layout.knobs:
        for end in (knob.low, knob.high):
            turned = make(name, knobs={knob.name: f"{end:.12g}{knob.unit}"})
            stops = [f.message for f in turned.findings if f.severity == "stop"]
            assert not stops, (knob.name, end, stops)
            assert len(turned.cuts) > 0


def test_from_python_with_numbers_texts_and_a_notebook_picture():
    made = design("leaf-crown", loaf="round width 200mm height 85mm", knobs={"leaves": 9})
    assert sum(cut.part == "midrib" for cut in made.cuts) >= 9
    assert made._repr_svg_().startswith("<svg")
    text = design("leaf-crown", knobs={"leaf_length": "45%"})
    assert text.layout.knobs[1].value == pytest.approx(45)
    with pytest.raises(UsageError, match="no value for the knob"):
        design("leaf-crown", knobs={"leaves": "a b"})
