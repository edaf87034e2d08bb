"""The bench card: all steps on it, nothing over anything else, told in big letters."""

import math
import re
from dataclasses import replace

import numpy as np
import pytest
import shapely
from support.drawing_layouts import cut, make_layout, petals
from support.shelf_designs import some

from scorecraft.bench import work_of
from scorecraft.bench.steps import Run
from scorecraft.designing import make
from scorecraft.drawing.card.card import MARGIN_MM, card, joined
from scorecraft.drawing.card.loaf import LATER, seen
from scorecraft.drawing.card.row import LETTER_WIDE, step_row
from scorecraft.drawing.card.text import card_text
from scorecraft.drawing.paper.sheet import paper
from scorecraft.drawing.picture import Label, Layer, Shape, walk, words
from scorecraft.drawing.text import CAP_HEIGHT, outline
from scorecraft.errors import UsageError

PATTERNS = (
    "leaf-crown", "filled-cross", "leaf-bough", "crescent-and-wheat", "sunflower", "tree",
    "band-lattice", "one-slash",
)  # fmt: skip


def layer(picture, name):
    return next(i for i in walk(picture.items) if isinstance(i, Layer) and i.name == name)


def ink_box(label):
    drawn = outline(label.text, label.size, bold=label.bold)
    points = np.array([point for _, segment in drawn.segments for point in segment])
    points[:, 0] += {"start": 0, "middle": -0.5, "end": -1}[label.anchor] * drawn.width_mm
    points[:, 1] += {"baseline": 0, "middle": 0.5, "top": 1}[label.level] * label.size * CAP_HEIGHT
    low, high = points.min(axis=0) + label.at, points.max(axis=0) + label.at
    return shapely.box(*low, *high)


def labels(picture):
    return [item for item in walk(picture.items) if isinstance(item, Label) and item.text.strip()]


@pytest.mark.parametrize("home", ["A4", "Letter"])
@pytest.mark.parametrize("name", PATTERNS)
def test_no_words_lie_on_others_or_in_the_margin(name, home):
    layout = make(name).layout
    for page in card(layout, work_of(layout), home=paper(home)):
        boxes = np.array([ink_box(label) for label in labels(page)])
        left, right = shapely.STRtree(boxes).query(boxes, predicate="intersects")
        clashes = [(labels(page)[a].text, labels(page)[b].text)
                   for a, b in zip(left, right, strict=True) if a < b]  # fmt: skip
        assert clashes == []
        low_x, low_y, high_x, high_y = shapely.total_bounds(boxes)
        assert min(low_x, low_y) >= MARGIN_MM - 0.6
        assert high_x <= page.width_mm - MARGIN_MM + 0.6
        assert high_y <= page.height_mm - MARGIN_MM + 0.6


def test_long_depths_keep_clear_of_the_turn():
    """The widest words there are, side by side: a slanted, deep, long-named cut and a wide turn."""
    cuts = [
        cut([[20, -60], [40, 60]], "extraordinary slash", depth=12.5, blade=35, kind="expansion"),
        cut([[-60, 10], [60, -30]], "another", family=1, figure=1, depth=10.5, blade=35,
            kind="expansion"),
    ]  # fmt: skip
    layout = make_layout(cuts)
    for page in card(layout, work_of(layout)):
        boxes = [ink_box(label) for label in labels(page)]
        assert all(not a.intersects(b) for k, a in enumerate(boxes) for b in boxes[:k])


def dark(picture_items):
    """The cuts that are drawn black."""
    shapes = (item for item in walk(picture_items) if isinstance(item, Shape))
    return {int(shape.data["cut"]) for shape in shapes if "cut" in shape.data}


def named(items, name):
    return [item for item in walk(items) if isinstance(item, Layer) and item.name == name]


@pytest.mark.parametrize("name", some(0))
def test_a_row_draws_all_that_it_covers(name):
    """Copies: the first black, the others grey; else a picture for each setting."""
    layout = make(name).layout
    made = work_of(layout)
    pages = card(layout, made)
    assert 1 <= len(pages) <= 2
    letters = []
    for item in (item for page in pages for item in walk(page.items)):
        if not isinstance(item, Layer) or not item.name.startswith("step "):
            continue
        run = made.runs[len(letters)]
        letters.append(item.name[5:])
        own = [{pull.cut for pull in step.pulls} for step in run.steps]
        if run.copies:
            assert dark([item]) == own[0]
            grey = [shape for shape in walk([item]) if isinstance(shape, Shape)
                    and shape.ink and shape.ink.color == LATER]  # fmt: skip
            assert sum(len(shape.lines) for shape in grey) == sum(map(len, own[1:]))
        else:
            assert [dark([drawn]) for drawn in named([item], "setting")] == own
    assert letters == [run.letter for run in made.runs]


@pytest.mark.parametrize("name", some(1, 2))
def test_no_label_is_cut_off(name):
    layout = make(name).layout
    for page in card(layout, work_of(layout)):
        assert not [text for text in words(page.items) if "…" in text]


def test_long_names_and_titles_are_told_in_full():
    """They are broken into lines; the numbers of a cut stay in one piece."""
    name = "uncommonly long name of a cut"
    cuts = [cut([[9 * k, -20], [9 * k, 20]], name, figure=k, family=k, depth=2 + 0.5 * k)
            for k in range(3)]  # fmt: skip
    title = "A very long title for an oval loaf with many leaves and slashes on it, told in full"
    layout = make_layout(cuts, title=title)
    (page,) = card(layout, work_of(layout))
    told = words(page.items)
    assert " ".join(told).startswith(title)
    assert " ".join(told).count(name) == 3
    assert {"no. 1", "no. 2", "no. 3"} <= set(told)
    boxes = [ink_box(label) for label in labels(page)]
    assert all(not a.intersects(b) for k, a in enumerate(boxes) for b in boxes[:k])


def test_cuts_carry_the_numbers_of_the_guide_also_for_the_other_hand():
    design = make("leaf-crown")
    left = card(design.layout, work_of(design.layout, "left"), design.groups)
    told = [text for page in left for text in words(page.items)]
    for group in design.groups:
        assert any(f"{group.name}" in text and text.endswith(f"no. {group.number}")
                   for text in told), group.key  # fmt: skip


def test_rows_have_letters_so_that_numbers_are_those_of_the_cuts():
    layout = make_layout([cut([[x, -20], [x, 20]], f"line{x}", figure=x, family=x, depth=2 + x % 7)
                          for x in range(-60, 60, 3)])  # fmt: skip
    made = work_of(layout)
    assert [run.letter for run in made.runs[:3]] == ["A", "B", "C"]
    assert Run(26, ()).letter == "Z" and Run(27, ()).letter == "AA" and Run(53, ()).letter == "BA"


def test_the_letter_and_the_mark_keep_clear_of_the_picture():
    """Both are set so small, where they must be, that they end before the dial begins."""
    layout = make_layout(petals())
    view, drawn = seen(layout), work_of(layout).runs[0].first
    step = replace(drawn, table_rad=math.radians(337.5))
    numbers = dict.fromkeys(range(len(layout.cuts)), 1)
    for height in (38.0, 50.0, 72.0):
        (row,) = step_row(view, Run(27, (step,)), numbers, "steady", 190.0, height).items
        beside = [item for item in walk([row]) if isinstance(item, Label) and item.at[0] == 0.0]
        assert {item.text for item in beside} == {"AA", "337½°"}
        assert all(ink_box(item).bounds[2] <= LETTER_WIDE - 1 for item in beside)


def test_copies_are_told_once_with_their_turn():
    layout = make_layout(petals(copies=8))
    told = words(card(layout, work_of(layout))[0].items)
    assert told.count("× 8") == 1
    assert told.count("turn 45° ↻") == 1
    assert "2 petal veins, no. 1" in told and "1 petal rib, no. 3" in told


def test_copies_that_turn_by_no_plain_part_of_a_degree_go_by_the_marks():
    """Thirteen turns of 28 degrees would end four degrees off."""
    layout = make_layout(petals(copies=13))
    told = words(card(layout, work_of(layout))[0].items)
    assert "turn the mark to" in told and not any("28° ↻" in text for text in told)
    text = card_text(layout, work_of(layout))
    (marks,) = {tuple(re.findall(r"(\d+)°", line.partition("mark to ")[2]))
                for line in text.splitlines() if "mark to" in line}  # fmt: skip
    exact = (np.array(marks, float) - float(marks[0])) % 360 - np.arange(13) * 360 / 13
    assert np.abs((exact + 180) % 360 - 180).max() <= 1.0


def test_halves_are_told_exactly():
    text = card_text(make_layout(petals(copies=16)), work_of(make_layout(petals(copies=16))))
    assert "× 16, turn 22½° clockwise each time" in text


def test_the_most_needed_words_can_be_read_from_two_metres():
    """Depth, count and the row's letter in capitals of at least 1/400 of two metres, 5 mm."""
    layout = make("leaf-crown").layout
    for page in card(layout, work_of(layout)):
        for label in labels(page):
            big = label.bold and (label.text.endswith(" mm") or label.text.startswith("×")
                                  or label.text.isupper())  # fmt: skip
            if big:
                assert label.size * CAP_HEIGHT >= 5.0, label.text


def test_string_marks_come_first():
    spoke = np.array([[0.0, 0.0], [0.0, 90.0]])
    layout = make_layout(petals(), marks=(spoke, -spoke))
    page = card(layout, work_of(layout))[0]
    told = words(page.items)
    assert told.index("mark 1 string line across (2") < told.index("A")
    marks = layer(page, "string lines")
    assert any(isinstance(i, Shape) and i.ink and i.ink.dash for i in walk([marks]))


def test_the_left_hand_gets_a_card_of_its_own():
    layout = make_layout([cut([[-5, 60], [-5, -60]], depth=9, blade=40, kind="expansion")])
    right, left = (
        words(card(layout, work_of(layout, hand))[0].items) for hand in ("right", "left")
    )
    assert any("to the right" in text for text in right)
    assert any("left hand" in text for text in left)
    assert right != left


def test_the_picture_turns_with_the_table():
    """A cut on the right of the pattern lies at the bottom once the table brings it there."""
    layout = make_layout([cut([[20, 0], [90, 0]], depth=9, kind="expansion")])
    made = work_of(layout)
    step = layer(card(layout, made)[0], "step")
    (line,) = next(i for i in walk([step]) if isinstance(i, Shape) and "cut" in i.data).lines
    box = np.vstack([i.lines[0] for i in walk([step]) if isinstance(i, Shape) and i.closed])
    middle = (box.min(axis=0) + box.max(axis=0)) / 2
    assert np.degrees(made.runs[0].first.table_rad) == pytest.approx(90, abs=2)
    assert line[:, 1].mean() > middle[1] + 8
    assert abs(line[:, 0].mean() - middle[0]) < 2.5


def test_many_different_steps_take_more_pages_and_lose_none():
    cuts = [
        cut([[0, 20 + k], [3 * k, 60]], word=f"line{k}", figure=k, family=k, depth=2 + 0.2 * k)
        for k in range(14)
    ]
    layout = make_layout(cuts)
    made = work_of(layout)
    pages = card(layout, made)
    told = [text for page in pages for text in words(page.items)]
    assert all(any(f"line{k}" in text for text in told) for k in range(14))
    assert len(pages) > 1
    assert joined(pages).width_mm == pytest.approx(210 * len(pages))


def test_a_loaf_that_is_late_says_so():
    hatch = [cut([[x, -30], [x, 30]], "hatch") for x in np.linspace(-40, 40, 200)]
    layout = make_layout(hatch)
    assert any(
        "chill the loaf first" in text for text in words(card(layout, work_of(layout))[0].items)
    )
    assert "chill the loaf first" in card_text(layout, work_of(layout))


def test_a_loaf_without_cuts_has_a_card_too():
    layout = make_layout([])
    (page,) = card(layout, work_of(layout))
    assert "Petals" in words(page.items)


def test_the_text_tells_the_same_steps():
    layout = make("leaf-crown").layout
    made = work_of(layout)
    text = card_text(layout, made)
    assert "mark 4 string lines across (8 spokes)" in text
    assert text.count("× 8, turn 45° clockwise each time") == sum(r.times == 8 for r in made.runs)
    assert text.index("LIGHT CUTS") < text.index("DEEP CUTS")
    assert "dip it in oil or water; never wipe it with a finger or cloth" in text
    assert "245 °C / 475 °F" in text and "COVERED POT" in text and "STONE, WITH STEAM" in text
    assert "Done: internal temperature 93–99 °C / 199–210 °F" in text


def test_an_unknown_paper_is_refused():
    layout = make_layout([])
    with pytest.raises(UsageError, match="not a paper"):
        card(layout, work_of(layout), paper="napkin")
