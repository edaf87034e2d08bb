"""The table of prints: every row in every form, the same from command line, page and Python."""

import inspect
import subprocess
import sys

import pytest

from scorecraft import cli, design
from scorecraft.drawing.picture import words
from scorecraft.errors import UsageError
from scorecraft.prints import PRINTS
from scorecraft.prints.forms import encoded
from scorecraft.web.prints import printed

SLASH = 'title "One"\nloaf round width 120mm height 55mm\nslash 60mm depth 6mm\n'
STARTS = {
    "svg": b"<svg",
    "pdf": b"%PDF-",
    "png": b"\x89PNG",
    "jpg": b"\xff\xd8",
    "webp": b"RIFF",
    "dxf": b"999\nall lengths are millimetres",
    "txt": b"One\nRound loaf",
}
EACH = [(row.name, form) for row in PRINTS.values() for form in row.forms]
SMALL = {"bloom": {"pixels": "500"}}
"""Options that spare time."""


@pytest.fixture(scope="module")
def slash():
    return design(SLASH)


@pytest.mark.parametrize(("name", "form"), EACH)
def test_every_print_is_written_in_every_form(slash, tmp_path, name, form):
    made = slash.print_to(name, tmp_path / f"ours.{form}", **SMALL.get(name, {})).read_bytes()
    assert made.replace(b"\r\n", b"\n").startswith(STARTS[form])


@pytest.mark.parametrize("row", PRINTS.values(), ids=lambda row: row.name)
def test_python_and_command_line_write_the_same_bytes(slash, tmp_path, monkeypatch, row):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "one.score").write_text(SLASH)
    small = SMALL.get(row.name, {})
    form = "svg" if "svg" in row.forms else row.usual  # the quickest
    ours = slash.print_to(row.name, tmp_path / f"ours.{form}", **small).read_bytes()
    options = [part for key, value in small.items() for part in (f"--{key}", value)]
    theirs = f"theirs.{form}"
    assert cli.run([row.name, "one.score", "-q", "-o", theirs, *options]) == 0
    assert (tmp_path / theirs).read_bytes() == ours


@pytest.mark.parametrize("name", PRINTS)
def test_the_page_keeps_what_python_writes(slash, name):
    answer = printed(slash, {"what": name, "form": "svg", "paper": "A4"})
    row = PRINTS[name]
    paper = {"paper": "A4"} if "paper" in [option.key for option in row.options] else {}
    assert answer.body == encoded(slash.printed(name, "svg", **paper), "svg")


@pytest.mark.parametrize("row", PRINTS.values(), ids=lambda row: row.name)
def test_a_row_has_an_option_for_all_that_its_maker_takes(row):
    _, _, *taken = inspect.signature(row.make).parameters.values()
    named = {each.name for each in taken if each.kind is inspect.Parameter.KEYWORD_ONLY}
    known = {option.key for option in row.options}
    assert named <= known
    assert known == named or taken[-1].kind is inspect.Parameter.VAR_KEYWORD
    assert row.brief and row.help and all(option.help for option in row.options)


@pytest.mark.parametrize("row", PRINTS.values(), ids=lambda row: row.name)
def test_the_page_has_a_field_for_every_option_it_offers(row):
    for option in row.options:
        if option.on_page:
            assert option.kind != "choice" or option.choices
            if option.kind == "length":
                assert [f"{float(each):g}" for each in option.choices] == list(option.choices)
            assert option.label and option.label[0].isupper() and option.label[-1] != "."
    assert not row.on_page or "pdf" in row.forms


def test_the_table_loads_no_heavy_library():
    script = "import sys, scorecraft.prints; print(*sorted({m.split('.')[0] for m in sys.modules}))"
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    modules = set(done.stdout.split())
    assert "scorecraft" in modules and not modules & {"numpy", "shapely", "svgwrite", "click"}


@pytest.mark.parametrize(
    ("name", "form", "options", "told"),
    [
        ("poster", "pdf", {}, "there are: guide, card, stencil"),
        ("guide", "txt", {}, "unsupported file type"),
        ("drape", "dxf", {}, "unsupported file type"),
        ("guide", "pdf", {"slot_mm": 3.0}, 'the guide has no "slot_mm"'),
        ("stencil", "pdf", {"slot": 3.0}, "it takes: slot_mm"),
        ("stencil", "pdf", {"slot_mm": 70.0}, "use 0.8 mm to 40 mm"),
        ("bloom", "png", {"before": True, "tension": True}, "different pictures"),
        ("guide", "pdf", {"paper": "A9"}, "is not a paper"),
    ],
)
def test_what_is_not_there_is_refused_with_what_is(slash, name, form, options, told):
    with pytest.raises(UsageError) as refused:
        slash.printed(name, form, **options)
    assert told in str(refused.value)


def test_options_reach_the_print(slash):
    plain, wide = (slash.printed("stencil", "svg", slot_mm=each) for each in (2.0, 4.0))
    assert "Slots are 2.5 mm" in plain.pages[0].desc and "Slots are 5 mm" in wide.pages[0].desc
    assert slash.printed("stencil", "svg", cutter=True).flat
    large = design(SLASH, loaf="round width 300mm height 110mm")
    told = large.printed("guide", paper="A4")
    assert (len(told.pages) > 2, told.larger) == (True, "")
    assert f"on {len(told.pages)} pages" in told.sheets
    assert len(large.printed("guide", "svg").pages) == 1


def test_practice_sheets_are_for_the_hand_that_is_asked_for():
    slanted = design(SLASH.replace("depth 6mm", "depth 9mm blade 40deg"))
    for hand, other in (("right", "left"), ("left", "right")):
        text = " ".join(
            word
            for page in slanted.printed("practise", hand=hand).pages
            for word in words(page.items)
        )
        assert f"handle to the {hand}" in text and f"handle to the {other}" not in text
