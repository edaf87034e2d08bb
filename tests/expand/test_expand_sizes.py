"""The size of the loaf as a pattern asks for it: dough, baskets, rims of one's own, habits."""

import pytest

from scorecraft.designing import make
from scorecraft.errors import PatternError
from scorecraft.report import report
from scorecraft.shelf import Source

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="0 0 200 200">'


@pytest.fixture
def made(tmp_path):
    (tmp_path / "rim.svg").write_text(f'{HEAD}<ellipse cx="100" cy="100" rx="80" ry="100"/></svg>')

    def make_it(words):
        return make(Source("a.score", f"loaf {words}\nslash 60mm depth 8mm\n", tmp_path))

    return make_it


def refused(made, words):
    with pytest.raises(PatternError) as caught:
        made(words)
    return str(caught.value)


def steps(design):
    return "\n".join(design.layout.size.steps)


def test_a_rim_of_ones_own_is_filled_by_its_dough(made):
    light, heavy = (made(f'round outline "rim.svg" dough {g}g') for g in (300, 3000))
    assert heavy.layout.loaf.height_mm == pytest.approx(10 * light.layout.loaf.height_mm)
    assert heavy.layout.loaf.volume_mm3 == pytest.approx(3000 / 1.2 * 1.9 * 1000, rel=1e-6)
    assert "the rim is as drawn: 200 mm long, 160 mm wide" in steps(light)
    assert "300 g of dough" in steps(light)
    assert [f.check for f in heavy.checked if "will spread" in f.message] == ["size"]
    assert not [f for f in light.checked if f.check == "size"]


def test_a_rim_is_scaled_to_a_width_or_a_length(made):
    wide, long = (
        made('round outline "rim.svg" width 240mm'),
        made('round outline "rim.svg" length 300mm'),
    )
    for design in (wide, long):
        loaf = design.layout.loaf
        assert (loaf.width_mm, loaf.length_mm) == (pytest.approx(240), pytest.approx(300))
    assert "scaled to the length given" in steps(long)
    said = refused(made, 'round outline "rim.svg" width 240mm length 240mm')
    assert "keeps its proportions" in said


def test_a_given_height_of_a_rim_stands_beside_its_dough(made):
    design = made('round outline "rim.svg" dough 900g height 60mm')
    assert design.layout.loaf.height_mm == 60
    assert "the size given is used" in steps(design)


def test_an_oval_loaf_is_as_large_as_its_basket(made):
    for words in ("basket 25cm by 15cm", "basket 15cm by 25cm"):
        loaf = made(f"oval dough 750g {words}").layout.loaf
        assert (loaf.width_mm, loaf.length_mm) == (pytest.approx(150), pytest.approx(250))
    one = made("oval dough 750g basket 25cm").layout.loaf
    assert one.length_mm <= 250.001 and one.width_mm == pytest.approx(one.length_mm / 1.6)
    assert made("round dough 1100g basket 22cm").layout.loaf.width_mm == pytest.approx(220)


@pytest.mark.parametrize(
    ("words", "message"),
    [
        ("round dough 900g basket 22cm by 15cm", "a round loaf takes a basket as long as"),
        ("oval dough 900g by 15cm", '"by" is the width of a basket'),
        ("oval width 150mm basket 25cm", "together with its dough"),
        ('round outline "rim.svg" dough 900g basket 25cm', "together with its dough"),
    ],
)
def test_baskets_that_say_nothing_are_told(made, words, message):
    assert message in refused(made, words)


def test_the_report_says_given_only_of_what_is_given(made):
    given = "Size of the loaf: as given."
    assert given in report(made("round width 220mm height 95mm"), verbose=True)
    for words, said in (
        ("round width 220mm", "no height is given: 95 mm is usual for this width"),
        ("oval width 150mm height 70mm", "no length is given: 240 mm is usual"),
        ('round outline "rim.svg" height 70mm', "the rim is as drawn"),
        ('round outline "rim.svg"', "no height is given: 69 mm is usual"),
        ("oval dough 750g", "an oval loaf"),
    ):
        told = report(made(words), verbose=True)
        assert given not in told and said in told


def test_too_much_dough_for_its_basket_is_told(made):
    (found,) = [f for f in made("round dough 1500g basket 18cm").checked if f.check == "size"]
    assert "larger than a 180 mm basket" in found.message and found.severity == "warning"
