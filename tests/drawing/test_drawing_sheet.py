"""Paper: choice by locale and by size. The sizes are checked in tests/published."""

import pytest

from scorecraft.drawing.paper.sheet import PAPERS, Choice, Size, choose, fitting, home_paper, paper
from scorecraft.errors import UsageError

A4, LETTER = paper("A4"), paper("letter")


@pytest.mark.parametrize("name", ["a4", "A4", " letter ", "TABLOID", "a3"])
def test_names_are_known_in_any_case(name):
    assert paper(name).name.lower() == name.strip().lower()


def test_an_unknown_paper_names_those_there_are_and_the_nearest():
    with pytest.raises(UsageError, match="A4, A3, Letter, Tabloid") as caught:
        paper("leter")
    assert caught.value.hint == "did you mean Letter?"


@pytest.mark.parametrize(
    ("environment", "name"),
    [
        ({}, "A4"),
        ({"LANG": "C.UTF-8"}, "A4"),
        ({"LANG": "en_US.UTF-8"}, "Letter"),
        ({"LANG": "fr_CA"}, "Letter"),
        ({"LANG": "en_GB.UTF-8"}, "A4"),
        ({"LANG": "en_US.UTF-8", "LC_PAPER": "de_DE@euro"}, "A4"),
        ({"LC_ALL": "en_US", "LC_PAPER": "de_DE"}, "Letter"),
        ({"LC_ALL": "", "LC_PAPER": "es_MX.utf8"}, "Letter"),
    ],
)
def test_home_paper_follows_the_locale(environment, name):
    assert home_paper(environment).name == name


def test_turned_paper_holds_what_upright_does_not():
    assert not A4.holds(Size(280, 190))
    assert A4.across.holds(Size(280, 190))
    assert A4.holds(Size(200, 287))
    assert not A4.holds(Size(200.1, 287))


def test_smallest_fitting_paper_of_the_family_is_chosen():
    assert choose([Size(190, 200)], None, A4).paper.name == "A4"
    assert choose([Size(239, 280)], None, A4).paper.name == "A3"
    assert choose([Size(239, 269)], None, LETTER).paper.name == "Tabloid"
    assert choose([Size(400, 260)], None, A4).paper.width_mm == 420


def test_any_of_the_sizes_will_do():
    assert choose([Size(500, 500), Size(190, 200)], None, A4).paper.name == "A4"


def test_what_the_paper_does_not_hold_goes_onto_several_sheets_of_it():
    large = [Size(600, 600)]
    assert choose([Size(239, 280)], "A4", LETTER) == Choice(A4, False)
    assert choose(large, None, LETTER) == Choice(LETTER, False)
    assert choose([Size(239, 280)], None, A4, tiled=True) == Choice(A4, False)
    assert choose([Size(190, 200)], None, A4, tiled=True) == Choice(A4, True)
    assert fitting(large, PAPERS) is None


def test_or_onto_one_sheet_as_large_as_it_takes_unless_a_paper_is_asked_for():
    sizes = [Size(600, 500), Size(510, 500)]
    own = choose(sizes, None, LETTER, one_sheet=True)
    assert own.whole and (own.paper.width_mm, own.paper.height_mm) == (520, 510)
    assert own.paper.holds(sizes[1])
    assert not choose(sizes, "A3", LETTER, one_sheet=True).whole
    assert not choose(sizes, None, LETTER, one_sheet=True, tiled=True).whole
