"""Forms as the language asks for them: tins, holes, usual dough, and what is refused."""

import pytest

from scorecraft.errors import PatternError
from scorecraft.expand import expand
from scorecraft.language.parse import parse
from scorecraft.loaf.forms import FORMS


def laid(loaf):
    text = f"loaf {loaf}\nslash 20mm\n"
    return expand(parse(text, "pattern"), text)


@pytest.mark.parametrize("form", FORMS)
def test_every_form_is_a_word_of_the_language(form):
    layout = laid(f"{form} width 150mm")
    assert layout.loaf.shape == form and layout.loaf.width_mm == pytest.approx(150)
    assert laid(f"{form} dough 350g").loaf.volume_mm3 == pytest.approx(350 / 1.2 * 1.9e3, rel=0.02)


def test_tins_and_holes():
    tin = laid("tin pan two_pound dough 900g")
    assert (tin.loaf.width_mm, tin.loaf.length_mm) == (110, 210)
    assert any("a 2 lb tin takes" in step for step in laid("tin pan two_pound").size.steps)
    (doubt,) = laid("tin pan one_pound dough 900g").size.doubts
    assert "too much for a 1 lb tin" in doubt[0]
    ring = laid("ring dough 800g hole 60mm").loaf
    assert ring.hole.width_mm == 60
    assert ring.volume_mm3 == pytest.approx(800 / 1.2 * 1.9e3, rel=0.01)


def test_a_form_made_in_one_size_has_its_usual_dough():
    roll = laid("roll")
    assert "no size is given: a roll takes 40 to 120 g, 80 g is taken" in roll.size.steps
    (doubt,) = laid("roll dough 300g").size.doubts
    assert doubt == ("300 g is too much dough for a roll", "use 40 to 120 g, or another form")
    assert pytest.approx(laid("baguette").loaf.volume_mm3, rel=0.01) == 350 / 1.2 * 1.9e3


@pytest.mark.parametrize(
    ("loaf", "said"),
    [
        ("tin", "the tin has no size"),
        ("heart", "no width and no dough"),
        ("round width 200mm hole 50mm", "has no hole"),
        ("oval width 200mm pan pullman", "bakes in no tin"),
        ("round width 200mm taper 20%", "does not taper"),
        ("star width 200mm length 240mm", "as long as it is wide"),
        ("ring width 200mm hole 190mm", "narrower than 15 mm"),
    ],
)
def test_what_a_form_does_not_have_is_refused(loaf, said):
    with pytest.raises(PatternError, match=said):
        laid(loaf)


def test_a_batard_that_tapers_holds_its_dough():
    tapered = laid("oval dough 900g taper 30%").loaf
    assert tapered.volume_mm3 == pytest.approx(laid("oval dough 900g").loaf.volume_mm3, rel=1e-3)
    points = tapered.outline.points(720)
    far, near = (abs(points[:, 1] - side * 80).argmin() for side in (1, -1))
    assert abs(points[far, 0]) < 0.85 * abs(points[near, 0])
