"""Reading measured openings: many ways to write them, and every bad row named."""

import pytest

from scorecraft.errors import PatternError, UsageError
from scorecraft.tune.measured import read_measured


def read(tmp_path, text, numbers=(1, 2, 3)):
    path = tmp_path / "m.csv"
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return [(row.number, row.width_mm) for row in read_measured(path, numbers)]


@pytest.mark.parametrize(
    "text",
    [
        "1,12.5\n2,8\n", "cut,width mm\n1,12.5\n2,8\n", "1;12,5\n2;8\n", "1\t12.5\n2\t8\n",
        "\ufeff1,12.5\r\n2,8\r\n", "# my loaf\n1, 12.5 mm\n\n2 , 8\n", '"1","12.5"\n"2","8"',
    ],
)  # fmt: skip
def test_all_usual_ways_to_write_a_table_are_read(tmp_path, text):
    assert read(tmp_path, text) == [(1, 12.5), (2, 8.0)]


def test_copies_of_a_cut_may_be_measured_one_by_one(tmp_path):
    assert read(tmp_path, "1,10\n1,11\n1,9.5\n") == [(1, 10.0), (1, 11.0), (1, 9.5)]


def test_every_bad_row_is_named_with_its_line(tmp_path):
    text = "1,12\n9,3\nx,2\n2,wide\n3\n2,-4\n1,1e3\n2,nan\n1,200\n2,3,4\n3,5\n"
    with pytest.raises(PatternError) as caught:
        read(tmp_path, text)
    assert [problem.place.line for problem in caught.value.problems] == [2, 3, 4, 5, 6, 7, 8, 9, 10]
    told = str(caught.value)
    assert "there is no cut 9" in told and "the guide numbers the cuts 1 to 3" in told
    assert '"wide" is no width in mm' in told and "this row has no width" in told


@pytest.mark.parametrize(
    ("data", "message"),
    [
        (b"", "holds no openings"), (b"cut,mm\n# none\n", "holds no openings"),
        (b"1,\xff\n", "not UTF-8"), (b"1,2\n" * 501, "are enough"),
        (b"1,2\n" * 300_000, "too large"),
    ],
)  # fmt: skip
def test_a_file_that_is_none_is_refused(tmp_path, data, message):
    with pytest.raises(UsageError, match=message):
        read(tmp_path, data)


def test_a_missing_file_is_told(tmp_path):
    with pytest.raises(UsageError, match="cannot read"):
        read_measured(tmp_path / "none.csv", (1,))
