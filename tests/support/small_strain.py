"""The slit-opening model as the strain goes to nothing, told per unit of strain: the handbooks."""

from dataclasses import replace

import numpy as np

from scorecraft.opening import Opening
from scorecraft.opening import solve as stretched

SMALL = 1e-7
"""Strains are taken so many times as small, openings told so many times as large."""


def solve(lines, depth_mm, *, strain, **options) -> Opening:
    """Open cuts as `scorecraft.opening.solve`, but in a sheet that is hardly stretched."""

    def little(points):
        return SMALL * np.asarray(strain(points), dtype=float)

    given = little if callable(strain) else tuple(SMALL * part for part in strain)
    found = stretched(lines, depth_mm, strain=given, **options)
    return replace(
        found,
        gap_mm=found.gap_mm / SMALL,
        slide_mm=found.slide_mm / SMALL,
        mouth_mm=found.mouth_mm / SMALL,
        uncut_tension=found.uncut_tension / SMALL,
    )
