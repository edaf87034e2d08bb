"""The rest of the command line: help, version, list, new, words, and what loads when."""

import re
import shlex
import subprocess
import sys
import tomllib
from pathlib import Path

import click
import numpy as np
import pytest

from scorecraft import __version__, cli, design, practice
from scorecraft.checks import CHECKS
from scorecraft.cli import telling
from scorecraft.language.words import ATTRIBUTES, WORDS
from scorecraft.loaf import forms
from scorecraft.prints import PRINTS
from scorecraft.shelf import shelf


def test_help_names_every_command(run):
    ran = run("--help")
    assert ran.code == 0
    for name in cli.commands():
        assert f"  {name} " in ran.out


def test_help_and_package_say_the_same_in_one_line(run):
    project = tomllib.loads((Path(__file__).parents[2] / "pyproject.toml").read_text())["project"]
    said = " ".join(run("--help").out.split())
    assert f"{project['description']}. Options" in said
    assert "can rise freely" in said


def test_help_goes_the_way_of_a_baker(run):
    told = run("--help").out
    way = [told.index(f"\n  {name} ") for name in ("page", "new", "check", "guide", "card", "tune")]
    assert way == sorted(way)
    assert set(cli.commands()) >= set(PRINTS)


@pytest.mark.parametrize("name", cli.commands())
def test_every_command_explains_itself_with_one_example_that_can_be_typed(run, name):
    ran = run(name, "--help")
    assert ran.code == 0 and "Usage: scorecraft " + name in ran.out
    said = " ".join(ran.out.split())
    assert said.count("Example: ") == 1
    program, called, *arguments = shlex.split(said.rpartition("Example: ")[2])
    assert (program, called) == ("scorecraft", name)
    command = cli.cli.get_command(click.Context(cli.cli), name)
    command.make_context(name, arguments)


def test_version(run):
    assert run("--version").out == f"scorecraft, version {__version__}\n"


def test_what_is_new_is_shown_by_version_this_one_first(run):
    ran = run("--changes")
    assert ran.code == 0
    versions = [row[3:] for row in ran.out.splitlines() if row.startswith("## ")]
    assert versions == sorted(versions, reverse=True) and versions[0] == __version__


def loaded(code: str) -> set[str]:
    """Run code in a new Python; give the top modules it loaded."""
    script = (
        f"import sys\n{code}\nprint(' '.join(sorted({{m.split('.')[0] for m in sys.modules}})))"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    return set(done.stdout.splitlines()[-1].split())


HEAVY = {"numpy", "scipy", "shapely", "cairosvg", "fpdf", "svgwrite", "fontTools", "flask", "pypdf"}


@pytest.mark.parametrize("arguments", [["--help"], ["guide", "--help"], ["words", "leaf"]])
def test_help_loads_no_heavy_library(arguments):
    modules = loaded(f"from scorecraft import cli\ncli.run({arguments!r})")
    assert "click" in modules
    assert not modules & HEAVY


def test_check_needs_no_library_for_printing():
    modules = loaded("from scorecraft import cli\ncli.run(['check', 'leaf-crown', '-q'])")
    assert "numpy" in modules
    assert not modules & {"cairosvg", "fpdf", "svgwrite", "fontTools", "flask", "pypdf"}


def test_without_cairo_all_forms_are_written(run, tmp_path, without_cairo):
    for name, start in (("g.svg", b"<svg"), ("g.pdf", b"%PDF-"), ("g.png", b"\x89PNG")):
        assert run("guide", "roll-cross", "-q", "-o", name).code == 0
        assert (tmp_path / name).read_bytes().startswith(start)


@pytest.mark.parametrize("quiet", [True, False])
def test_what_takes_long_says_that_it_goes_on(run, monkeypatch, quiet):
    class AtOnce:
        def __init__(self, seconds, function, arguments, options):
            assert seconds > 1
            self.start = lambda: function(*arguments, **options)
            self.cancel = lambda: None

    monkeypatch.setattr("scorecraft.cli.output.Timer", AtOnce)
    said = run("check", "one-slash", *(["-q"] if quiet else [])).err
    assert said == ("" if quiet else f"{telling.PREDICTING}\n")


def test_an_internal_error_is_one_line_and_exit_3(run, monkeypatch):
    def broken(*arguments, **options):
        raise RuntimeError("the oven is off")

    monkeypatch.setattr("scorecraft.designing.make", broken)
    ran = run("check", "leaf-crown")
    assert ran.code == 3
    assert ran.err == (
        "internal error: RuntimeError: the oven is off (add --debug before the command)\n"
    )


def test_list_shows_every_shipped_pattern_with_title_and_loaf(run):
    lines = run("list").out.splitlines()
    rows = [line for line in lines if line.startswith("  ")]
    assert sorted(line.split()[0] for line in rows) == list(shelf())
    assert lines.index("Round loaves") < lines.index("Oval loaves")
    row = next(line for line in rows if "leaf-crown" in line)
    assert "Leaf crown" in row and row.endswith("a show piece")


def test_new_starts_a_pattern_and_never_writes_over_one(run, tmp_path):
    assert run("new", "mine").code == 0
    text = (tmp_path / "mine.score").read_text()
    assert "loaf round" in text
    assert run("check", "mine.score").code == 0
    (tmp_path / "mine.score").write_text("kept")
    again = run("new", "mine")
    assert again.code == 2 and "already exists" in again.err
    assert (tmp_path / "mine.score").read_text() == "kept"
    assert run("new", "other", "--like", "leaf-crwn").code == 2


def test_words_are_listed_once_by_what_one_wants_to_do(run):
    """Every word of the language, every key of a cut and every check, under a plain heading."""
    told = run("words").out
    listed = re.findall(r"^  (\w+) ", told, re.M)
    keys = [key.name for key in ATTRIBUTES]
    assert sorted(listed) == sorted([*WORDS, *keys, *CHECKS])
    sections = dict(part.split("\n", 1) for part in told.split("\n\n") if "\n" in part)
    for heading, word in (
        ("Measure your loaf", "loaf"),
        ("Draw a figure", "leaf"),
        ("Place cuts", "at"),
        ("Repeat and mirror", "around"),
        ("Fill an area", "hatch"),
        ("Adjust with knobs", "knob"),
        ("Tell the dough, the oven and the bench", "bake"),
    ):
        assert f"  {word} " in sections[heading]
    assert "scorecraft words --all" in told.splitlines()[-1]


def test_words_explains_keys_of_cuts_and_checks_too(run):
    depth = run("words", "depth").out
    assert (
        "depth, of a cut: how deep" in depth and f"depth, a check: {CHECKS['depth'].says}" in depth
    )
    assert run("words", "bench_time").out.startswith("bench_time, a check: ")
    assert run("words", "tray").out.startswith("Tray: The row of figures")
    assert run("words", "bridge").out.startswith("Bridge: A strip left across a slot")
    fill = run("words", "fill").out
    assert fill.startswith("fill: fills a region") and "\nFilled figure: In a stencil" in fill
    assert 'did you mean "blade"?' in run("words", "blde").err


def test_words_prints_all_words_or_one(run):
    everything = run("words", "--all").out
    for name in WORDS:
        assert f"\n{name}: " in everything
    leaf = run("words", "leaf").out
    assert leaf.startswith("leaf: ") and "vein_depth" in leaf and "for example:" in leaf
    wrong = run("words", "leef")
    assert wrong.code == 2 and 'did you mean "leaf"?' in wrong.err


def test_rules_prints_every_rule_with_its_source_or_those_about_a_word(run):
    everything = run("rules")
    assert everything.code == 0
    said = " ".join(everything.out.split())
    rules = [*practice.table(), *forms.table()]
    for subject, rule in rules:
        assert f"{subject}:" in said and " ".join(rule.says.split()) in said
        assert rule.source and (rule.source == practice.COMMON or rule.source in said)
    assert len(rules) == everything.out.count("\n  ") - everything.out.count("\n   ")
    some = run("rules", "steam").out
    assert "source: that steam delays setting" in some and "slots" not in some
    assert "12 min" in some and "stencil" not in some
    wrong = run("rules", "zebra")
    assert wrong.code == 2 and 'no rule mentions "zebra"' in wrong.err


DRAWN = [w for w in WORDS.values() if w.group not in ("header", "rule") and w.name != "trace"]


@pytest.mark.parametrize("word", DRAWN, ids=lambda w: w.name)
def test_every_word_that_draws_has_an_example_that_fits_the_loaf(word):
    made = design(f"loaf round width 220mm height 95mm\n{word.example}\n")
    assert made.cuts
    reach = float(made.layout.loaf.reach(0.0))
    assert all(np.hypot(*cut.line.T).max() < reach for cut in made.cuts)


def test_a_word_can_be_drawn(run, tmp_path):
    assert run("words", "leaf", "-o", "leaf.svg").code == 0
    assert "<svg" in (tmp_path / "leaf.svg").read_text()
    assert run("words", "title", "-o", "x.svg").code == 2
    assert run("words", "-o", "x.svg").code == 2
