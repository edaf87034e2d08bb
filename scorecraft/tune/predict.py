"""The opening model as tuning needs it: widths of the numbered cuts for any skin."""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.cuts import Layout
from scorecraft.groups import Group
from scorecraft.loaf.skin import Skin
from scorecraft.opening.predict import model_of
from scorecraft.tune.table import Widths

PANEL_MM = 3.0
"""Length of the model's panels: the model runs many times, and widths are measured to a mm."""


def predictor(layout: Layout, told: Sequence[Group]) -> Widths:
    """Make the model of a layout's bake: skin (mm) and inside to each group's mean widest opening.

    The cuts are divided into panels once for all of them.
    """
    model = model_of(layout, Skin(), PANEL_MM)

    def widths(skin_mm: float, inside: float) -> Floats:
        sheet = replace(model.sheet, skin_mm=skin_mm, inside=inside)
        equations = replace(model.equations, bed=sheet.bed)
        return by_number(told, replace(model, equations=equations, sheet=sheet).opened().widest_mm)

    return widths


def by_number(told: Sequence[Group], widest_mm: Floats) -> Floats:
    """Average the widest openings of the cuts over each number of the guide.

    Widths (cuts,) in mm in, (numbers,) out.
    """
    return np.array([float(widest_mm[list(group.cuts)].mean()) for group in told])
