"""Letters are those of the Hershey data set, as its package gives them (Hershey-Fonts 2.1).

Hershey, A. V.: Calligraphy for Computers, U.S. Naval Weapons Laboratory report 2101, 1967;
recalled, page not opened.
"""

import string

import numpy as np
import pytest
import shapely
from HersheyFonts import HersheyFonts

from scorecraft.motifs.letters import CAP, FONTS, letters

DOT_UNITS = 2.6
"""Dots are cut as ticks: shapes of the data no larger than this are left out."""


def source(letter, style):
    """The strokes of a letter in the data set, without dots, in its units, y down."""
    font = HersheyFonts()
    font.load_default_font(FONTS[style])
    found = [np.array(stroke, float) for stroke in font.strokes_for_text(letter)]
    return [line for line in found if np.ptp(line, axis=0).max() > DOT_UNITS]


def tick(line):
    """A dot as it is cut: one unit across and three high."""
    return len(line) == 2 and np.ptp(line, axis=0) == pytest.approx([1.0, 3.0])


@pytest.mark.parametrize("style", ["plain", "script"])
def test_every_letter_follows_the_strokes_of_the_data_set(style):
    for letter in string.ascii_letters + string.digits:
        data = source(letter, style)
        ours = [s.line for s in letters(text=letter, height=CAP, style=style, spacing=0.0)]
        ours = [line for line in ours if not tick(line)]
        theirs = shapely.MultiLineString([line * (1, -1) for line in data])
        mine = shapely.MultiLineString(ours)
        theirs = shapely.affinity.translate(
            theirs, mine.bounds[0] - theirs.bounds[0], mine.bounds[1] - theirs.bounds[1]
        )
        away = shapely.hausdorff_distance(mine, theirs, densify=0.1)
        assert away < 0.8, letter  # of 21 units: under 4 % of a capital's height
        assert mine.length == pytest.approx(theirs.length, rel=0.06), letter
        assert len(ours) <= sum(len(line) - 1 for line in data)
