"""The pattern on its dome, as the baker's eye sees it; hidden lines are left out."""

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.cuts import Layout
from scorecraft.drawing.bloom.bread import BOARD, DOUGH, SCORED, SCORED_LIT
from scorecraft.drawing.bloom.crust import crust, flour, shadow
from scorecraft.drawing.bloom.eye import Eye, look
from scorecraft.drawing.inks import band
from scorecraft.drawing.picture import Ink, Item, Layer, Picture, Shape, box
from scorecraft.drawing.plan import cut_plans

MARGIN_MM = 14.0
STEP_MM = 0.5
"""A cut is looked at in steps so long, to find where it disappears."""
SEED = 11
DUSTED = 0.5
DUST_LAYERS = 24


def view(layout: Layout, which: str | float = "front", *, width_mm: float | None = None) -> Picture:
    """Draw the proofed loaf with its cuts from the `top`, `front`, `side` or an elevation (deg).

    Full size unless a picture width (mm) is given. Raises UsageError for an unknown view.
    """
    wide, _ = look(layout.loaf, which).size
    scale = 1.0 if width_mm is None else width_mm / (wide + 2 * MARGIN_MM)
    eye = look(layout.loaf, which, scale)
    width, height = (each + 2 * MARGIN_MM * scale for each in eye.size)
    eye = eye.centred(width / 2, height / 2)
    ground = Shape((box(0, 0, width, height),), closed=True, fill=BOARD, css="board")
    title = f"{layout.title}: view"
    desc = f"{layout.loaf.shape} loaf with {len(layout.cuts)} cuts, as the eye sees it"
    return Picture(width, height, title, desc, (ground, scored_layer(layout, eye)), css="view")


def scored_layer(layout: Layout, eye: Eye) -> Layer:
    """Draw the proofed, scored loaf as the eye sees it; deeper cuts are wider and on top."""
    rng = np.random.default_rng(SEED)
    order = sorted(range(len(layout.cuts)), key=lambda index: layout.cuts[index].depth_mm)
    plans = [shapely.get_coordinates(each) for each in _dense(cut_plans(layout))]
    cuts: list[Item] = []
    for index in order:
        cuts += _cut(layout, index, plans[index], eye)
    return Layer(
        "loaf",
        (
            shadow(eye),
            crust(eye, DOUGH),
            flour(eye, DUSTED, rng, DOUGH, layers=DUST_LAYERS),
            Layer("cuts", tuple(cuts)),
        ),
        css="view",
    )


def _dense(lines: list[Line]) -> np.ndarray:
    dense: np.ndarray = shapely.segmentize([shapely.LineString(each) for each in lines], STEP_MM)
    return dense


def _cut(layout: Layout, index: int, plan: Line, eye: Eye) -> list[Item]:
    """Draw what is seen of a cut: a groove with its lit edge."""
    shown = tuple(eye.lines([plan]))
    if not shown:
        return []
    cut = layout.cuts[index]
    wide = (0.45 + 0.16 * cut.depth_mm) * eye.scale
    edge = tuple(each + 0.22 * wide for each in shown)
    return [
        Shape(edge, ink=Ink(wide, color=SCORED_LIT, opacity=0.55), css="groove-edge"),
        Shape(
            shown,
            ink=Ink(wide, color=SCORED),
            css=f"cut {band(cut.depth_mm)} {cut.kind}",
            data={"cut": str(index)},
            title=f"{cut.name}, {cut.depth_mm:.3g} mm deep",
        ),
    ]
