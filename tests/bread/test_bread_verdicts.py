"""What an experienced scorer knows of cuts, pieces and blades: common practice, no source.

Dough, oven and hands have tables of their own beside this one.
"""

import math
from functools import lru_cache

import pytest

from scorecraft.checks import run
from scorecraft.checks.changes import applied
from scorecraft.designing import make
from scorecraft.opening.lip import rising_side
from scorecraft.opening.predict import predict
from scorecraft.opening.room import room

BOULE = "loaf round width 220mm height 95mm\n"
BATARD = "loaf oval width 150mm length 240mm height 75mm\n"
BAGUETTE = "loaf long width 65mm length 530mm height 42mm\n"
WEIGHT = {"": 0, "note": 1, "warning": 2, "stop": 3}


@lru_cache(maxsize=8)
def design(text):
    return make(text)


def slash(depth, blade=""):
    return BATARD + f"slash 200mm depth {depth}mm {blade}\n"


def overlapping(count, depth, blade):
    """Cuts nearly along the axis, each overlapping the next by a third."""
    return (
        BAGUETTE
        + f"let step (0.88 * 530mm * 0.667 / (({count} - 1) * 0.667 + 1))\n"
        + f"row {count} spacing step angle 0deg:\n"
        + f"    slash length (step / 0.667) turn 10deg depth {depth}mm blade {blade}deg\n"
    )


# -- cuts and room


@pytest.mark.parametrize("blade", ["", "blade 35deg", "blade 45deg", "blade 90deg"])
def test_one_full_slash_of_6_mm_on_a_batard_opens_well(blade):
    """Common practice, no source."""
    made = design(slash(6, blade))
    assert made.room.verdict == "enough"
    assert 9 < made.opening.widest_mm[0] < 16


def test_deeper_is_wider_smoothly_and_past_15_mm_little_is_gained():
    """Common practice, no source."""
    depths = (4, 6, 8, 10, 12, 15, 19)
    wide = [float(design(slash(depth)).opening.widest_mm[0]) for depth in depths]
    per_mm = [
        (b - a) / (e - d) for a, b, d, e in zip(wide, wide[1:], depths, depths[1:], strict=False)
    ]
    assert wide == sorted(wide)
    assert max(per_mm) < 7
    assert wide[-1] < 1.03 * wide[-2]


@pytest.mark.parametrize(
    ("count", "depth", "blade"), [(3, 8, 35), (5, 8, 40), (5, 10, 30), (7, 8.5, 45), (4, 10, 40)]
)
def test_baguette_cuts_bloom_15_to_25_mm(count, depth, blade):
    """350 g, 53 cm: the widest of the cuts; common practice, no source."""
    made = design(overlapping(count, depth, blade))
    assert 15 <= made.opening.widest_mm.max() <= 25
    assert made.room.verdict == "enough"
    assert not [found.message for found in made.checked if found.severity != "note"]


@pytest.mark.parametrize(
    "text",
    [
        BATARD + "at x 50mm:\n    slash 170mm depth 8mm\n",
        BATARD + "at x -50mm:\n    slash 170mm bend -12mm depth 10mm\n",
        BOULE + "arc 70mm from -70deg to 70deg depth 8mm\n",
        BOULE + "arc 90mm from 20deg to 140deg depth 8mm\nat x -50mm:\n    wheat 100mm depth 2mm\n",
    ],
)
def test_one_slash_aside_or_a_crescent_is_a_classic(text):
    """A third of the width off the axis; common practice, no source."""
    assert not [found.message for found in design(text).findings if found.check == "balance"]


# -- pieces


def hash_of(apart, depth, blade=""):
    """Four slashes that cross."""
    one, other = (
        f"row 2 spacing {apart}mm angle {angle}deg:\n"
        f"    slash 130mm turn {turn}deg depth {depth}mm {blade}\n"
        for angle, turn in ((90, 0), (0, 90))
    )
    return BOULE + one + other


def diamonds(apart, depth, blade=""):
    """A lattice over the whole crown, cut both ways."""
    rows = "".join(
        f"    row {int(170 / apart)} spacing {apart}mm angle {turn}deg:\n"
        f"        slash 170mm turn {-turn}deg depth {depth}mm {blade}\n"
        for turn in (45, -45)
    )
    return BOULE + "inside disc radius 85mm:\n" + rows


def polka(apart, depth):
    """Small squares."""
    return BOULE + f"fill disc 75mm with crosshatch size {apart}mm depth {depth}mm\n"


TWELVE = [
    (hash_of(70, 8), "note"),
    (hash_of(50, 10), "note"),
    (diamonds(25, 4), "note"),
    (diamonds(25, 6), "note"),
    (diamonds(10, 3), "note"),
    (polka(10, 5), "note"),
    (polka(15, 3), "note"),
    (BOULE + "around 6 radius 30mm:\n    petal length 55mm width 20mm depth 4mm\n", ""),
    (diamonds(12, 9), "stop"),
    (BOULE + "polygon 10mm sides 3 depth 9mm\n", "stop"),
    (BOULE + "ring 10mm depth 8mm\n", "warning"),
    (diamonds(20, 6, "blade 40deg"), "stop"),
]
"""Scores, and the gravest that is found of them; common practice, no source."""


@pytest.mark.parametrize(("text", "gravest"), TWELVE)
def test_a_piece_is_a_hazard_only_where_it_is_small_and_cut_deep_or_undercut(text, gravest):
    found = run(design(text).layout)
    pieces = [each.severity for each in found if each.check == "pieces"]
    others = [each.severity for each in found if each.check != "pieces"]
    if WEIGHT[gravest] > WEIGHT["note"]:
        assert max(pieces, key=WEIGHT.__getitem__) == gravest
    else:
        assert max((*pieces, *others, ""), key=WEIGHT.__getitem__) in (gravest, "")


def test_a_square_of_four_slashes_is_cut_upright_unless_told():
    """Common practice, no source."""
    assert {round(math.degrees(cut.blade_rad)) for cut in design(hash_of(70, 8)).cuts} == {90}


# -- cures

SHORT = [
    BATARD + "slash 200mm depth 4mm kind expansion\n",
    BOULE + "slash 60mm depth 8mm\n",
    BOULE + "cross 60mm width 60mm depth 6mm\n",
    BATARD
    + "at x -20mm:\n    slash 80mm depth 6mm\nat x 35mm y -50mm:\n    wheat 90mm depth 2mm\n",
]
GENTLE = ("deeper", "longer", "add")


@pytest.mark.parametrize("text", SHORT)
def test_too_little_room_is_cured_first_by_the_cut_that_is_there(text):
    """Two choices, each of them made: it is enough, and nothing new is found; no source."""
    made = design(text)
    (found,) = [each for each in made.findings if each.check == "room"]
    assert len(found.cures) == 2
    kinds = [GENTLE.index(cure.changes[0].kind) for cure in found.cures]
    assert kinds == sorted(kinds) and kinds[0] < 2
    graver = {each.check for each in made.checked if each.severity != "note"}
    for cure in found.cures:
        after = applied(made.layout, cure.changes)
        opened = predict(after, made.skin, panel_mm=4.0)
        assert room(opened).verdict == "enough"
        assert {each.check for each in run(after) if each.severity != "note"} <= graver


# -- blades


@pytest.mark.parametrize(("blade", "ear"), [(35, True), (45, True), (90, False)])
def test_an_ear_rises_only_at_a_slant_and_on_the_upper_side(blade, ear):
    """A slash aside on a batard, away from the baker: the crown is at its left; no source."""
    made = design(BATARD + f"at x 40mm:\n    slash 170mm depth 8mm blade {blade}deg\n")
    assert bool(made.opening.lift_mm.max() > 3) is ear
    assert rising_side(made.cuts[0]) == (1 if ear else 0)


def test_a_slanted_cut_opens_wider_than_an_upright_one_as_deep():
    """Common practice, no source."""
    slanted, upright = (
        float(design(slash(8, f"blade {blade}deg")).opening.widest_mm[0]) for blade in (35, 90)
    )
    assert 1.1 * upright < slanted < 1.4 * upright


def test_a_wish_for_an_ear_asks_no_depth_that_the_depth_check_refuses():
    """A wide wish at a flat blade; common practice, no source."""
    made = design(BATARD + "slash 200mm opens 32mm blade 30deg\n")
    assert made.cuts[0].depth_mm <= 13
    assert not [found for found in made.checked if found.check in ("depth", "opens")]


def test_a_wish_out_of_reach_stops_where_the_loaf_takes_no_deeper_cut():
    """A quarter of its height; common practice, no source."""
    made = design(BAGUETTE + "slash 200mm opens 40mm blade 30deg\n")
    assert made.cuts[0].depth_mm == 10.5
    (found,) = [each for each in made.checked if each.check in ("depth", "opens")]
    assert "10.5 mm deep, as deep as this loaf takes, it opens only 37.0 mm" in found.message
