"""Groups of cuts: counted by hand on a layout of two statements."""

import math

import numpy as np
import pytest

from scorecraft.cuts import Cut, Layout
from scorecraft.errors import Place
from scorecraft.groups import groups, spans
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf

LOAF = make_loaf("round", 200.0, None, 80.0)


def cut(family, part, length, depth=3.0, word="leaf"):
    line = np.array([[10.0, 0.0], [10.0 + length, 0.0]])
    place = Place("x", family, 1)
    return Cut(line, word, part, 0, family, depth, math.pi / 3, "decorative", place)


def layout(*cuts):
    return Layout("t", (), LOAF, Bake(), cuts)


def test_cuts_are_grouped_by_statement_and_part_in_order_of_appearance():
    made = layout(
        cut(1, "rib", 20),
        cut(1, "vein", 10),
        cut(1, "rib", 20),
        cut(2, "rib", 30),
        cut(1, "vein", 14, depth=5),
    )
    found = groups(made)
    assert [(each.number, each.name, each.cuts, each.count) for each in found] == [
        (1, "leaf rib", (0, 2), 2),
        (2, "leaf vein", (1, 4), 2),
        (3, "leaf rib", (3,), 1),
    ]
    assert found[1].depths_mm == (3, 5)
    assert found[1].depth_mm == 4
    assert found[0].blade_rad == pytest.approx(math.pi / 3)


def test_groups_are_numbered_in_the_order_of_cutting():
    made = layout(cut(1, "rib", 20), cut(1, "vein", 10), cut(2, "rib", 30), cut(1, "vein", 14))
    found = groups(made, [3, 2, 1])
    assert [(each.number, each.name, each.cuts) for each in found] == [
        (1, "leaf vein", (1, 3)),
        (2, "leaf rib", (2,)),
        (3, "leaf rib", (0,)),
    ]


def test_keys_count_equal_names_in_the_order_of_the_file_not_of_the_cutting():
    made = layout(cut(1, "rib", 20), cut(2, "rib", 30), cut(3, "vein", 9), cut(4, "rib", 10))
    for order in ([], [3, 2, 1, 0]):
        keys = {group.cuts: group.key for group in groups(made, order)}
        assert keys == {
            (0,): "leaf rib 1 of 3", (1,): "leaf rib 2 of 3", (2,): "leaf vein",
            (3,): "leaf rib 3 of 3",
        }  # fmt: skip


def test_a_key_does_not_pass_to_another_statement_when_one_is_deleted():
    before = groups(layout(cut(1, "rib", 20), cut(2, "rib", 30), cut(3, "rib", 10)))
    after = groups(layout(cut(2, "rib", 30), cut(3, "rib", 10)))
    assert not {group.key for group in before} & {group.key for group in after}


def test_one_statement_under_two_names_makes_two_groups():
    made = layout(cut(1, "rib", 20), cut(1, "rib", 20, word="tip leaf"))
    assert [group.key for group in groups(made)] == ["leaf rib", "tip leaf rib"]


def test_lengths_are_true_lengths_on_the_dough():
    """Along a ray the sheet keeps lengths, by its definition."""
    (found,) = groups(layout(cut(1, "vein", 10), cut(1, "vein", 30)))
    assert found.lengths_mm == pytest.approx((10, 30), abs=0.05)
    assert found.length_mm == pytest.approx(20, abs=0.05)


def test_no_cuts_make_no_groups():
    assert groups(layout()) == ()


def test_numbers_in_a_row_are_written_by_their_ends():
    assert [spans(each) for each in ([4], {2, 1}, [1, 2, 3], [9, 3, 4, 5, 1])] == [
        "4", "1, 2", "1–3", "1, 3–5, 9",
    ]  # fmt: skip
