"""`bloom`: files by suffix, its pictures, its refusals."""

import re

import pytest

SLASH = 'title "One"\nloaf round width 120mm height 55mm\nslash 60mm depth 8mm blade 35deg\n'
SMALL = ("-o", "-", "--pixels", "500")


@pytest.mark.parametrize(
    ("name", "start"), [("b.svg", b"<svg"), ("b.png", b"\x89PNG"), ("b.jpg", b"\xff\xd8")]
)
def test_the_suffix_says_the_form(run, pattern, tmp_path, name, start):
    assert run("bloom", pattern(SLASH), "-o", name, "-q", "--pixels", "500").err == ""
    assert (tmp_path / name).read_bytes().startswith(start)


@pytest.mark.parametrize(
    ("options", "name"),
    [
        ([], "mine-bloom.png"),
        (["--tension"], "mine-tension.png"),
        (["--proofed", "--view", "front"], "mine-proofed.png"),
    ],
)
def test_the_name_tells_what_is_drawn(run, pattern, tmp_path, options, name):
    ran = run("bloom", pattern(SLASH), *options, "--pixels", "500")
    assert (ran.code, ran.err.strip()) == (0, f"wrote {name}")
    assert (tmp_path / name).exists()


def test_before_shows_two_loaves(run, pattern):
    ran = run("bloom", pattern(SLASH), "--before", *SMALL)
    assert ran.code == 0
    assert "scored, 120 mm" in ran.out and "baked (model estimate), 131 mm" in ran.out


def test_another_bake_opens_the_cuts_wider(run, pattern):
    def width(spring):
        out = run("bloom", pattern(SLASH), *SMALL, "--bake", f"spring {spring}").out
        (said,) = re.findall(r"slash: opens (\d+) mm", out)
        return int(said)

    assert 0 < width(1.1) < width(1.4) < width(1.8)


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (["--view", "back"], 'viewed from "back"'),
        (["--before", "--tension"], "different pictures"),
        (["-o", "b.gif"], "unsupported file type"),
    ],
)
def test_wishes_that_cannot_be_met_exit_2_and_write_nothing(run, pattern, tmp_path, options, says):
    ran = run("bloom", pattern(SLASH), *options)
    assert ran.code == 2 and says in ran.err
    assert sorted(each.name for each in tmp_path.iterdir()) == ["mine.score"]
