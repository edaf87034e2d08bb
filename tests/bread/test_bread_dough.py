"""What an experienced scorer knows of dough, baskets and oven.

Every row of every table here: common practice, no source.
"""

from dataclasses import replace
from functools import cache

import pytest

from scorecraft import design
from scorecraft.baking import COMMON_BASKETS
from scorecraft.drawing.bloom.lens import baked_loaf
from scorecraft.drawing.card.text import card_text
from scorecraft.errors import PatternError, UsageError
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.baskets import takes
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.dough import Dough
from scorecraft.loaf.oven import kind_of, ways
from scorecraft.loaf.sizing import size_from_dough

SLASH = "loaf round width 220mm height 95mm\nslash 120mm depth {depth}mm blade 90deg\n"


@cache
def baked(depth=10, **options):
    return design(SLASH.format(depth=depth), **options)


def widest(made):
    return float(made.opening.widest_mm.max())


PROOFS = [  # culture, proof, stage, oven spring from and to
    ("sourdough", 1.3, "under", 1.5, 1.8),
    ("sourdough", 1.4, "under", 1.5, 1.8),
    ("sourdough", 1.5, "ready", 1.3, 1.45),
    ("sourdough", 1.75, "ready", 1.3, 1.45),
    ("sourdough", 2.0, "ready", 1.3, 1.45),
    ("sourdough", 2.4, "over", 1.1, 1.2),
    ("sourdough", 3.0, "over", 1.1, 1.2),
    ("yeasted", 1.5, "under", 1.5, 1.8),
    ("yeasted", 2.0, "ready", 1.3, 1.45),
    ("yeasted", 2.2, "ready", 1.3, 1.45),
    ("yeasted", 2.7, "over", 1.1, 1.2),
    *((culture, "under", "under", 1.5, 1.8) for culture in ("sourdough", "yeasted")),
    *((culture, "ready", "ready", 1.3, 1.45) for culture in ("sourdough", "yeasted")),
    *((culture, "over", "over", 1.1, 1.2) for culture in ("sourdough", "yeasted")),
]


@pytest.mark.parametrize(("culture", "proof", "stage", "least", "most"), PROOFS)
def test_proof_and_culture_say_how_much_a_loaf_springs(culture, proof, stage, least, most):
    dough = Dough(proof, culture)
    assert dough.stage == stage
    assert least - 1e-3 <= dough.spring() <= most
    assert dough.spring(steam=False) < dough.spring()


def test_ready_is_not_one_number():
    assert 1.5 <= Dough("ready").times <= 2.0 < Dough("ready", "yeasted").times < 2.3
    springs = [Dough(1 + k / 50).spring() for k in range(150)]
    assert springs == sorted(springs, reverse=True)


@pytest.mark.parametrize("proof", ["ripe", "right", 0.5, 9.0, float("nan")])
def test_a_proof_that_is_none_is_refused(proof):
    with pytest.raises(UsageError, match="proof"):
        Dough(proof)


def test_proof_changes_openings_room_and_the_loaf():
    under, ready, over = (baked(dough=stage) for stage in ("under", "ready", "over"))
    assert widest(under) > 1.3 * widest(ready)
    assert widest(over) < 0.6 * widest(ready)
    assert under.room.enough > ready.room.enough > over.room.enough
    heights = [baked_loaf(each.layout).height_mm for each in (under, ready, over)]
    assert heights == sorted(heights, reverse=True) and heights[0] > 1.15 * heights[2]
    assert widest(baked()) == widest(ready) == widest(baked(dough="right"))


ADVICE = [  # dough, bake, depth of the slash, severity, in the message, in the advice
    ("under", None, 7, "note", "bursts where it is not cut", "cut 10 mm deep, or proof it longer"),
    ("over", None, 12, "warning", "may sag", "cut no deeper than 6 mm, with fewer cuts"),
    ("ready", "steam no", 10, "note", "sets early: the cuts open less", "bake with steam"),
    ("ready", None, 7, None, "", ""),
    ("under", None, 11, None, "", ""),
    ("over", None, 7, None, "", ""),
]


@pytest.mark.parametrize(("dough", "bake", "depth", "severity", "message", "hint"), ADVICE)
def test_advice_follows_the_dough(dough, bake, depth, severity, message, hint):
    found = [each for each in baked(depth, dough=dough, bake=bake).checked if each.check == "proof"]
    assert [each.severity for each in found] == ([severity] if severity else [])
    for each in found:
        assert message in each.message and hint in each.hint


@pytest.mark.parametrize("bake", ["", "spring 1.5 "], ids=["by the dough", "given"])
def test_without_steam_cuts_open_less_and_more_is_left_to_burst(bake):
    moist, dry = baked(bake=f"{bake}steam yes"), baked(bake=f"{bake}steam no")
    assert widest(dry) < 0.95 * widest(moist)
    assert dry.room.taken < 0.8 * moist.room.taken
    left = [each.layout.bake.strength * (1 - each.room.taken) for each in (moist, dry)]
    assert left[1] > left[0]


def test_a_loaf_that_bursts_for_want_of_steam_is_told_so():
    (found,) = [each for each in baked(9, bake="steam no").findings if each.check == "room"]
    assert "without steam the rest goes into a burst" in found.message
    assert found.hint.startswith("bake with steam, or in a covered pot")
    assert not [each for each in baked(9).findings if each.check == "room"]


def test_underproofed_dough_may_be_proofed_longer_instead():
    (found,) = [each for each in baked(9, dough="under").findings if each.check == "room"]
    assert found.hint.startswith("proof it longer") and "asks for more" in found.message


CHANGES = [  # what is said of the dough; does it hold longer, does it stand higher (1, 0, -1)
    ("temperature 5C", 1, 1),
    ("temperature 30C", -1, -1),
    ("hydration 60%", 1, 1),
    ("hydration 85%", -1, -1),
    ("kitchen 30C", -1, -1),
    ("kitchen 18C", 1, 1),
    ("under", 0, 1),
    ("over", 0, -1),
]
SIZED = "loaf round dough 900g\nslash 120mm depth 8mm\n"


def sign(value):
    return (value > 1e-9) - (value < -1e-9)


@pytest.mark.parametrize(("words", "longer", "higher"), CHANGES)
def test_cold_wet_and_warm_change_holding_time_and_height(words, longer, higher):
    usual, other = design(SIZED), design(SIZED, dough=words)
    assert sign(other.work.allowed_s - usual.work.allowed_s) == longer
    stands = [each.layout.loaf.height_mm / each.layout.loaf.width_mm for each in (other, usual)]
    assert sign(stands[0] - stands[1]) == higher
    assert design(f"dough {words}\n{SIZED}").layout.loaf == other.layout.loaf


def test_a_chilled_loaf_has_shrunk_a_little():
    usual, cold = design(SIZED).layout, design(SIZED, dough="temperature 5C").layout
    assert 0.93 < cold.loaf.volume_mm3 / usual.loaf.volume_mm3 < 0.97
    assert any("at 5 °C it has shrunk by 5%" in step for step in cold.size.steps)


def test_a_measured_loaf_keeps_its_size_whatever_the_dough():
    assert baked(dough="over hydration 85%").layout.loaf == baked().layout.loaf


def test_an_option_changes_only_what_it_says():
    text = f"dough over culture yeasted hydration 80%\n{SIZED}"
    assert design(text, dough="temperature 5C").layout.dough == Dough("over", "yeasted", 0.8, 5.0)
    assert design(text, dough="1.8").layout.dough.times == pytest.approx(1.8)


def test_older_files_say_the_same():
    old = "loaf round dough 900g proof right\nbench temperature 5C hydration 75%\n"
    assert design(old).layout.dough == Dough(hydration=0.75, temperature_c=5.0)
    assert design(old, dough="over").layout.dough.stage == "over"
    with pytest.raises(PatternError, match="the proof of the dough is given twice"):
        design(f"{old}dough over\n")


OVEN = [  # form (shape, width, length, height), dough in g, where, least and most minutes in all
    (("round", 90, 90, 45), 80, "stone", 15, 18),
    (("long", 65, 520, 45), 350, "stone", 22, 26),
    (("round", 155, 155, 67), 500, "pot", 35, 35),
    (("round", 190, 190, 80), 900, "pot", 42, 45),
    (("oval", 150, 240, 75), 900, "pot", 42, 45),
    (("round", 220, 220, 95), 1500, "pot", 60, 60),
    (("tin", 110, 260, 90), 900, "tin", 35, 40),
    (("ring", 260, 260, 45), 600, "stone", 30, 34),
    (("fougasse", 220, 300, 22), 400, "stone", 16, 20),
    (("epi", 70, 500, 45), 350, "stone", 22, 26),
]


@pytest.mark.parametrize(("form", "grams", "place", "least", "most"), OVEN)
def test_oven_times_go_by_form_and_weight(form, grams, place, least, most):
    way = ways(make_loaf(*form), Bake(), grams)[0]
    assert way.place == place
    assert [way.first_min + each for each in way.then_min] == [least, most]


NO_POT = [  # form, dough in g, inside of the pot
    (("long", 65, 520, 45), 350, 600),
    (("round", 90, 90, 45), 80, 280),
    (("long", 110, 330, 70), 900, None),
    (("round", 220, 220, 95), 1200, 240),
]


@pytest.mark.parametrize(("form", "grams", "pot"), NO_POT)
def test_no_pot_where_a_loaf_does_not_belong_or_fit(form, grams, pot):
    assert [each.place for each in ways(make_loaf(*form), Bake(), grams, pot)] == ["stone"]


def test_between_and_beyond_the_rows_times_grow_with_the_weight():
    loaf = make_loaf("round", 200, 200, 85)
    times = [ways(loaf, Bake(), grams)[0] for grams in range(300, 3000, 100)]
    totals = [each.first_min + each.then_min[1] for each in times]
    assert totals == sorted(totals)
    assert ways(make_loaf("long", 65, 520, 45), Bake(), 350)[0].stone_mm > 520
    assert [each.steam for each in ways(loaf, Bake(steam=False), 900)] == [True, False]
    assert kind_of(make_loaf("long", 95, 330, 60), 700) == "loaf"


def test_the_card_defers_to_the_recipe_and_tells_both_kinds_of_dough():
    made = design("loaf round width 190mm height 80mm dough 900g\nslash 120mm depth 8mm\n")
    text = card_text(made.layout, made.work)
    assert "Your recipe comes first. These are starting points for about 900 g of dough." in text
    assert "93–99 °C / 199–210 °F" in text and "88–93 °C / 190–199 °F" in text
    assert "Lid on: 20 min" in text and "about 22–25 min" in text
    guessed = replace(made.layout, size=replace(made.layout.size, dough_g=None))
    assert "judging by the size of the loaf" in card_text(guessed, made.work)


BASKETS = [  # shape, length and width of the basket in mm, dough in g from and to
    ("round", 220, 220, 700, 900),
    ("oval", 250, 150, 700, 900),
    ("oval", 300, 150, 1000, 1200),
    *(
        ("round" if each.length_mm == each.width_mm else "oval", each.length_mm, each.width_mm,
         each.least_g, each.value)
        for each in COMMON_BASKETS
    ),
]  # fmt: skip


@pytest.mark.parametrize(("shape", "long", "wide", "least", "most"), BASKETS)
def test_a_basket_takes_its_dough_and_the_loaf_is_no_larger(shape, long, wide, least, most):
    assert takes((wide, long)) == pytest.approx((least, most))
    for grams in (least, most):
        for dough in (Dough(), Dough(culture="yeasted"), Dough(temperature_c=5.0)):
            found = size_from_dough(shape, grams, dough=dough, basket_mm=(wide, long))
            assert found.loaf.width_mm <= 1.05 * wide and found.loaf.length_mm <= 1.05 * long
            assert not found.doubts
            told = "\n".join(found.steps)
            assert (found.loaf.length_mm > long + 0.1) == ("spreads by" in told)


def test_a_loaf_larger_than_its_basket_says_by_how_much_and_why():
    slack = Dough("over", hydration=0.85)
    found = size_from_dough("oval", 900, dough=slack, basket_mm=(150, 250))
    ((message, hint),) = found.doubts
    percent = round(100 * (found.loaf.width_mm / 150 - 1))
    assert f"{percent}% larger" in message and "overproofed and wet, 85%" in message
    assert "takes about 700 to 900 g" in hint
    much = size_from_dough("round", 1500, basket_mm=(220, 220))
    assert any("too much dough" in message for message, _ in much.doubts)
