"""Guides of the shelf: words large enough for the bench, none on a line or on another."""

import numpy as np
import pytest
import shapely
from support.guides import guide_of
from support.shelf_designs import some

from scorecraft.designing import make
from scorecraft.drawing.label_box import label_box
from scorecraft.drawing.picture import BLACK, Label, Layer, Shape, walk
from scorecraft.drawing.svg import svg

NINE_PT = 9 * 25.4 / 72
PAPERS = (None, "A4")


SMALL_LOAF = "round width 180mm height 80mm"
"""The largest round loaf whose guide fits on one A4, its words below it."""


@pytest.fixture(scope="module", params=[*some(0, 6), "leaf-crown small"])
def guides(request):
    """The pages of a shipped pattern's guide on its smallest paper and on sheets of A4."""
    name, _, small = request.param.partition(" ")
    layout = make(name, loaf=SMALL_LOAF if small else None).layout
    widths = [(3.0, 5.0)] * len(layout.cuts)
    verdict = "Enough room to spring: the cuts absorb 36% of the oven spring."
    return [
        page
        for paper in PAPERS
        for page in guide_of(layout, paper=paper, opening_mm=widths, verdict=verdict)
    ]


def named(page, *names):
    return [item for item in walk(page.items) if isinstance(item, Layer) and item.name in names]


def labels_of(items):
    return [item for item in walk(items) if isinstance(item, Label)]


def strings_of(items):
    return [
        shapely.linestrings(np.vstack([line, line[:1]]) if item.closed else line)
        for item in walk(items)
        if isinstance(item, Shape) and (item.ink or item.fill == BLACK)
        for line in item.lines
        if len(line) > 1
    ]


def boxes_of(labels):
    return np.array([shapely.Polygon(label_box(each, descent=0.0)) for each in labels])


def test_no_label_lies_on_a_line_on_its_leader_or_on_another_label(guides):
    for page in guides:
        items = named(page, "plan") if named(page, "foot") else page.items
        labels = [each for each in labels_of(items) if each.text.strip()]
        boxes, lines = boxes_of(labels), strings_of(items)
        pairs = shapely.STRtree(boxes).query(boxes, predicate="intersects").T
        assert [(labels[i].text, labels[j].text) for i, j in pairs if i < j] == []
        hit = shapely.STRtree(lines).query(boxes, predicate="intersects")[0]
        assert {labels[i].text for i in hit} == set()


def test_numbers_keep_off_their_leaders(guides):
    for page in guides:
        for layer in named(page, "numbers"):
            boxes = boxes_of(labels_of(layer.items))
            lines = np.array(strings_of(layer.items))
            assert len(lines) == 2 * len(boxes) or named(page, "foot")
            assert shapely.distance(boxes[:, None], lines[None, :]).min(initial=np.inf) >= 0.5


def test_words_read_at_the_bench_are_nine_points_or_more(guides):
    for page in guides:
        if named(page, "foot"):
            continue
        layers = named(page, "words", "table", "key", "title")
        assert layers
        small = [each for each in labels_of(layers) if each.size < NINE_PT]
        assert {each.text for each in small if not small_print(each, page)} == set()


def small_print(label, page):
    """Tell the cautions and the rules to measure: they stand below everything else."""
    (start,) = [each for each in labels_of(page.items) if each.text.startswith("Measure this rule")]
    return label.at[1] >= start.at[1] - 1e-6


def test_no_print_holds_an_empty_path(guides):
    for page in guides:
        paths = svg(page).split("<path")[1:]
        assert paths and all(' d="M' in each.split(">")[0] for each in paths)
