"""What hands do after the cuts stands on guide and card: drawn, and in words, with its tools."""

import pytest

from scorecraft import design
from scorecraft.bench import work_of
from scorecraft.drawing.paper.cautions import BLADE, KNIFE, SCISSORS, edges
from scorecraft.drawing.paper.hands import hands_block, hands_figure
from scorecraft.drawing.picture import Layer, Shape, walk, words
from scorecraft.shaping.shaped import shaped

LEAF = """title "Leaf"
loaf fougasse width 150mm length 200mm height 22mm
slash 80mm through pulled 20mm
"""
EAR = """title "Ear"
loaf epi width 60mm length 300mm height 38mm
row 3 spacing 75mm angle 0deg:
    snip 50mm
"""
SLASH = "loaf round width 150mm height 70mm\nslash 80mm depth 8mm\n"


@pytest.fixture(scope="module", params=[LEAF, EAR], ids=["leaf", "ear"])
def made(request):
    return design(request.param)


def layers(items, name):
    return [item for item in walk(items) if isinstance(item, Layer) and item.name == name]


def test_guide_and_card_draw_the_dough_as_hands_make_it(made):
    hands = "Pulled open" if made.layout.cuts[0].through else "Laid aside"
    for pages in (made.printed("card", "pdf").pages, made.printed("guide", "pdf").pages):
        (figure,) = [each for page in pages for each in layers(page.items, "shaped")]
        assert len(figure.items) == len(shaped(made.layout).slabs)
        assert hands in " ".join(text for page in pages for text in words(page.items))


def test_the_figure_is_to_scale_and_shows_what_is_open(made):
    found = shaped(made.layout)
    figure, wide, high = hands_figure(found, 40.0, 60.0)
    assert (wide == pytest.approx(40) or high == pytest.approx(60)) and wide <= 40 and high <= 60
    assert wide / high == pytest.approx(found.size_mm[0] / found.size_mm[1])
    rings = [len(item.lines) for item in walk((figure,)) if isinstance(item, Shape)]
    assert max(rings) == (2 if made.layout.cuts[0].through else 1)  # the leaf has a hole


def test_nothing_is_set_where_hands_leave_the_dough_alone_or_there_is_no_room(made):
    plain = design(SLASH)
    assert hands_block(plain.layout, plain.groups, 100.0, 80.0, 4.0).items == ()
    assert hands_block(made.layout, made.groups, 100.0, 10.0, 4.0).items == ()
    assert 10 < hands_block(made.layout, made.groups, 100.0, 80.0, 4.0).height <= 80


def test_tools_and_cautions_are_those_of_the_cuts(made):
    text = made.printed("card", "txt").text
    own, other = (KNIFE, SCISSORS) if made.layout.cuts[0].through else (SCISSORS, KNIFE)
    assert own in text and not any(each in text for each in ("lame", BLADE, other))
    assert " deep" not in text.split("BY HAND")[0].split("no. 1")[1]
    assert ("every cut to 20 mm" in text) == (own is KNIFE)
    assert "lame" in design(SLASH).printed("card", "txt").text
    mixed = (*made.layout.cuts, *design(SLASH).layout.cuts)
    assert edges(mixed).startswith(BLADE) and own in edges(mixed) and edges(()) == BLADE


def test_snips_are_made_from_the_far_end_with_the_handles_toward_the_cutter():
    layout = design(EAR).layout
    made = work_of(layout)
    (step,) = made.steps
    assert step.table_rad == 0
    places = [layout.cuts[pull.cut].line[:, 1].mean() for pull in step.pulls]
    assert places == sorted(places, reverse=True)
    assert {cut.rises for cut in layout.cuts} == {1}
