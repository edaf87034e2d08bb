"""Reading measured openings: many ways to write them, and every bad row named."""

import math

import numpy as np
import pytest

from scorecraft.cuts import Cut, Layout
from scorecraft.designing import make
from scorecraft.errors import PatternError, Place, UsageError
from scorecraft.groups import groups
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf
from scorecraft.tune.measured import read_measured

LOAF = make_loaf("round", 200.0, None, 80.0)


def layout(*named):
    """A layout of one short cut a statement, by the line it stands in and its part."""
    cuts = [
        Cut(np.array([[0.0, 10.0 * k], [20.0, 10.0 * k]]), "leaf", part, k, line, 3.0, math.pi / 2,
            "decorative", Place("x", line, 1))
        for k, (line, part) in enumerate(named)
    ]  # fmt: skip
    return Layout("t", (), LOAF, Bake(), tuple(cuts))


TOLD = groups(layout((1, "midrib"), (1, "vein"), (2, "tip, left")))


def read(tmp_path, text, told=TOLD):
    path = tmp_path / "m.csv"
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return [(row.key, row.width_mm) for row in read_measured(path, told)]


@pytest.mark.parametrize(
    "text",
    [
        "leaf midrib,12.5\nleaf vein,8\n", "cut,width\nleaf midrib,12.5\nleaf vein,8\n",
        "leaf midrib;12,5\nleaf vein;8\n", "leaf midrib\t12.5\nLeaf  Vein\t8\n",
        "\ufeffleaf midrib,12.5\r\nleaf_vein,8\r\n",
        "# my loaf\nleaf midrib, 12.5 mm\n\nleaf vein , 8,\n",
        '"leaf midrib","12.5"\n"leaf vein","8"',
        "number,cut,width\n1,leaf midrib,12.5\n7,leaf vein,8\n",
        "no.;cut;mm\n1;leaf midrib;12,5\n2;leaf vein;8\n",
    ],
)  # fmt: skip
def test_all_usual_ways_to_write_a_table_are_read(tmp_path, text):
    assert read(tmp_path, text) == [("leaf midrib", 12.5), ("leaf vein", 8.0)]


def test_a_name_with_a_comma_is_quoted(tmp_path):
    assert read(tmp_path, '"leaf tip, left",4\n') == [("leaf tip, left", 4.0)]


def test_copies_of_a_cut_may_be_measured_one_by_one(tmp_path):
    rows = "leaf vein,10\nleaf vein,11\nleaf vein,9.5\n"
    assert [width for _, width in read(tmp_path, rows)] == [10.0, 11.0, 9.5]


def test_every_bad_row_is_named_with_its_line(tmp_path):
    rows = [
        "leaf vein,12", "leaf vain,3", "x,2", "leaf vein,wide", "leaf vein", "leaf vein,-4",
        "leaf vein,1e3", "leaf vein,nan", "leaf vein,200", "leaf vein,3,4",
        "leaf vein," + "9" * 999, "leaf midrib,5",
    ]  # fmt: skip
    with pytest.raises(PatternError) as caught:
        read(tmp_path, "\n".join(rows))
    assert [problem.place.line for problem in caught.value.problems] == list(range(2, 12))
    told = str(caught.value)
    assert 'no cut called "leaf vain"' in told and 'did you mean "leaf vein"' in told
    assert '"wide" is not a width in mm' in told and "this row has no width" in told


def test_a_number_alone_is_refused_with_the_name_to_write(tmp_path):
    """Numbers follow the order of cutting: in an edited pattern they stand for other cuts."""
    with pytest.raises(PatternError) as caught:
        read(tmp_path, "2,9\n8,9\n")
    first, second = caught.value.problems
    assert first.hint == "if it was the leaf vein, write leaf vein,9"
    assert '"leaf midrib"' in second.hint


def test_a_name_that_several_statements_make_must_tell_which(tmp_path):
    three = groups(layout((1, "vein"), (4, "vein"), (9, "vein")))
    with pytest.raises(PatternError) as caught:
        read(tmp_path, "leaf vein,9\n", three)
    (problem,) = caught.value.problems
    assert '"leaf vein 2 of 3" (line 4)' in problem.hint
    assert read(tmp_path, "leaf vein 2 of 3,9\n", three) == [("leaf vein 2 of 3", 9.0)]


def test_a_cut_whose_namesake_was_deleted_is_refused_not_taken_for_another(tmp_path):
    two = groups(layout((4, "vein"), (9, "vein")))
    with pytest.raises(PatternError, match='no cut called "leaf vein 2 of 3"'):
        read(tmp_path, "leaf vein 2 of 3,9\n", two)


def test_rows_of_a_pattern_mean_the_same_cuts_when_they_are_numbered_anew(tmp_path):
    """A light bar is cut before the deep leaves, a deep one after some of them."""
    text = """loaf round width 200mm height 85mm
knob deep 4mm min 2mm max 9mm
slash 120mm depth deep
around 4 radius 30mm:
    leaf 40mm width 12mm veins 2 depth 6mm
"""
    told = [make(text, knobs={"deep": depth}).groups for depth in ("2mm", "9mm")]
    numbers = [{group.key: group.number for group in groups} for groups in told]
    assert numbers[0].keys() == numbers[1].keys() and numbers[0] != numbers[1]
    rows = "number,cut,width\n4,slash,9\n3,leaf outline,11\n"
    assert read(tmp_path, rows, told[0]) == read(tmp_path, rows, told[1]) == [
        ("slash", 9.0), ("leaf outline", 11.0),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("data", "message"),
    [
        (b"", "holds no openings"), (b"cut,mm\n# none\n", "holds no openings"),
        (b"1,\xff\n", "not UTF-8"), (b"leaf vein,2\n" * 501, "are enough"),
        (b"1,2\n" * 300_000, "too large"),
    ],
)  # fmt: skip
def test_a_file_that_is_none_is_refused(tmp_path, data, message):
    with pytest.raises(UsageError, match=message):
        read(tmp_path, data)


def test_a_missing_file_is_told(tmp_path):
    with pytest.raises(UsageError, match="cannot read"):
        read_measured(tmp_path / "none.csv", TOLD)
