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
