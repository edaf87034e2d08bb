import pytest

from scorecraft.loaf.dough import Dough
from scorecraft.loaf.sizing import Known
from scorecraft.loaf.tin import PANS
from scorecraft.loaf.tinned import in_tin, pan_for


@pytest.mark.parametrize("name", PANS)
def test_every_tin_takes_its_usual_dough(name):
    pan = PANS[name]
    for grams in (*pan.dough_g, None):
        made = in_tin(pan, Known(), grams)
        loaf = made.loaf
        assert (loaf.width_mm, loaf.length_mm) == (pan.width_mm, pan.length_mm)
        assert not made.doubts
        assert loaf.wall_mm <= pan.depth_mm + 1e-9
        # when it is scored it stands from a little below the rim to a little above it
        assert 0.7 * pan.depth_mm < loaf.height_mm < pan.depth_mm + 0.35 * pan.width_mm
    assert pan_for(sum(pan.dough_g) / 2).name == name


def test_too_much_and_too_little_dough_is_told():
    (much,) = in_tin(PANS["one_pound"], Known(), 700.0).doubts
    (little,) = in_tin(PANS["one_pound"], Known(), 300.0).doubts
    assert much == (
        "700 g of dough is too much for a 1 lb tin: it spills over the rim",
        "use at most 520 g, or a larger tin",
    )
    assert "too little" in little[0] and "at least 400 g" in little[1]


def test_a_volume_is_the_dough_at_scoring_and_a_height_stands():
    made = in_tin(None, Known(width_mm=110, length_mm=240), 800.0, dough=Dough(2.4))
    assert made.loaf.volume_mm3 == pytest.approx(800 / 1.2 * 2.4 * 1000)
    assert "1600 cm³" in made.steps[-1]
    high = in_tin(PANS["two_pound"], Known(height_mm=90), None).loaf
    assert high.height_mm == 90 and high.held is not None and high.held.depth_mm == 72
    free = in_tin(None, Known(width_mm=110), None).loaf
    assert free.length_mm == pytest.approx(198) and free.height_mm == pytest.approx(77)


def test_dough_alone_chooses_its_tin():
    made = in_tin(None, Known(), 450.0)
    assert made.loaf.width_mm == 90 and "a 1 lb tin is usual for 450 g" in made.steps[0]


def test_the_dough_a_tin_takes_is_just_right_at_either_end():
    pan = PANS["one_pound"]
    assert not in_tin(pan, Known(), 400.0).doubts and not in_tin(pan, Known(), 520.0).doubts
    assert in_tin(pan, Known(), 399.0).doubts and in_tin(pan, Known(), 521.0).doubts
    assert not in_tin(None, Known(width_mm=90), 900.0).doubts


def test_without_dough_a_tin_takes_the_middle_of_its_usual():
    made = in_tin(PANS["two_pound"], Known(), None)
    assert "a 2 lb tin takes 800 to 1050 g of dough: 925 g is taken" in made.steps[0]
    assert made.loaf.volume_mm3 == pytest.approx(925 / 1.2 * 1.9 * 1000)


def test_the_tin_nearest_to_the_dough_is_chosen():
    assert [pan_for(grams).name for grams in (50, 359, 361, 1000, 5000)] == [
        "half_pound", "half_pound", "one_pound", "us_large", "pullman"
    ]  # fmt: skip


def test_a_height_in_a_tin_is_its_wall_and_the_usual_crown():
    """The usual crown is 0.18 of the width: 19.8 mm on 110 mm; half at least is wall."""
    pan = PANS["two_pound"]
    low, half, high = (in_tin(pan, Known(height_mm=each), None).loaf for each in (60, 30, 120))
    assert (low.wall_mm, low.held.length_mm) == pytest.approx((40.2, 210))
    assert half.wall_mm == pytest.approx(15) and high.wall_mm == pytest.approx(72)
    wider = in_tin(pan, Known(width_mm=100, length_mm=150, height_mm=60), None).loaf
    assert (wider.width_mm, wider.length_mm, wider.held.length_mm) == (100, 150, 210)
    assert in_tin(pan, Known(length_mm=240, height_mm=60), None).loaf.held.length_mm == 240


def test_dough_stands_with_the_usual_crown_as_far_as_the_tin_is_deep():
    """Mean height over the tin's area: wall, and of the crown the mean of 1 - t^p."""
    pan = PANS["two_pound"]
    for grams in (800.0, 1050.0):
        loaf = in_tin(pan, Known(), grams).loaf
        full = (loaf.volume_mm3 / loaf.plan_area_mm2 - loaf.wall_mm) / loaf.crown_mm
        level = grams / 1.2 * 1.9 * 1000 / loaf.plan_area_mm2
        assert loaf.volume_mm3 / loaf.plan_area_mm2 == pytest.approx(level)
        assert loaf.wall_mm == pytest.approx(min(level - full * 19.8, 72))
        assert (loaf.held.depth_mm, loaf.held.length_mm) == (72, 210)
    little = in_tin(pan, Known(), 100.0).loaf
    assert little.wall_mm == pytest.approx(little.volume_mm3 / little.plan_area_mm2 / 4)
    free = in_tin(None, Known(width_mm=110, length_mm=210), 900.0).loaf
    assert free.held.depth_mm == free.wall_mm and free.crown_mm == pytest.approx(19.8)
