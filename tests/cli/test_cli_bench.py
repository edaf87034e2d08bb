"""`card` and `tune`: files of every form, refusals that write nothing, the log."""

import json

import pytest

MINE = (
    'title "Mine"\nloaf round width 220mm height 95mm\n'
    "slash 120mm depth 10mm\nat x 50mm:\n    slash 30mm depth 3mm\n"
)


@pytest.mark.parametrize(
    ("name", "start"), [("c.pdf", b"%PDF"), ("c.svg", b"<svg"), ("c.png", b"\x89PNG")]
)
def test_a_card_is_written_in_the_form_of_its_file(run, pattern, tmp_path, name, start):
    ran = run("card", pattern(MINE), "-o", name)
    assert ran.code == 0, ran.err
    assert (tmp_path / name).read_bytes().startswith(start)
    assert f"wrote {name}" in ran.err


def test_equal_loaves_in_a_row_are_told_with_a_box_to_tick_for_each(run, pattern):
    ran = run("card", pattern(MINE), "-o", "-", "--loaves", "12")
    assert "12 loaves take" in ran.out and ran.out.count("[ ]") == 12
    assert run("card", pattern(MINE), "-o", "-", "--loaves", "0").code == 2


def test_a_card_on_standard_output_is_text(run, pattern):
    ran = run("card", pattern(MINE), "-o", "-", "--hand", "left")
    assert ran.code == 0
    assert ran.out.startswith("Mine\n") and "left hand" in ran.out
    assert run("card", pattern(MINE), "-o", "c.txt").code == 0


def test_a_card_names_itself_after_the_pattern(run, pattern, tmp_path):
    assert run("card", pattern(MINE)).code == 0
    assert (tmp_path / "mine-card.pdf").exists()


@pytest.mark.parametrize(
    "options", [("--hand", "both"), ("-o", "c.gif"), ("--paper", "napkin", "-o", "c.svg")]
)
def test_a_card_that_cannot_be_is_refused_and_nothing_is_written(run, pattern, tmp_path, options):
    name = pattern(MINE)
    before = sorted(tmp_path.iterdir())
    assert run("card", name, *options).code == 2
    assert sorted(tmp_path.iterdir()) == before


def test_a_bake_is_fitted_logged_plotted_and_listed(run, pattern, tmp_path):
    (tmp_path / "m.csv").write_text("cut,mm\nslash 2 of 2,22\nslash 1 of 2,2.5\n")
    ran = run(
        "tune", pattern(MINE), "--measured", "m.csv", "--log", "b.jsonl", "--plot", "p.svg",
        "--note", "crisp",
    )  # fmt: skip
    assert ran.code == 0, ran.err
    assert "skin thickness" in ran.out
    assert "skin_mm = " in (tmp_path / "baker.toml").read_text()
    (line,) = (tmp_path / "b.jsonl").read_text().splitlines()
    assert json.loads(line)["note"] == "crisp"
    assert "<svg" in (tmp_path / "p.svg").read_text()
    listed = run("tune", "--list", "--log", "b.jsonl", "--plot", "all.svg")
    assert listed.code == 0 and "crisp" in listed.out
    assert "1 bake" in (tmp_path / "all.svg").read_text()


def test_bad_rows_are_named_and_nothing_is_written(run, pattern, tmp_path):
    (tmp_path / "m.csv").write_text("slash 2 of 2,22\n7,3\nslash,3\nslash 1 of 2,wide\n")
    name = pattern(MINE)
    before = sorted(tmp_path.iterdir())
    ran = run("tune", name, "--measured", "m.csv", "--log", "b.jsonl")
    assert ran.code == 2
    assert "m.csv:2:1: the number 7 alone" in ran.err and "m.csv:4:1" in ran.err
    assert sorted(tmp_path.iterdir()) == before


@pytest.mark.parametrize("arguments", [(), ("leaf-crown",), ("--list", "--log", "none.jsonl")])
def test_tune_says_what_it_needs(run, arguments):
    ran = run("tune", *arguments)
    assert ran.code == 2
    assert "tune" in ran.err
