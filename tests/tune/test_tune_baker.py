"""baker.toml: what is written is read back, and nothing else is believed."""

import os
import tomllib

import numpy as np
import pytest

from scorecraft.errors import UsageError
from scorecraft.practice import INSIDE_PER_SKIN, SKIN_MM, SKIN_OFF
from scorecraft.tune.baker import Baker, baker_of, baker_text, quoted, read_baker
from scorecraft.tune.fit import Bounds, Fit


def written(tmp_path, text):
    path = tmp_path / "baker.toml"
    path.write_text(text, encoding="utf-8")
    return path


@pytest.mark.parametrize("growth", [None, (0.8, 1.6)])
def test_a_baker_is_read_back_as_written(tmp_path, growth):
    baker = Baker(11.25, (9.5, 14.125), 1.1 if growth else 1.0, growth, 0.9, True, 12,
                  'odd "name"\\\n\x07é', "2026-01-02", 0.07, growth and (0.02, 0.1))  # fmt: skip
    assert read_baker(written(tmp_path, baker_text(baker))) == baker


@pytest.mark.parametrize("text", ["plain", 'a "b" \\ c', "tab\tnew\nline", "\x00\x1f\x7f", "ü🥖"])
def test_a_quoted_text_is_what_another_reader_reads(text):
    assert tomllib.loads(f"a = {quoted(text)}")["a"] == text


def test_a_fit_becomes_a_baker():
    zero = np.zeros(7)
    skin, growth = Bounds(14.0, 10.0, 15.0), Bounds(1.2, 1.0, 1.4)
    known = Fit(skin, growth, zero, zero, 1.0, 0.9, settled=True)
    baker = baker_of(known, pattern="sun", date="2026-01-02")
    assert (baker.skin_mm, baker.growth, baker.openings) == (14.0, 1.2, 7)
    assert (baker.skin_bounds_mm, baker.growth_bounds) == ((10.0, 15.0), (1.0, 1.4))


def test_a_fit_that_settles_nothing_leaves_what_is_usual_and_says_so(tmp_path):
    zero = np.zeros(2)
    doubtful = Fit(Bounds(35.0, 8.0, 40.0), Bounds(1.5, 0.4, 3.0), zero, zero, 1.0, 0.9, False)
    baker = baker_of(doubtful, pattern="sun", date="2026-01-02")
    assert (baker.skin_mm, baker.growth) == (SKIN_MM.value, 1.0)
    text = baker_text(baker)
    assert "settled = false" in text and "measure 4 openings or more" in text
    assert read_baker(written(tmp_path, text)) == baker


@pytest.mark.parametrize(
    ("text", "skin"),
    [
        ("skin_mm = 35\nskin_bounds_mm = [20, 40]\nopenings = 2\n", SKIN_MM.value),
        ("skin_mm = 35\nskin_bounds_mm = [20, 40]\nopenings = 9\n", SKIN_MM.value),
        ("skin_mm = 9\nskin_bounds_mm = [8, 10]\nopenings = 2\n", SKIN_MM.value),
        ("skin_mm = 9\nskin_bounds_mm = [8, 10]\nopenings = 9\n", 9),
        ("skin_mm = 9\nskin_bounds_mm = [8, 10]\nopenings = 9\nsettled = false\n", SKIN_MM.value),
        ("skin_mm = 9\ngrowth = 1.3\n", 9),
    ],
)
def test_files_of_before_are_read_by_what_they_say_of_their_openings(tmp_path, text, skin):
    baker = read_baker(written(tmp_path, text))
    assert baker.skin_mm == skin
    assert baker.settled == (skin == 9)
    assert baker.growth == (1.3 if "1.3" in text else 1.0)


def test_a_short_file_by_hand_is_enough(tmp_path):
    assert read_baker(written(tmp_path, "skin_mm = 10\n")).skin_bounds_mm == (10, 10)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", "no number for skin_mm"), ("skin_mm = 'thick'", "no number for skin_mm"),
        ("skin_mm = true", "no number for skin_mm"), ("skin_mm = nan", "out of range"),
        ("skin_mm = 500", "out of range"), ("skin_mm = 12\ngrowth = -1", "out of range"),
        ("skin_mm = 12\nskin_bounds_mm = [1]", "not a pair"), ("skin_mm", "not a baker file"),
        ("skin_mm = 12\ngrowth_bounds = ['a', 2]", "not a pair"),
        ("skin_mm = 12\nskin_bounds_mm = [9, nan]", "not a pair"),
        ("skin_mm = 12\nskin_bounds_mm = [true, 9]", "not a pair"),
        ("skin_mm = 12\nskin_bounds_mm = [9, 1e999]", "not a pair"),
        ("skin_mm = 12\nskin_bounds_mm = [14, 9]", "not a pair"),
        (f"skin_mm = 12\nskin_bounds_mm = [9, 0x{'f' * 300}]", "not a pair"),
        (f"skin_mm = {'9' * 400}", "out of range"), (f"skin_mm = 0x{'f' * 9000}", "out of range"),
        (f"skin_mm = {'9' * 9000}", "not a baker file"), ("skin_mm = 1e999", "out of range"),
        (f"skin_mm = 12\na = {'[' * 40_000}", "not a baker file"),
        (f"skin_mm = 12\na = {'{b=' * 30_000}", "not a baker file"),
        ("#" * 200_000, "too large to be a baker file"),
    ],
)  # fmt: skip
def test_a_file_that_is_no_baker_is_refused(tmp_path, text, message):
    with pytest.raises(UsageError, match=message):
        read_baker(written(tmp_path, text))


def test_a_byte_order_mark_is_no_fault(tmp_path):
    assert read_baker(written(tmp_path, "\ufeffskin_mm = 10\r\n")).skin_mm == 10


@pytest.mark.skipif(os.name != "posix", reason="devices of POSIX")
@pytest.mark.parametrize("path", ["/dev/null", "/dev/zero", "a\0b"])
def test_what_is_no_file_on_the_disk_is_refused(path):
    with pytest.raises(UsageError, match=r"no file can be called|not a file on"):
        read_baker(path)


def test_a_missing_baker_is_told(tmp_path):
    with pytest.raises(UsageError, match="cannot read"):
        read_baker(tmp_path / "none.toml")


def test_a_file_from_before_there_was_an_inside_has_the_usual_one(tmp_path):
    baker = read_baker(written(tmp_path, "skin_mm = 10\n"))
    assert baker.inside == INSIDE_PER_SKIN.value


def test_the_bounds_of_a_baker_tell_how_unsure_its_numbers_are():
    """Of a normal 5 % lie above the mean and 1.645 standard deviations (by definition)."""
    baker = Baker(12.0, (12.0 / 1.2, 12.0 * 1.2), growth=1.0, growth_bounds=(0.8, 1.25), sure=0.9)
    assert baker.skin_unsure == pytest.approx(np.log(1.2) / 1.645, rel=1e-3)
    assert baker.growth_unsure == pytest.approx(np.log(1.25) / 1.645, rel=1e-3)
    short = Baker(12.0, (12.0, 12.0))
    assert (short.skin_unsure, short.growth_unsure) == (SKIN_OFF.value, 0.0)
