"""The stated fit holds: paper and dough measured ring by ring, on loaves of all forms."""

import numpy as np
import pytest

from scorecraft.cuts import Cut, Layout
from scorecraft.drape.drape import make_drape
from scorecraft.drape.fitting import dart_width
from scorecraft.drawing.templates.telling import drape_words
from scorecraft.errors import Place, ScorecraftError
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import Loaf, make_loaf
from scorecraft.loaf.outline import traced_outline

DOME = make_loaf("round", 220.0, None, 95.0).profile
MEASURED_MM = 0.1
"""How well the summing of small chords below knows a ring."""


def bare(loaf):
    line = np.array([[0.0, 20.0], [0.0, 40.0]])
    place = Place("made.score", 1, 1)
    return Layout(
        "Bare", (), loaf, Bake(),
        (Cut(line, "slash", "slash", 0, 0, 5.0, 1.5, "expansion", place),),
    )  # fmt: skip


def heart(width, length):
    """A heart with a notch at the top."""
    t = np.linspace(0, 2 * np.pi, 400, endpoint=False)
    x = 16 * np.sin(t) ** 3
    y = 13 * np.cos(t) - 5 * np.cos(2 * t) - 2 * np.cos(3 * t) - np.cos(4 * t)
    points = np.column_stack([x, y])
    points *= [width / np.ptp(x), length / np.ptp(y)]
    return Loaf(traced_outline(points), 85.0, DOME)


def soft_heart(dent):
    """A heart whose upper edge is flattened, not notched: a limaçon."""
    t = np.linspace(0, 2 * np.pi, 400, endpoint=False)
    radius = 105.0 * (1 - dent * np.sin(t))
    points = radius[:, None] * np.column_stack([np.cos(t), np.sin(t)])
    return Loaf(traced_outline(points), 85.0, DOME)


LOAVES = {
    "round": make_loaf("round", 220.0, None, 95.0),
    "large round": make_loaf("round", 400.0, None, 120.0),
    "roll": make_loaf("round", 90.0, None, 45.0),
    "oval": make_loaf("oval", 165.0, 260.0, 85.0),
    "slim oval": make_loaf("oval", 150.0, 260.0, 85.0),
    "square": make_loaf("square", 200.0, 200.0, 85.0),
    "oblong": make_loaf("square", 170.0, 220.0, 85.0),
    "soft heart": soft_heart(0.35),
}


def ring_misfit(drape, distance):
    """Paper less dough (mm) all around at a distance from the crown, as far as the dough goes.

    Dough: chords on the dome's own surface. Paper: the petals, and what is left between them.
    """
    total = 0.0
    for index, petal in enumerate(drape.petals):
        theta = np.linspace(petal.start, petal.end, 501)
        rays = distance * np.column_stack([np.cos(theta), np.sin(theta)])
        points = petal.rings.loaf.surface(petal.rings.loaf.sheet_to_plan(rays))
        dough = np.linalg.norm(np.diff(points, axis=0), axis=1)
        paper = distance * np.diff(petal.angle(np.full(theta.shape, distance), theta))
        on_loaf = petal.rings.loaf.reach(theta) >= distance
        both = on_loaf[1:] & on_loaf[:-1]
        total += float((paper - dough)[both].sum())
        wide = float(dart_width(drape.petals[index - 1], petal, np.array([distance]))[0])
        uncut = distance < drape.darts[index].first_mm
        total += (wide if uncut else min(wide, 0.0)) if on_loaf[0] else 0.0
    return total


@pytest.mark.parametrize("fit", [None, 0.6])
@pytest.mark.parametrize("name", LOAVES)
def test_the_stated_fit_holds_on_every_ring(name, fit):
    drape = make_drape(bare(LOAVES[name]), fit_mm=fit)
    reach = float(LOAVES[name].reach(np.linspace(0, 2 * np.pi, 720)).max())
    off = [abs(ring_misfit(drape, distance)) for distance in np.linspace(2.0, 0.999 * reach, 16)]
    assert max(off) <= drape.fit_mm + MEASURED_MM
    assert f"to within {np.ceil(10 * drape.fit_mm) / 10:.1f} mm" in drape_words(drape, 20.0)[0]


@pytest.mark.parametrize("name", [name for name in LOAVES if "heart" not in name])
def test_the_fit_asked_for_is_reached_where_paper_can(name):
    assert make_drape(bare(LOAVES[name]), fit_mm=0.6).fit_mm <= 0.6
    assert make_drape(bare(LOAVES[name])).fit_mm <= 1.5


def test_no_dart_is_cut_through_the_middle():
    """Many narrow petals would all begin at the crown: they leave a disc of paper whole."""
    drape = make_drape(bare(LOAVES["round"]), fit_mm=0.3)
    assert len(drape.petals) > 12
    assert min(dart.first_mm for dart in drape.darts) >= 15.0  # a tenth of the way to the rim


@pytest.mark.parametrize(
    ("loaf", "reason"),
    [
        (heart(230.0, 208.0), "its rim turns in at 12 o'clock"),
        (make_loaf("long", 100.0, 340.0, 70.0), "too long for its width"),
        (Loaf(traced_outline([[0, 0], [240, 0], [0, 160]]), 80.0, DOME), "wider around"),
    ],
)
def test_a_loaf_no_paper_lies_on_is_refused_for_the_true_reason(loaf, reason):
    with pytest.raises(ScorecraftError, match=reason) as caught:
        make_drape(bare(loaf))
    others = {"turns in", "too long", "wider around"} - {reason}
    assert sum(other in caught.value.message for other in others if other not in reason) == 0
