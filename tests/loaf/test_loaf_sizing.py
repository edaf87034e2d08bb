import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from scorecraft.baking import DOUGH_DENSITY
from scorecraft.errors import UsageError
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.dough import STAGES, Dough
from scorecraft.loaf.sizing import USUAL, Known, grams_of, height_from_dough, size_from_dough
from scorecraft.practice import HEIGHT_PER_WIDTH

STIFF = Dough(1.0)
SHAPES = ("round", "oval", "long", "square")


def volume_of(shape, found):
    return make_loaf(
        shape, found.loaf.width_mm, found.loaf.length_mm, found.loaf.height_mm
    ).volume_mm3


@settings(max_examples=40)
@given(st.sampled_from(SHAPES), st.floats(100, 3000), st.sampled_from(STAGES))
def test_the_dome_holds_the_dough(shape, grams, proof):
    found = size_from_dough(shape, grams, dough=Dough(proof))
    wanted = 1000 * grams / DOUGH_DENSITY.value * Dough(proof).times
    assert volume_of(shape, found) == pytest.approx(wanted, rel=1e-6)
    assert found.loaf.volume_mm3 == pytest.approx(wanted, rel=1e-6)


def test_steps_tell_the_arithmetic():
    found = size_from_dough("round", 900)
    assert found.steps == (
        "900 g of dough at 1.2 g/cm³ takes up 750 cm³ when mixed",
        "ready, 1.9 times that is 1425 cm³ at scoring",
        f"a round loaf {found.loaf.width_mm:.0f} mm wide and {found.loaf.height_mm:.0f} mm high "
        "holds 1425 cm³",
    )
    assert found.loaf.height_mm / found.loaf.width_mm == pytest.approx(HEIGHT_PER_WIDTH.value)
    assert 175 < found.loaf.width_mm < 195


def test_eight_times_the_dough_is_twice_the_loaf():
    small, large = size_from_dough("oval", 200), size_from_dough("oval", 1600)
    assert large.loaf.width_mm == pytest.approx(2 * small.loaf.width_mm)


@pytest.mark.parametrize(
    "known",
    [
        Known(width_mm=180),
        Known(height_mm=70),
        Known(length_mm=300),
        Known(width_mm=150, length_mm=280),
        Known(width_mm=150, height_mm=80),
        Known(length_mm=280, height_mm=80),
    ],
)
def test_given_sizes_stand_and_the_others_hold_the_dough(known):
    found = size_from_dough("long", 900, known=known)
    for name in ("width_mm", "length_mm", "height_mm"):
        if getattr(known, name) is not None:
            assert getattr(found.loaf, name) == getattr(known, name)
    assert volume_of("long", found) == pytest.approx(1425e3, rel=1e-6)


@pytest.mark.parametrize("shape", ["round", "square"])
def test_round_and_square_are_as_long_as_wide(shape):
    by_width = size_from_dough(shape, 900, known=Known(width_mm=210))
    by_length = size_from_dough(shape, 900, known=Known(length_mm=210))
    assert by_width == by_length
    assert by_width.loaf.length_mm == 210
    both = size_from_dough(shape, 900, known=Known(height_mm=80))
    assert both.loaf.width_mm == both.loaf.length_mm
    assert volume_of(shape, both) == pytest.approx(1425e3, rel=1e-6)


def test_a_whole_size_given_wins_over_the_dough():
    found = size_from_dough("round", 900, known=Known(width_mm=220, height_mm=95))
    assert (found.loaf.width_mm, found.loaf.length_mm, found.loaf.height_mm) == (220, 220, 95)
    assert found.steps[-1].endswith("169% of the dough's volume: the size given is used")


def test_basket_sets_the_width():
    found = size_from_dough("round", 1100, basket_mm=(220, 220))
    assert found.loaf.width_mm == pytest.approx(220)
    assert "a 220 mm basket makes the loaf 220 mm wide" in found.steps
    assert volume_of("round", found) == pytest.approx(1e6 * 1.1 / 1.2 * 1.9, rel=1e-6)


def test_basket_too_large_or_too_small_does_not():
    little = size_from_dough("round", 400, basket_mm=(250, 250))
    assert little.loaf.width_mm < 250
    assert "does not fill" in little.steps[2]
    much = size_from_dough("round", 1500, basket_mm=(180, 180))
    assert much.loaf.width_mm > 180
    assert "too much" in much.steps[2]
    for found, grams in ((little, 400), (much, 1500)):
        assert volume_of("round", found) == pytest.approx(1000 * grams / 1.2 * 1.9, rel=1e-6)


def test_more_proof_is_wider_and_stands_lower():
    under, ready, over = (size_from_dough("round", 900, dough=Dough(each)) for each in STAGES)
    assert under.loaf.width_mm < ready.loaf.width_mm < over.loaf.width_mm
    stands = [s.loaf.height_mm / s.loaf.width_mm for s in (under, ready, over)]
    assert stands == sorted(stands, reverse=True)


@pytest.mark.parametrize("grams", [0, -5, 19, 1e9, math.nan])
def test_absurd_dough_is_refused(grams):
    with pytest.raises(UsageError, match="g of dough"):
        size_from_dough("round", grams)


def test_absurd_shapes_and_sizes_are_refused():
    with pytest.raises(UsageError, match="cushion"):
        size_from_dough("cushion", 900)
    with pytest.raises(UsageError, match="height"):
        size_from_dough("round", 100, known=Known(width_mm=900))


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(["round", "oval", "long"]),
    st.floats(150, 400),
    st.floats(1, 3),
    st.floats(200, 4000),
    st.sampled_from(STAGES),
)
def test_a_loaf_is_no_larger_than_its_basket_till_it_spreads(shape, wide, longer, grams, proof):
    """Common practice, no source: at most as long and wide, and a few per cent after turning."""
    basket = (wide, wide if shape == "round" else wide * longer)
    found = size_from_dough(shape, grams, dough=Dough(proof), basket_mm=basket)
    grown = max(found.loaf.width_mm / basket[0], found.loaf.length_mm / basket[1])
    assert grown <= 1.05 + 1e-9 or any("larger than" in message for message, _ in found.doubts)
    assert found.loaf.width_mm / found.loaf.length_mm == pytest.approx(basket[0] / basket[1])
    assert volume_of(shape, found) == pytest.approx(found.loaf.volume_mm3, rel=1e-6)


def test_an_oval_basket_sets_both_sides():
    found = size_from_dough("oval", 750, basket_mm=(150, 250))
    assert (found.loaf.width_mm, found.loaf.length_mm) == (pytest.approx(150), pytest.approx(250))
    words = "a 250 mm by 150 mm basket makes the loaf 250 mm long and 150 mm wide"
    assert words in found.steps and not found.doubts
    assert found.steps[-1].startswith("an oval loaf 250 mm long, 150 mm wide")


def test_a_given_size_leaves_the_basket_out_and_says_so():
    found = size_from_dough("round", 900, basket_mm=(220, 220), known=Known(width_mm=230))
    assert found.loaf.width_mm == 230
    assert "the basket is ignored: the size given is used" in found.steps


def test_heights_that_no_dough_stands_are_told():
    high = size_from_dough("round", 3000, known=Known(width_mm=150))
    ((message, hint),) = high.doubts
    assert f"{high.loaf.height_mm:.0f} mm high on 150 mm" in message and "82 mm" in hint
    assert not size_from_dough("round", 900).doubts
    rim = make_loaf("oval", 160, 200, 50)
    ((message, _),) = height_from_dough(rim, 3000).doubts
    assert "will spread" in message
    assert not height_from_dough(rim, 3000, height_mm=60).doubts


@pytest.mark.parametrize("grams", [300, 900])
def test_a_rim_is_filled_by_its_dough(grams):
    rim = make_loaf("oval", 160, 200, 50)
    found = height_from_dough(rim, grams, dough=Dough("over"))
    wanted = 1000 * grams / DOUGH_DENSITY.value * Dough("over").times
    assert make_loaf("oval", 160, 200, found.loaf.height_mm).volume_mm3 == pytest.approx(wanted)
    assert found.loaf.volume_mm3 == pytest.approx(wanted)
    assert grams_of(
        make_loaf("oval", 160, 200, found.loaf.height_mm), Dough("over")
    ) == pytest.approx(grams)


@pytest.mark.parametrize("hole", [60.0, 140.0])
def test_a_ring_with_a_known_hole_holds_its_dough(hole):
    found = size_from_dough("ring", 900, known=Known(hole_mm=hole))
    assert found.loaf.hole.width_mm == pytest.approx(hole)
    assert found.loaf.volume_mm3 == pytest.approx(1425e3, rel=1e-6)
    assert found.loaf.height_mm / found.loaf.width_mm == pytest.approx(0.18)
    assert found.steps[-1].startswith("a ring loaf") and "the size given" not in found.steps[-1]


def test_a_ring_stands_on_the_breadth_of_its_dough():
    """Given 240 mm and a hole of 80 mm its dough is 80 mm broad: it stands 44 mm at most."""
    ring = size_from_dough("ring", 900, known=Known(width_mm=240, hole_mm=80))
    ((message, hint),) = ring.doubts
    assert "on 80 mm" in message and "44 mm" in hint
    usual = size_from_dough("ring", 900, known=Known(width_mm=200))
    ((message, _),) = usual.doubts
    assert "on 66 mm" in message  # the usual hole is 0.34 of the width


def test_how_high_a_loaf_may_stand_goes_by_its_shorter_side():
    for known in (Known(width_mm=120, length_mm=400), Known(width_mm=190, length_mm=120)):
        found = size_from_dough("oval", 2000, known=known)
        ((message, hint),) = found.doubts
        assert "on 120 mm" in message and "66 mm" in hint
    given = Known(width_mm=110, length_mm=180, height_mm=100)
    assert not size_from_dough("oval", 2000, known=given).doubts


def _in_basket(stand, dough=USUAL):
    """Size dough that would stand so high, over its width, in a round basket of 220 mm."""
    grams = stand * 220**3 * math.pi / 6 / 1000 * 1.2 / (dough.times * dough.shrunk)
    return size_from_dough("round", grams, dough=dough, basket_mm=(220, 220))


def test_in_its_basket_a_loaf_stands_between_0_3_and_0_55_of_its_width():
    """A half ellipsoid fills pi / 6 of its box; beyond either end it goes by the cube root."""
    for stand, width in ((0.31, 220), (0.54, 220), (0.2, 220 * (2 / 3) ** (1 / 3))):
        loaf = _in_basket(stand).loaf
        assert loaf.width_mm == pytest.approx(width)
        assert loaf.height_mm / width == pytest.approx(max(stand, 0.3))
    much = _in_basket(0.6)
    assert len(much.doubts) == 1  # too much for it, but no higher than dough stands
    wide = much.loaf
    assert wide.width_mm == pytest.approx(220 * (0.6 / 0.55) ** (1 / 3))
    assert wide.height_mm / wide.width_mm == pytest.approx(0.55)
    low = Dough("over")
    assert _in_basket(0.5, low).loaf.height_mm / _in_basket(0.5, low).loaf.width_mm == (
        pytest.approx(0.55 * 0.87)
    )


def test_what_a_basket_does_is_told():
    """A basket of 220 mm takes 700 to 900 g; a fifth more is too much."""
    young = _in_basket(0.2, STIFF).steps[2]  # it stands 0.345 of its width: 1.15 times as high
    assert "is not full to the rim: the loaf turns out 183 mm wide" in young
    little = _in_basket(0.15)  # 528 g
    assert "does not fill a 220 mm basket: the loaf turns out 175 mm wide" in little.steps[2]
    assert not _in_basket(0.305).doubts and _in_basket(0.31).doubts  # 1074 and 1091 g
    assert _in_basket(0.31).doubts[0][0] == "this is too much dough for a 220 mm basket"
    assert "about 700 to 900 g" in _in_basket(0.31).doubts[0][1]
    slack = _in_basket(0.38, Dough("over", hydration=0.95))  # on 0.359 of its width, 1053 g
    assert "spreads by 2%: overproofed and wet, 95%" in slack.steps[2] and not slack.doubts
    more = _in_basket(0.385, Dough("over", hydration=1.03))
    ((message, _),) = more.doubts
    assert "will be 6% larger than a 220 mm basket" in message
    assert message.endswith("overproofed and wet, 103%")
