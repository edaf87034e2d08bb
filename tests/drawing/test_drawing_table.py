import pytest

from scorecraft.drawing.paper.block import gap, paragraph, stacked
from scorecraft.drawing.paper.rulers import rulers
from scorecraft.drawing.paper.table import Column, table
from scorecraft.drawing.picture import Label, Shape, line, walk
from scorecraft.drawing.text import width_mm

COLUMNS = [Column("no.", 8, "start"), Column("cut", 30, "start"), Column("length mm", 12)]


def labels(block):
    return [item for item in walk(block.items) if isinstance(item, Label)]


def test_cells_stay_within_their_columns():
    rows = [{"no.": "1", "cut": "a name far too long for its column", "length mm": "58"}] * 3
    block = table(COLUMNS, rows, size=3.2, row_height=6)
    for label in labels(block):
        left = label.at[0] - (width_mm(label.text, label.size) if label.anchor == "end" else 0)
        right = left + width_mm(label.text, label.size)
        assert left >= -1e-9 and right <= 50 + 1e-9
        assert 0 < label.at[1] < block.height
    assert any(label.text.endswith("…") for label in labels(block))


def test_rows_are_set_below_one_another_and_drawn_cells_move_along():
    mark = Shape((line(0, 0, 5, 0),))
    block = table(COLUMNS, [{"no.": "1"}, {"no.": "2", "cut": mark}], size=3, row_height=6)
    one, two = (label.at[1] for label in labels(block) if label.text in "12")
    assert two - one == pytest.approx(6)
    (drawn,) = [s for s in block.items if isinstance(s, Shape) and s.lines[0][1, 0] == 13]
    assert drawn.lines[0][0, 0] == 8


def test_blocks_are_stacked_by_their_heights():
    block = stacked([paragraph("one", 50, 3), gap(10), paragraph("two", 50, 3)])
    one, two = labels(block)
    assert two.at[1] - one.at[1] == 10 + paragraph("one", 50, 3).height
    (moved, _) = block.shifted(7, 8)
    assert moved.at == (7, one.at[1] + 8)


def test_the_rules_are_100_mm_and_4_in_long():
    spans = {}
    for item in walk(rulers().items):
        if isinstance(item, Shape):
            xs = [x for each in item.lines for x in each[:, 0]]
            spans.setdefault(round(max(xs) - min(xs), 6), item)
    assert set(spans) == {100.0, 101.6}
    assert any("100%" in label.text for label in labels(rulers()))
