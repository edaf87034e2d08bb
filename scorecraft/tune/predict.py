"""The opening model as tuning needs it: widths of the numbered cuts for any skin."""

from collections.abc import Sequence

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.cuts import Layout
from scorecraft.groups import Group
from scorecraft.loaf.skin import Skin
from scorecraft.opening.ligament import springs
from scorecraft.opening.lip import slant_of
from scorecraft.opening.load import load_on
from scorecraft.opening.predict import sheet_of
from scorecraft.opening.solve import opened
from scorecraft.opening.system import system
from scorecraft.tune.table import Widths

PANEL_MM = 3.0
"""Length of the model's panels: the model runs many times, and widths are measured to a mm."""


def predictor(layout: Layout, told: Sequence[Group]) -> Widths:
    """Make the model of a layout's bake: skin (mm) and inside to each group's mean widest opening.

    The equations are set up once for all of them.
    """
    sheet = sheet_of(layout, Skin())
    depths = layout.depths_mm
    held = springs(depths, sheet.skin_mm, sheet.inside).normal
    equations = system([cut.line for cut in layout.cuts], PANEL_MM, held, sheet.strain)
    load = load_on(equations.panels, sheet.strain)
    slants = np.array([slant_of(cut) for cut in layout.cuts])

    def widths(skin_mm: float, inside: float) -> Floats:
        made = opened(
            equations,
            depths,
            load,
            skin_mm=skin_mm,
            inside=inside,
            slant=slants,
            area_mm2=sheet.area_mm2,
        )
        return by_number(told, made.widest_mm)

    return widths


def by_number(told: Sequence[Group], widest_mm: Floats) -> Floats:
    """Average the widest openings of the cuts over each number of the guide.

    Widths (cuts,) in mm in, (numbers,) out.
    """
    return np.array([float(widest_mm[list(group.cuts)].mean()) for group in told])
