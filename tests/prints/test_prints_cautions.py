"""Each sheet says what is dangerous about it, where that is.

A PDF holds letters as outlines, so the words are read from the pages as they are drawn.
"""

import re

import pytest

from scorecraft import design
from scorecraft.drawing.paper.cautions import BLADE, DRAPE, FILM, OVEN, RING, SHEET, STENCIL
from scorecraft.drawing.picture import Label, walk, words
from scorecraft.groups import spans
from scorecraft.prints import PRINTS
from scorecraft.prints.forms import encoded

ROUND = 'title "One"\nloaf round width 120mm height 55mm\nmarks spokes 6\nslash 60mm depth 6mm\n'
NORMAL_MM = 3.4
"""The size of the words around the caution, before the first step."""
MATERIAL = {"guide": SHEET, "card": SHEET, "stencil": STENCIL, "drape": DRAPE, "ring": RING}


@pytest.fixture(scope="module")
def small():
    return design(ROUND)


def pages(made, name, **options) -> list[str]:
    """Read the pages of a print as running text, the way they are set."""
    return [" ".join(words(page.items)) for page in made.printed(name, "pdf", **options).pages]


def height_of(page, text: str) -> float:
    """Tell how far down a page (mm) the line stands that begins with a text."""
    labels = (item for item in walk(page.items) if isinstance(item, Label))
    return min(
        label.at[1] for label in labels if text.startswith(label.text) and len(label.text) > 9
    )


@pytest.mark.parametrize("name", MATERIAL)
def test_a_sheet_says_what_its_material_may_touch_and_warns_of_the_blade(small, name):
    first = pages(small, name, paper="A4")[0]
    assert MATERIAL[name] in first
    assert BLADE in first


@pytest.mark.parametrize("name", sorted({*PRINTS} - {"bloom"}))
def test_every_sheet_says_where_used_blades_go_and_what_dough_must_not_touch(small, name):
    """Also one that is added later; the bloom is a picture, not a sheet for the bench."""
    first = pages(small, name)[0]
    assert "rigid sharps container" in first
    assert re.search(
        r"[Kk]eep this sheet off the dough|[Dd]o not lay|never touches the dough", first
    )


@pytest.mark.parametrize("name", ["guide", "stencil", "ring"])
def test_so_does_a_print_on_many_sheets_on_the_first_and_every_other_stays_off_the_dough(name):
    first, *others = pages(design("swirl"), name, paper="A4")
    assert others
    assert MATERIAL[name] in first and BLADE in first
    assert all("Keep this sheet off the dough" in each for each in others)


@pytest.mark.parametrize("name", ["leaf-crown", "one-slash"])
def test_the_card_warns_of_the_blade_before_the_first_step_and_of_the_oven_at_the_last(name):
    first, *_, last = 2 * design(name).printed("card", "pdf", paper="A4").pages
    labels = [item for item in walk(first.items) if isinstance(item, Label)]
    assert "dip it in oil or water" in " ".join(words(first.items))
    caution = height_of(first, BLADE)
    assert caution < min(each.at[1] for each in labels if re.search(r"no\. \d|^A$", each.text))
    assert next(each.size for each in labels if BLADE.startswith(each.text)) >= NORMAL_MM
    steps = [item for item in walk(last.items) if isinstance(item, Label) and "no. " in item.text]
    oven, pot = height_of(last, OVEN), height_of(last, "Covered pot")
    assert max(each.at[1] for each in steps) < oven < pot


def test_before_the_string_lines_too(small):
    told = pages(small, "card")[0]
    assert told.index(BLADE) < told.index("mark 3 string lines across (6 spokes)")


def test_the_card_as_text_warns_in_the_same_places(small):
    text = small.printed("card", "txt").text
    assert text.index(BLADE) < text.index("string lines") < text.index("no. 1")
    assert text.index("no. 1") < text.index(OVEN) < text.index("COVERED POT")


@pytest.mark.parametrize(
    ("name", "form"), [("stencil", "svg"), ("stencil", "dxf"), ("guide", "dxf")]
)
def test_a_file_for_a_cutter_says_what_it_may_be_cut_from(small, name, form):
    made = small.printed(name, form, cutter=True)
    assert FILM in encoded(made, form).decode()
    assert made.caution == FILM


@pytest.mark.parametrize("name", ["swirl", "roll-cross"])
def test_figures_of_the_model_are_called_estimates_once_on_the_guide(name):
    assert len(re.findall("model estimate", " ".join(pages(design(name), "guide")))) == 1


def test_what_is_printed_without_the_model_claims_no_estimate(small):
    for name in ("card", "stencil", "drape", "ring"):
        assert "estimate" not in " ".join(pages(small, name))


def test_one_numbering_on_every_sheet():
    """Guide, card and ring call a cut by the number that `check` gives it."""
    made = design("leaf-crown")
    guide, card, ring = (" ".join(pages(made, name)) for name in ("guide", "card", "ring"))
    for group in made.groups:
        assert re.search(rf"\b{group.number} {group.key} ", guide), group.key
        assert re.search(rf"\d+ {group.name}s?, no\. {group.number}\b", card), group.key
    listed = re.findall(r"No\. ([\d, –]+), (\w+), \d+ starts", ring)
    own = {
        word: spans({group.number for group in made.groups if group.name.startswith(word)})
        for _, word in listed
    }
    assert {word: numbers for numbers, word in listed} == own and "leaf" in own
