"""Changes to the head of a pattern touch their own place and nothing else."""

import pytest

from scorecraft.editing.head import with_keys, with_knob
from scorecraft.errors import ScorecraftError
from scorecraft.language.parse import parse
from scorecraft.shelf import from_file, shelf

TEXT = (
    '# mine\ntitle "loaf round" # not this\n'
    "loaf  round width 220mm   height (9cm + 5mm)  # my tin\n"
    "\nknob leaves 8 min 5 max 12 # many\nknob depth -5mm\nlet loaf_like 3\n"
    "around leaves:\n    leaf length 50mm\n"
)


def test_a_key_changes_in_its_own_place():
    changed = with_keys(TEXT, "loaf", {"width": "240mm", "shape": "oval", "length": "384mm"})
    line = "loaf  oval width 240mm   height (9cm + 5mm) length 384mm  # my tin"
    assert changed == TEXT.replace(TEXT.splitlines()[2], line)


def test_a_statement_is_found_where_it_stands_now():
    moved = "# one\n# two\n" + TEXT
    assert with_keys(moved, "loaf", {"shape": "oval"}) == moved.replace("loaf  round", "loaf  oval")


@pytest.mark.parametrize("slip", ["slush 30mm", 'leaf "', "   knob x 3", "around 8", "leaf )"])
def test_slips_elsewhere_do_not_matter(slip):
    broken = slip + "\n" + TEXT + slip + "\n"
    wanted = broken.replace("220mm", "300mm")
    assert with_keys(broken, "loaf", {"width": "300mm"}) == wanted
    assert with_knob(broken, "leaves", "9") == broken.replace("leaves 8", "leaves 9")


def test_a_key_is_taken_away_with_its_value():
    changed = with_keys(TEXT, "loaf", {"width": "", "height": "", "dough": "900g"})
    assert changed.splitlines()[2] == "loaf  round dough 900g  # my tin"
    assert with_keys("loaf width 20mm\n", "loaf", {"shape": "oval"}) == "loaf oval width 20mm\n"


def test_a_missing_statement_comes_below_what_is_before_it_by_habit():
    assert with_keys(TEXT, "bake", {"steam": "no"}).splitlines()[3] == "bake steam no"
    bench = with_keys(TEXT, "bench", {"hand": "left"})
    assert bench.splitlines()[3] == "bench hand left"
    assert with_keys("# first\nslash 9mm\n", "bake", {"spring": "2"}) == (
        "# first\nbake spring 2\nslash 9mm\n"
    )
    assert with_keys("", "loaf", {"shape": "round", "width": "200mm"}) == "loaf round width 200mm\n"


def test_a_knob_keeps_all_but_its_value():
    assert with_knob(TEXT, "leaves", "9") == TEXT.replace("knob leaves 8", "knob leaves 9")
    assert with_knob(TEXT, "depth", "-6mm") == TEXT.replace("-5mm", "-6mm")
    assert with_knob("knob a value 8\n", "a", "9") == "knob a value 9\n"


@pytest.mark.parametrize("ending", ["\r\n", "\r", "\n"])
def test_breaks_and_byte_order_marks_stay(ending):
    text = "\ufeff" + TEXT.replace("\n", ending)
    assert with_keys(text, "loaf", {"width": "300mm"}) == text.replace("220mm", "300mm")
    added = with_keys(text, "bake", {"steam": "no"})
    assert added == text.replace("# my tin", f"# my tin{ending}bake steam no")


@pytest.mark.parametrize(
    ("text", "word", "keys", "message"),
    [
        (TEXT + "loaf round width 9cm\n", "loaf", {"width": "9cm"}, "a second"),
        ("loaf round width 22\n", "loaf", {"height": "9cm"}, "width"),
        ("loaf round widht 22mm\n", "loaf", {"height": "9cm"}, "widht"),
        (TEXT, "bake", {"spring": "5"}, "spring"),
        (TEXT, "loaf", {"width": "-5mm"}, "width"),
        (TEXT, "loaf", {"width": "9cm # 3"}, "its own place"),
        (TEXT, "loaf", {"width": "9cm length 8cm"}, "its own place"),
    ],
)
def test_what_cannot_be_placed_for_sure_is_refused(text, word, keys, message):
    with pytest.raises(ScorecraftError, match=message) as told:
        with_keys(text, word, keys)
    assert told.value.place.line >= 1


@pytest.mark.parametrize(
    ("text", "name", "value"),
    [
        ("knob a (3 + b)\n", "a", "5"),
        ("knob a 3\n", "b", "5"),
        ("knob a 3\nknob a 4\n", "a", "5"),
        ("knob a 3 mni 2\n", "a", "5"),
        ("knob a 3\n", "a", "(5 + x)"),
        ("knob a 3\n", "a", "5 min 2"),
        ("knob a 3 min 2\n", "a", "5 # x"),
    ],
)
def test_a_knob_that_cannot_be_turned_is_refused(text, name, value):
    with pytest.raises(ScorecraftError):
        with_knob(text, name, value)


@pytest.mark.parametrize("name", shelf())
def test_every_shipped_pattern_can_be_changed_and_says_else_the_same(name):
    text = from_file(shelf()[name]).text
    changed = with_keys(text, "bake", {"spring": "1.7"})
    before = [each for each in parse(text).statements if each.word != "bake"]
    assert [each for each in parse(changed).statements if each.word != "bake"] == before
    for knob in [each for each in parse(text).statements if each.word == "knob"]:
        value = str(knob.get("value").value)
        assert parse(with_knob(text, str(knob.get("name").value), value)) == parse(text)
