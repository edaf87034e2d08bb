"""The figures with names of their own: as large as they say, and each a stroke a blade can make.

One file for all of them, since they keep the same promises.
"""

import importlib
from functools import cache

import numpy as np
import pytest

from scorecraft.checks import run
from scorecraft.expand import expand
from scorecraft.expand.read import own, read
from scorecraft.language.figure_words import FIGURES
from scorecraft.language.parse import parse
from scorecraft.language.words import WORDS

DRAWN = [word.name for word in FIGURES if word.name != "letters"]
LEAST_MM = 2.0
LEANING = {"feather", "branch", "vine", "moon", "pumpkin", "rose", "tulip"}
"""Figures whose halves differ."""


@cache
def strokes(name, *given):
    word = WORDS[name]
    values = read(word, (), None, parse(name).statements[0].place) | dict(given)
    return getattr(importlib.import_module(f"scorecraft.motifs.{name}"), name)(**own(word, values))


def points(name, *given):
    return np.concatenate([stroke.line for stroke in strokes(name, *given)])


@pytest.mark.parametrize("name", DRAWN)
def test_a_figure_is_as_large_as_its_keys_say(name):
    keys = {key.name for key in WORDS[name].keys}
    found = points(name)
    if name in ("branch", "wreath"):  # theirs are the sizes of their stems
        stems = np.concatenate([s.line for s in strokes(name) if s.part == "stem"])
        size = 54.0 if name == "wreath" else 90.0
        assert np.abs(np.hypot(*stems.T)).max() == pytest.approx(size, abs=0.05)
    elif "radius" in keys:
        bigger = points(name, ("radius", 100.0))
        assert np.hypot(*bigger.T).max() == pytest.approx(100.0, abs=0.1)
    elif name == "ladder":
        assert np.ptp(found, axis=0) == pytest.approx([30.0, 100.0], abs=0.6)
    else:
        given = (("width", 70.0), ("length", 80.0))
        assert np.ptp(points(name, *given), axis=0) == pytest.approx([70.0, 80.0], abs=0.1)


@pytest.mark.parametrize("name", DRAWN)
def test_its_origin_is_where_its_row_says(name):
    low, high = points(name)[:, 1].min(), points(name)[:, 1].max()
    if WORDS[name].origin == "base":
        assert low == pytest.approx(0, abs=0.05)
    else:
        assert low < 0 < high and abs(low + high) < 0.1 * (high - low)


@pytest.mark.parametrize("name", DRAWN)
def test_its_strokes_are_few_smooth_and_long_enough_for_a_blade(name):
    drawn = strokes(name)
    assert {stroke.part for stroke in drawn} == set(WORDS[name].parts)
    assert len(drawn) <= 60
    for stroke in drawn:
        steps = np.diff(stroke.line, axis=0)
        assert np.hypot(*steps.T).sum() > LEAST_MM
        ways = np.unwrap(np.arctan2(*steps.T))
        assert np.abs(np.diff(ways)).max(initial=0) < 0.7, stroke.part


@pytest.mark.parametrize("name", sorted(set(DRAWN) - LEANING))
def test_its_right_half_mirrors_its_left(name):
    lines = [stroke.line for stroke in strokes(name)]
    keys = {tuple(np.sort(np.round(line[[0, -1]], 3) + 0.0, axis=0).ravel()) for line in lines}
    over = {
        tuple(np.sort(np.round(line[[0, -1]] * (-1, 1), 3) + 0.0, axis=0).ravel()) for line in lines
    }
    assert keys == over


def test_a_branch_follows_its_points():
    way = ((0.0, 0.0), (30.0, 40.0), (0.0, 90.0))
    stem = strokes("branch", ("points", way))[0].line
    assert all(np.hypot(*(stem - point).T).min() < 1e-9 for point in way)
    assert len(strokes("branch", ("points", way), ("leaves", 3))) == 1 + 2 * 4


def test_counts_are_kept():
    assert len(strokes("web", ("spokes", 10), ("threads", 2))) == 30
    assert len(strokes("ladder", ("rungs", 3))) == 5
    assert len(strokes("pumpkin", ("ribs", 3))) == 2 * 3 + 3
    assert len(strokes("snow_star", ("arms", 5), ("branches", 2))) == 5 * (1 + 4 + 1)


@pytest.mark.parametrize("word", FIGURES, ids=lambda word: word.name)
def test_a_figure_as_it_comes_is_well_cut_on_a_loaf_of_180_mm(word):
    line = 'letters "R 24"' if word.name == "letters" else word.name
    text = f"loaf round width 180mm height 75mm\n{line}\n"
    layout = expand(parse(text), text)
    assert [told.message for told in run(layout) if told.check != "balance"] == []
