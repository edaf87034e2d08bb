"""How blades are held where the pattern does not say; common practice, no source."""

import math

import pytest

from scorecraft.designing import make

BOULE = "loaf round width 220mm height 95mm\n"
BATARD = "loaf oval width 150mm length 240mm height 75mm\n"
HASH = """
row 2 spacing 70mm:
    slash 130mm depth 8mm
row 2 spacing 70mm angle 0deg:
    slash 130mm turn 90deg depth 8mm
"""


def cuts_of(text):
    return make(text).layout.cuts


@pytest.mark.parametrize(
    ("text", "degrees"),
    [
        (BATARD + "slash 200mm", {40}),
        (BATARD + "at x 40mm:\n    slash 160mm", {40}),
        (BOULE + "arc 60mm from -60deg to 60deg depth 8mm", {40}),
        (BATARD + "row 4 spacing 45mm angle 0deg:\n    slash 70mm turn 15deg depth 8mm", {40}),
        (BOULE + "cross 120mm width 120mm", {90}),
        (BOULE + HASH, {90}),
        (BOULE + "star 80mm points 8 depth 8mm", {90}),
        (BOULE + "around 8 radius 20mm:\n    slash 50mm depth 8mm", {90}),
        (BOULE + "slash 120mm depth 3mm", {90}),
        (BOULE + "slash 120mm blade 70deg", {70}),
        (BOULE + "cross 120mm width 120mm blade 40deg", {40}),
    ],
)
def test_blades_that_are_not_told(text, degrees):
    assert {round(math.degrees(cut.blade_rad)) for cut in cuts_of(text)} == degrees


def test_of_a_deep_leaf_the_outlines_lean_outward_and_the_midrib_is_upright():
    cuts = cuts_of(BOULE + "around 4 radius 24mm:\n    leaf length 60mm width 24mm depth 7mm\n")
    for cut in cuts:
        degrees = round(math.degrees(cut.blade_rad))
        assert degrees == (40 if cut.part == "outline" else 90)
        if cut.part == "outline":
            rib = next(c for c in cuts if c.figure == cut.figure and c.part == "midrib")
            assert cut.rises == cut.side_of(rib.line.mean(axis=0)) != 0


@pytest.mark.parametrize(("aside", "rises"), [("40mm", 1), ("-40mm", -1), ("0mm", 0)])
def test_single_cuts_lean_outward_from_the_crown(aside, rises):
    """A slash away from the baker: to its left lies the crown where it is on the right."""
    (cut,) = cuts_of(BATARD + f"at x {aside}:\n    slash 160mm")
    assert cut.rises == rises


def test_along_a_baguette_all_cuts_lean_to_the_hand():
    """The ridge is the top of a long loaf, not its middle alone."""
    row = "row 5 spacing 85mm angle 0deg:\n    slash 110mm turn 10deg depth 8mm"
    cuts = cuts_of("loaf long width 65mm length 530mm height 42mm\n" + row)
    assert {cut.rises for cut in cuts} == {0}


def test_a_handle_that_would_meet_the_bench_leans_the_other_way():
    low = "arc {}mm from -40deg to 40deg depth 8mm blade 30deg"
    (high,), (low,) = (cuts_of(BOULE + low.format(radius)) for radius in (60, 118))
    assert high.rises == -low.rises != 0
