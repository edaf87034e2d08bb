import pytest

from scorecraft.loaf import telling as say
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.dough import Dough


def test_sizes_are_across_or_long_and_wide_and_with_their_hole():
    assert say.size_words(make_loaf("round", 220, None, 95)) == "220 mm across, 95 mm high"
    assert say.size_words(make_loaf("oval", 220, 220.4, 95)) == "220 mm across, 95 mm high"
    assert (
        say.size_words(make_loaf("oval", 220, 220.6, 95)) == "221 mm long, 220 mm wide, 95 mm high"
    )
    assert (
        say.size_words(make_loaf("oval", 221, 220.2, 95)) == "220 mm long, 221 mm wide, 95 mm high"
    )
    ring = make_loaf("ring", 280, None, 50, hole_mm=90)
    assert say.size_words(ring) == "280 mm across, hole 90 mm, 50 mm high"


def test_a_and_an():
    assert [say.with_article(each) for each in ("épi", "oval loaf", "ring loaf")] == [
        "an épi", "an oval loaf", "a ring loaf"
    ]  # fmt: skip


def test_shrinking_is_told_from_half_a_per_cent_on():
    usual = "ready, 1.9 times that is 1425 cm³ at scoring"
    assert say.proofed_volume(Dough(), 1425.0) == usual
    assert say.proofed_volume(Dough(temperature_c=22.1), 1425.0) == usual
    assert say.proofed_volume(Dough(temperature_c=4.0), 1425.0) == (
        f"{usual}: at 4 °C it has shrunk by 5%"
    )


@pytest.mark.parametrize(
    ("share", "end"), [(1.009, ""), (1.25, ", 80% of the dough's volume: the size given is used")]
)
def test_a_loaf_that_holds_another_volume_than_its_dough_says_so(share, end):
    loaf = make_loaf("oval", 160, 240, 80)
    said = say.loaf_holds(loaf, share * loaf.volume_mm3)
    cm3 = loaf.volume_mm3 / 1000
    assert said == f"an oval loaf 240 mm long, 160 mm wide and 80 mm high holds {cm3:.0f} cm³{end}"


def test_baskets_are_called_by_their_size_long_before_wide():
    assert say.basket_words((150, 250)) == "a 250 mm by 150 mm basket"
    assert say.basket_words((220, 220)) == "a 220 mm basket"
    assert say.basket_shapes("it", 150, 250) == "it makes the loaf 250 mm long and 150 mm wide"
    assert say.basket_fix(696.0, 1204.9) == (
        "use a larger basket or less dough: this one takes about 700 to 1200 g"
    )


@pytest.mark.parametrize(
    ("dough", "too_much", "why"),
    [
        (Dough(), False, "the basket is full"),
        (Dough(hydration=0.77, temperature_c=26.9, kitchen_c=26.9), False, "the basket is full"),
        (Dough(hydration=0.78), False, "wet, 78%"),
        (Dough(temperature_c=27.0), False, "warm"),
        (Dough(kitchen_c=27.0), True, "too much dough and warm"),
        (Dough("over"), True, "too much dough and overproofed"),
    ],
)
def test_why_a_loaf_spreads(dough, too_much, why):
    assert say.why_it_spreads(dough, too_much) == why
