"""A layout through the model: its sheet, and its cuts at any times their depths."""

import math
from dataclasses import replace

import numpy as np
import pytest

from scorecraft.cuts import Cut, Layout
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake, Growth
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.skin import Skin
from scorecraft.opening.predict import model_of, predict, sheet_of
from scorecraft.opening.stretch import tension

CUTS = tuple(
    Cut(np.array([[-40.0, y], [40.0, y]]), "slash", "slash", k, k, depth, math.radians(blade),
        "expansion", Place("made.score", 1, 1))
    for k, (y, depth, blade) in enumerate([(0.0, 5.0, 90.0), (50.0, 8.0, 40.0)])
)  # fmt: skip
LAYOUT = Layout("", (), make_loaf("round", 220.0, None, 95.0), Bake(), CUTS)


def test_all_cuts_so_many_times_as_deep_open_as_a_layout_of_such_depths():
    deep = replace(LAYOUT, cuts=tuple(replace(cut, depth_mm=1.2 * cut.depth_mm) for cut in CUTS))
    skin = Skin()
    ours = model_of(LAYOUT, skin, 4.0).opened(deeper=1.2)
    theirs = predict(deep, skin, panel_mm=4.0)
    np.testing.assert_allclose(ours.mouth_mm, theirs.mouth_mm, rtol=2e-3)
    assert ours.lift_mm[ours.line == 0].max() == 0 < ours.lift_mm[ours.line == 1].min()


def test_cuts_open_while_the_skin_is_soft_and_are_measured_by_all_the_growth():
    """The strain is that share of the growth; the work stored is summed over the dome here."""
    skin, grown = replace(Skin(), growth=0.8), Growth(LAYOUT.loaf, LAYOUT.bake)
    sheet = sheet_of(LAYOUT, skin)
    points = np.array([[0.0, 0.0], [60.0, 20.0]])
    soft = 0.8 * LAYOUT.bake.soft
    np.testing.assert_allclose(sheet.strain(points), soft * grown.at(points))
    assert (sheet.skin_mm, sheet.inside) == (skin.thickness_mm, skin.inside)
    places, areas = grown.patches
    assert sheet.area_mm2 == pytest.approx(areas.sum())
    strain = 0.8 * grown.at(places)
    density = (tension(strain) * strain * [1, 1, 2]).sum(axis=1) / 2
    assert sheet.strain.stored_mm2 == pytest.approx((density * areas).sum())
