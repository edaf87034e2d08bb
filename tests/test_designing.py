"""The one path through the house."""

import math
import re
from dataclasses import replace

import pytest
from support.shelf_designs import shipped, some

from scorecraft import design
from scorecraft.checks.opens import OPENING_WISH_ROUGH
from scorecraft.designing import make
from scorecraft.errors import UsageError
from scorecraft.shelf import shelf

SMALL = {
    "round": "round width 180mm height 80mm",
    "oval": "oval width 120mm length 210mm height 70mm",
    "long": "long width 80mm length 280mm height 55mm",
    "square": "square width 170mm height 75mm",
    "baguette": "baguette dough 280g",
    "epi": "epi width 52mm length 400mm height 34mm",
    "fougasse": "fougasse width 190mm length 260mm height 20mm",
    "heart": "heart width 180mm height 64mm",
    "ring": "ring width 220mm hole 76mm dough 700g",
    "roll": "roll dough 60g",
    "star": "star width 205mm height 64mm",
    "tin": "tin pan one_pound dough 500g",
    "triangle": "triangle width 200mm height 66mm",
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
    own = shipped(name)
    assert not [f.message for f in own.findings if f.severity == "stop"]
    small = make(name, loaf=SMALL[own.layout.loaf.shape])
    assert not [f.message for f in small.checked if f.severity == "stop"]


@pytest.mark.parametrize("name", some(0, 4))
def test_knobs_stay_good_over_their_whole_range(name):
    """Stops come from what is drawn alone: `checked`, which leaves the opening model out."""
    knobs = shipped(name).layout.knobs
    assert 2 <= len(knobs) <= 5
    for knob in knobs:
        for end in (knob.low, knob.high):
            turned = make(name, knobs={knob.name: f"{end:.12g}{knob.unit}"})
            stops = [f.message for f in turned.checked if f.severity == "stop"]
            assert not stops, (knob.name, end, stops)
            assert len(turned.cuts) > 0


def test_from_python_with_numbers_texts_and_a_notebook_picture():
    made = design("leaf-crown", loaf="round width 200mm height 85mm", knobs={"leaves": 9})
    assert sum(cut.part == "midrib" for cut in made.cuts) >= 9
    assert made._repr_svg_().startswith("<svg")
    text = design("leaf-crown", knobs={"leaf_length": "45%"})
    assert text.layout.knobs[1].value == pytest.approx(45)
    with pytest.raises(UsageError, match="does not fit the knob"):
        design("leaf-crown", knobs={"leaves": "a b"})


@pytest.mark.parametrize("name", shelf())
def test_every_shipped_pattern_has_room_enough_and_no_warning(name):
    made = shipped(name)
    assert made.room.verdict == "enough"
    assert not [f.message for f in made.findings if f.severity != "note"]


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("marks spokes 8", "will burst"),
        ("grid hexagon spacing 24mm:\n    star 9mm inner 2mm depth 2mm", "will burst"),
        ("cross 75mm width 75mm depth 6mm", "tight"),
        ("cross 150mm width 150mm depth 10mm", "enough"),
    ],
)
def test_the_room_of_plain_designs(text, verdict):
    made = make(f"loaf round width 220mm height 95mm\n{text}\n")
    assert made.room.verdict == verdict
    told = [f for f in made.findings if f.check == "room"]
    assert len(told) == (verdict != "enough")


def test_the_cure_for_too_little_room_works():
    """Two cuts beside the chevrons, written into the text as the advice says."""
    head = "loaf oval width 170mm length 260mm height 85mm\n"
    text = head + "row 9 spacing 20mm angle 0deg:\n    chevron 18mm width 60mm depth 2.5mm\n"
    (found,) = [f for f in make(text).findings if f.check == "room"]
    assert found.severity == "warning" and "likely to burst at" in found.message
    angle, aside, length, depth = re.search(
        r"\((\d+)° on the turntable\), one on each side of the crown (\d+) mm from it, "
        r"(\d+) mm long and (\d+) mm deep", found.hint
    ).groups()  # fmt: skip
    assert angle == "0"
    cuts = "".join(
        f"at x {way}{aside}mm:\n    slash {length}mm depth {depth}mm\n" for way in ("", "-")
    )
    mended = make(text + cuts)
    assert mended.room.verdict == "enough"
    assert {f.severity for f in mended.findings} <= {"note"}
    assert not [f for f in mended.findings if f.check == "room"]


def unmet(made):
    return [finding for finding in made.checked if finding.check == "opens"]


def test_wished_openings_find_their_depths_together_and_say_what_cannot_be_had():
    head = "loaf round width 220mm height 95mm\n"
    made = make(head + "cross 130mm width 130mm opens 12mm\nslash 30mm turn 45deg depth 3mm\n")
    depths = {cut.depth_mm for cut in made.cuts if cut.opens_mm}
    assert len(depths) == 1 and depths.pop() % 0.5 == 0
    assert made.opening.widest_mm[:2] == pytest.approx(12, abs=1.2)
    assert not unmet(made)
    (lost,) = unmet(make(head + "slash 40mm opens 50mm\n"))
    assert lost.check == "opens" and "cannot open 50 mm" in lost.message
    most = float(re.search(r"ask for ([\d.]+) mm", lost.hint).group(1))
    assert 0.85 < most / lost.figures["most_mm"] <= 0.9, "a tenth is kept, for the hand"
    assert not unmet(make(head + f"slash 40mm opens {most}mm\n"))


def test_wishes_that_are_met_only_roughly_are_told(monkeypatch):
    """Wide and narrow wishes that cross work against one another, and the search ends."""
    monkeypatch.setattr("scorecraft.opening.depth.OPENING_WISH_ROUNDS", 1)
    text = (
        "loaf round width 220mm height 90mm\n"
        "slash 150mm opens 1mm\nslash 150mm turn 70deg opens 12mm\n"
    )
    made = make(text)
    assert len(unmet(made)) == 2
    for told, cut in zip(unmet(made), made.cuts, strict=True):
        assert (told.check, told.severity) == ("opens", "warning")
        said = re.match(
            r"the slash opens about ([\d.]+) mm, not the (\d+) mm asked for", told.message
        )
        assert float(said.group(2)) == cut.opens_mm
        assert abs(math.log(float(said.group(1)) / cut.opens_mm)) > OPENING_WISH_ROUGH
        assert told.figures["reached_mm"] == pytest.approx(float(said.group(1)), abs=0.05)


@pytest.mark.parametrize(
    ("drawn", "why"),
    [
        ("grid square spacing 5mm:\n    slash 2mm opens 1mm\n", "too many cuts"),
    ],
)
def test_wishes_that_cannot_be_sought_are_told_and_leave_the_usual_depth(drawn, why):
    made = make("loaf round width 220mm height 90mm\n" + drawn)
    (told,) = unmet(made)
    assert told.severity == "warning" and why in told.message
    assert {cut.depth_mm for cut in made.cuts} <= {3.0, 8.0}


def test_a_baker_file_that_settles_nothing_changes_no_verdict_and_says_so(tmp_path):
    """As two openings once made it: a skin of 35 mm, from cuts that opened wider than predicted."""
    path = tmp_path / "baker.toml"
    path.write_text("skin_mm = 35.0\nskin_bounds_mm = [12.0, 40.0]\ngrowth = 1.0\nopenings = 2\n")
    plain, doubted = make("swirl"), make("swirl", baker=path)
    assert replace(doubted.skin, unsettled_by="") == plain.skin
    (told,) = (finding for finding in doubted.findings if finding not in plain.findings)
    assert told.severity == "note"
    assert "to be sure of the skin: the default of 6 mm" in told.message
    assert "measure 4 openings or more" in told.hint


def test_a_baker_file_changes_the_openings(tmp_path):
    path = tmp_path / "baker.toml"
    path.write_text(
        "skin_mm = 20.0\nskin_bounds_mm = [18.0, 22.0]\ngrowth = 1.0\nsure = 0.9\nopenings = 5\n"
        'pattern = "x"\ndate = "2026-01-01"\n'
    )
    plain, tuned = make("swirl"), make("swirl", baker=path)
    assert tuned.skin.thickness_mm == 20
    assert tuned.opening.widest_mm.max() < plain.opening.widest_mm.max()


@pytest.mark.parametrize("name", shelf())
def test_numbers_follow_the_order_of_cutting(name):
    """The first cut of number 2 is made after the first of number 1, and so on."""
    made = shipped(name)
    at = {cut: place for place, cut in enumerate(made.work.order)}
    first = [min(at[cut] for cut in group.cuts) for group in made.groups]
    assert [group.number for group in made.groups] == list(range(1, len(first) + 1))
    assert first == sorted(first)


@pytest.mark.parametrize("name", some(1))
def test_every_cut_keeps_its_key_when_knobs_are_turned(name):
    """And its statement keeps its mark: both are told by the text, not by what it comes to."""
    usual = make(name)
    keys = [group.key for group in usual.groups]
    assert len(set(keys)) == len(keys)
    for end in ("low", "high"):
        knobs = {knob.name: f"{getattr(knob, end):g}{knob.unit}" for knob in usual.layout.knobs}
        turned = make(name, knobs=knobs)
        assert dict(turned.fingerprints) == dict(usual.fingerprints)


def test_marks_outlive_a_line_above():
    text = "loaf round width 200mm height 85mm\nslash 60mm depth 3mm\nat x 30mm:\n    slash 90mm\n"
    before, after = make(text), make(text.replace("slash 60mm depth 3mm\n", ""))
    assert set(before.fingerprints) == {"slash 1 of 2", "slash 2 of 2"}
    assert after.fingerprints["slash"] == before.fingerprints["slash 2 of 2"]
