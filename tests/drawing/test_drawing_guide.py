"""The guide: everything on the paper, nothing over a line, told in numbers."""

from dataclasses import dataclass

import numpy as np
import pytest
import shapely
from support.drawing_layouts import cut, make_layout, petals
from support.guides import guide_of

from scorecraft.drawing.guide.guide import guide_sizes, one_sheet_paper
from scorecraft.drawing.guide.plan import guide_plan
from scorecraft.drawing.inks import NUMBER_MM
from scorecraft.drawing.paper.sheet import paper
from scorecraft.drawing.picture import Label, Layer, Shape, walk, words
from scorecraft.drawing.text import CAP_HEIGHT, outline, width_mm
from scorecraft.groups import groups
from scorecraft.loaf.dome import make_loaf
from scorecraft.practice import PRINTER_MARGIN_MM


@dataclass(frozen=True)
class Told:
    severity: str
    message: str


def guide(layout, **more):
    (picture,) = guide_of(layout, **more)
    return picture


def layer(picture, name):
    return next(i for i in walk(picture.items) if isinstance(i, Layer) and i.name == name)


def ink_box(label):
    """The corners of a label's letters on the paper."""
    drawn = outline(label.text, label.size, bold=label.bold)
    points = np.array([point for _, segment in drawn.segments for point in segment])
    points[:, 0] += {"start": 0, "middle": -0.5, "end": -1}[label.anchor] * drawn.width_mm
    points[:, 1] += {"baseline": 0, "middle": 0.5, "top": 1}[label.level] * label.size * CAP_HEIGHT
    c, s = np.cos(label.turn), np.sin(label.turn)
    return points @ np.array([[c, s], [-s, c]]) + label.at


def everything(picture):
    for item in walk(picture.items):
        if isinstance(item, Label) and item.text.strip():
            yield ink_box(item)
        elif isinstance(item, Shape):
            for points in item.lines:
                half = item.ink.width / 2 if item.ink else 0
                yield np.vstack([points - half, points + half])


@pytest.mark.parametrize("home", ["A4", "Letter"])
@pytest.mark.parametrize("which", ["petal_layout", "small_layout", "long_layout"])
def test_nothing_is_printed_in_the_margin(request, which, home):
    layout = request.getfixturevalue(which)
    findings = [Told("warning", "two cuts leave a strip only 2.1 mm wide, 5 mm is the least")] * 5
    for more in ({}, {"findings": findings, "verdict": "Room enough. " * 12}):
        picture = guide(layout, home=paper(home), **more)
        points = np.vstack(list(everything(picture)))
        edge = PRINTER_MARGIN_MM.value
        assert points.min() >= edge - 0.2
        assert points[:, 0].max() <= picture.width_mm - edge + 0.2
        assert points[:, 1].max() <= picture.height_mm - edge + 0.2


@pytest.mark.parametrize("which", ["petal_layout", "small_layout", "long_layout"])
def test_no_word_lies_over_another_or_over_a_line(request, which):
    layout = request.getfixturevalue(which)
    picture = guide(layout, opening_mm=[(3.0, 5.0)] * len(layout.cuts), verdict="Room enough.")
    texts = [i for i in walk(picture.items) if isinstance(i, Label)]
    boxes = [shapely.MultiPoint(ink_box(each)).envelope for each in texts]
    tree = shapely.STRtree(boxes)
    pairs = tree.query(boxes, predicate="intersects")
    assert [(texts[i].text, texts[j].text) for i, j in pairs.T if i < j] == []
    lines = [
        shapely.linestrings(points)
        for item in walk(picture.items)
        if isinstance(item, Shape)
        for points in item.lines
    ]
    hit = shapely.STRtree(lines).query(boxes, predicate="intersects")[0]
    turned = [i for i in hit if not texts[i].turn]
    assert [texts[i].text for i in turned] == []


def test_papers_follow_the_loaf_and_the_home():
    def size(width, **more):
        picture = guide(make_layout(petals(6, 12, 25), make_loaf("round", width, None, 60)), **more)
        return picture.width_mm, picture.height_mm

    assert sorted(size(180.0)) == [210, 297]
    assert sorted(size(220.0)) == [297, 420]
    assert sorted(size(220.0, home=paper("Letter"))) == [279.4, 431.8]
    assert sorted(size(110.0, home=paper("Letter"))) == [215.9, 279.4]
    assert sorted(size(110.0, paper="a3")) == [297, 420]


def test_too_big_for_the_asked_paper_it_is_tiled_and_one_that_holds_it_is_known(petal_layout):
    pages = guide_of(petal_layout, paper="A4")
    assert len(pages) == 3
    assert {(page.width_mm, page.height_mm) for page in pages} <= {(210, 297), (297, 210)}
    assert one_sheet_paper(petal_layout.loaf, paper("A4")).name == "A3"
    assert one_sheet_paper(petal_layout.loaf, paper("Letter")).name == "Tabloid"
    assert one_sheet_paper(make_loaf("round", 400.0, None, 90.0), paper("A4")) is None


def test_too_big_for_every_paper_it_is_tiled_or_on_a_sheet_of_its_own():
    layout = make_layout(petals(8, 40, 90), make_loaf("round", 420.0, None, 120.0))
    assert len(guide_of(layout)) > 3
    whole = guide(layout, one_sheet=True)
    assert min(whole.width_mm, whole.height_mm) > 420


def test_every_group_is_in_the_table_and_numbered_once_on_the_plan(petal_layout):
    picture = guide(petal_layout)
    numbers = [each.text for each in walk([layer(picture, "numbers")]) if isinstance(each, Label)]
    assert sorted(numbers) == ["1", "2", "3", "4"]
    table = words(layer(picture, "words").items)
    for cell in ("petal rib", "petal edge", "petal vein", "hatch", "16", "8", "3", "6.5"):
        assert cell in table
    assert "Petals" in table
    assert "Cut the ribs last." in table


def test_numbers_are_placed_near_twelve_to_one_o_clock(petal_layout):
    picture = guide(petal_layout)
    plan = layer(picture, "crown")
    centre = next(i for i in plan.items if isinstance(i, Shape)).lines[0].mean(axis=0)
    for label in walk([layer(picture, "numbers")]):
        if isinstance(label, Label) and label.text in "123":
            x, y = np.array(label.at) - centre
            assert -25 < np.degrees(np.arctan2(x, -y)) < 50
            assert label.size == NUMBER_MM


@pytest.mark.parametrize("backward", [True, False])
def test_arrow_shows_which_way_the_plan_pulls(backward):
    """A line drawn from left to right: its arrowhead's tip lies the way of the pull."""
    layout = make_layout([cut([[-40, 20], [40, 20]])], make_loaf("round", 200.0, None, 80.0))
    against = frozenset([0]) if backward else frozenset()
    (pull,) = [
        item
        for item in guide_plan(layout, groups(layout), (150.0, 150.0), against).items
        if isinstance(item, Layer) and item.name == "pull"
    ]
    ((tip, *wings),) = (shape.lines[0] for shape in pull.items)
    assert (tip[0] < np.mean(wings, axis=0)[0]) == backward


def test_every_cut_is_drawn_at_full_size_with_its_style_and_key(petal_layout):
    cuts = layer(guide(petal_layout), "cuts").items
    assert {shape.data["cut"] for shape in cuts} == {str(k) for k in range(43)}
    by_index = {int(shape.data["cut"]): shape for shape in cuts}
    rib, edge, vein = (by_index[k] for k in (0, 1, 3))
    assert (rib.ink.width, edge.ink.width, vein.ink.width) == (1.0, 0.5, 0.5)
    assert vein.ink.dash and not edge.ink.dash
    assert rib.css == "cut deep decorative"


def test_openings_and_verdict_are_shown_only_when_given(petal_layout):
    plain = words(guide(petal_layout).items)
    assert "opens" not in plain
    widths = [(2.4, 6.6)] * len(petal_layout.cuts)
    told = words(
        guide(petal_layout, opening_mm=widths, verdict="Room enough towards 4 o'clock.").items
    )
    assert "opens" in told
    assert "2–7" in told
    assert any("Room enough" in each for each in told)


def test_stops_come_first_and_the_rest_is_counted(petal_layout):
    findings = [Told("note", "n"), *[Told("warning", "close")] * 4, Told("stop", "over the rim")]
    told = words(guide(petal_layout, findings=findings).items)
    assert told.index("Stop: over the rim") < told.index("Warning: close")
    assert "and 3 more: run scorecraft check" in told


def test_rules_cautions_and_key_are_always_there(small_layout):
    told = " ".join(words(guide(small_layout).items))
    for piece in ("100%", "4 in", "Razor blades", "sharps container", "6 mm deep or more"):
        assert piece in told
    assert told.count("Look at this sheet, do not lay it on dough") == 1
    assert "string" not in told


def test_rows_without_room_are_counted_not_lost():
    cuts = [
        cut([[-60 + 3 * k, 0], [-60 + 3 * k, 30]], f"slash {k}", figure=k, family=k)
        for k in range(40)
    ]
    told = words(guide(make_layout(cuts, make_loaf("round", 180.0, None, 80.0))).items)
    listed = sum(each.startswith("slash ") for each in told)
    left = next(each for each in told if "not listed" in each)
    assert 3 < listed < 40
    assert f"and {40 - listed} more" in left


def test_an_empty_pattern_and_strange_words_still_print():
    loaf = make_loaf("round", 150.0, None, 60.0)
    picture = guide(make_layout([], loaf, title="麦の輪 " + "long " * 40, notes=["x" * 300]))
    points = np.vstack(list(everything(picture)))
    assert points[:, 0].max() <= picture.width_mm - 4.8


def test_needed_sizes_grow_with_the_loaf():
    small, large = (guide_sizes(make_loaf("round", w, None, 70.0)) for w in (150.0, 200.0))
    for one, other in zip(small, large, strict=True):
        assert other.width >= one.width and other.height >= one.height


def test_words_are_legible(petal_layout):
    sizes = [i.size for i in walk(guide(petal_layout).items) if isinstance(i, Label)]
    assert min(sizes) >= 2.4
    assert width_mm("x", min(sizes)) > 1.3
