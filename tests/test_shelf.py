"""Where patterns come from, and what is said when they do not."""

import pytest

from scorecraft.errors import UsageError
from scorecraft.language.words import WORDS
from scorecraft.shelf import FIRST, LEVELS, SHOW, find_source, shelf
from scorecraft.shelf_list import listed

FORMS = WORDS["loaf"].key("shape").choices
COMMENTED = sorted(shelf().items())


def test_a_text_of_several_lines_is_itself():
    assert find_source("loaf round\nslash 3mm").text == "loaf round\nslash 3mm"


def test_a_shipped_name_and_a_file(tmp_path):
    shipped = find_source("leaf-crown")
    assert shipped.name == "leaf-crown.score" and "Leaf crown" in shipped.text
    path = tmp_path / "mine.score"
    path.write_text(shipped.text)
    own = find_source(path)
    assert own.text == shipped.text and own.folder == tmp_path


def test_a_file_beats_a_shipped_name(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "leaf-crown").write_text("# mine\n")
    assert find_source("leaf-crown").text == "# mine\n"


def test_a_byte_that_is_not_utf8_is_told_with_its_place(tmp_path):
    path = tmp_path / "a.score"
    path.write_bytes('title "é"\nslash '.encode() + b"\xe9mm\n")
    with pytest.raises(UsageError, match="not UTF-8") as caught:
        find_source(path)
    assert (caught.value.place.line, caught.value.place.column) == (2, 7)


def test_an_unreadable_file_is_told(tmp_path):
    with pytest.raises(UsageError, match="no such file"):
        find_source(tmp_path / "none.score")
    with pytest.raises(UsageError, match="no shipped pattern") as caught:
        find_source("swril")
    assert caught.value.hint == 'did you mean "swirl"?'


@pytest.mark.parametrize(("name", "path"), COMMENTED, ids=[name for name, _ in COMMENTED])
def test_every_shipped_pattern_opens_with_what_it_is_for(name, path):
    text = path.read_text(encoding="utf-8")
    head = text.split("title", 1)[0]
    assert head.startswith("# ")
    assert "expansion cut" in head.replace("\n# ", " ")


def test_every_level_is_told_of_a_pattern_that_is_there():
    rows = listed()
    assert sorted(row.name for row in rows) == list(shelf()) and len(rows) >= 40
    assert set(FIRST) | set(SHOW) <= set(shelf()) and not set(FIRST) & set(SHOW)
    ordered = [(row.shape, LEVELS.index(row.level)) for row in rows]
    assert ordered == sorted(ordered, key=lambda each: (FORMS.index(each[0]), each[1]))
    assert {(row.shape, row.level) for row in rows} >= {("round", level) for level in LEVELS}


def test_no_name_at_all_is_told():
    with pytest.raises(UsageError, match="no pattern is named"):
        find_source("")


def test_a_file_may_have_a_line_break_in_its_name(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "two\nlines.score").write_text("# mine\n")
    assert find_source("two\nlines.score").text == "# mine\n"
    assert find_source("slash\n" * 2000).text == "slash\n" * 2000


def test_closed_standard_input_is_told(monkeypatch):
    monkeypatch.setattr("sys.stdin", None)
    with pytest.raises(UsageError, match="no standard input"):
        find_source("-")
