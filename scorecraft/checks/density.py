"""How much is cut, zone by zone: mm of cut per cm2 of dough, and the crack density."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from scorecraft.checks.finding import Finding, Severity
from scorecraft.checks.linework import stations
from scorecraft.cuts import Layout
from scorecraft.practice import (
    CROWN_ZONE,
    DEEP_MM,
    DENSE_FACE,
    DENSE_MM_PER_CM2,
    DENSE_WARN,
    RIM_ZONE,
    SOFT_CRACK_DENSITY,
    STATION_MM,
)

Array = NDArray[np.float64]

ZONES = ("crown", "middle", "rim")
SIDES = ("12 o'clock", "3 o'clock", "6 o'clock", "9 o'clock")


@dataclass(frozen=True, eq=False, slots=True)
class Density:
    """Cut and dough of a loaf by zone (rows: crown, middle, rim) and side (12, 3, 6, 9 o'clock).

    `length_mm` (3, 4) is true length of cut, `face_mm2` (3, 4) length times depth, `area_mm2`
    (3, 4) area of dough. `cracks` is the crack density, the sum of a^2 / A over all cuts with a
    half a cut's true length and A the dough's area; `deep_cracks` that of cuts through the skin.
    """

    length_mm: Array
    face_mm2: Array
    area_mm2: Array
    cracks: float
    deep_cracks: float

    @property
    def mm_per_cm2(self) -> Array:
        """Cut on every zone and side, mm per cm2 of dough."""
        return np.asarray(100 * self.length_mm / self.area_mm2)

    @property
    def loaf_mm_per_cm2(self) -> float:
        """Cut on the whole loaf, mm per cm2 of dough."""
        return float(100 * self.length_mm.sum() / self.area_mm2.sum())


def cut_density(layout: Layout) -> Density:
    """Measure how much is cut on every part of the loaf.

    Crack density: Bristow 1960; Kachanov, Appl. Mech. Rev. 45 (1992) 304-335 (recalled).
    """
    points, areas = layout.loaf.patches(120, 60)
    area = _by_zone(layout, points.reshape(-1, 2), areas.reshape(-1))
    if not layout.cuts:
        return Density(np.zeros((3, 4)), np.zeros((3, 4)), area, 0.0, 0.0)
    depth = np.array([cut.depth_mm for cut in layout.cuts])
    true = layout.loaf.lengths_on_dough([cut.line for cut in layout.cuts])
    spots = stations(layout, STATION_MM.value)
    flat = np.bincount(spots.cut, weights=spots.step)
    length = spots.step * (true / np.maximum(flat, 1e-12))[spots.cut]
    squares = (true / 2) ** 2 / area.sum()
    return Density(
        _by_zone(layout, spots.point, length),
        _by_zone(layout, spots.point, length * depth[spots.cut]),
        area,
        float(squares.sum()),
        float(squares[depth >= DEEP_MM.value].sum()),
    )


def density(layout: Layout) -> list[Finding]:
    """Find parts of the loaf that are cut so much that the skin will not hold together."""
    found = cut_density(layout)
    return [*_crowded(found, layout), *_soft(found, layout)]


def _by_zone(layout: Layout, points: Array, amount: Array) -> Array:
    """Add up amounts at sheet points by zone and side, (3, 4)."""
    theta = np.arctan2(points[:, 1], points[:, 0])
    share = np.hypot(points[:, 0], points[:, 1]) / layout.loaf.reach(theta)
    zone = (share > CROWN_ZONE.value).astype(int) + (share > RIM_ZONE.value)
    turn = math.pi / 2 - theta
    side = np.floor((turn + math.pi / 4) / (math.pi / 2)).astype(int) % 4
    sums = np.bincount(zone * 4 + side, weights=amount, minlength=12)
    return sums.astype(np.float64).reshape(3, 4)


def _crowded(found: Density, layout: Layout) -> list[Finding]:
    """Tell of the most crowded part, if any is crowded."""
    most, face = DENSE_MM_PER_CM2.value, DENSE_FACE.value
    crowding = np.maximum(found.mm_per_cm2 / most, found.face_mm2 / found.area_mm2 / face)
    zone, side = np.unravel_index(int(np.argmax(crowding)), crowding.shape)
    worst = float(crowding[zone, side])
    if worst <= 1.0:
        return []
    length = float(found.length_mm[zone, side])
    here = f"the {ZONES[zone]} toward {SIDES[side]}" if zone else "the crown"
    per_cm2 = float(found.mm_per_cm2[zone, side])
    excess = length * (1 - 1 / worst)
    message = f"{here} carries {per_cm2:.1f} mm of cut per cm2 of dough: its skin may tear to bits"
    hint = f"take about {math.ceil(excess / 10) * 10} mm of cut away there, or cut it shallower"
    figures = {
        "count": float((crowding > 1).sum()),
        "mm_per_cm2": per_cm2,
        "face": float((found.face_mm2 / found.area_mm2)[zone, side]),
        "shorten_mm": excess,
    }
    severity: Severity = "warn" if worst > DENSE_WARN.value else "note"
    place = max((cut.place for cut in layout.cuts), default=None)
    return [Finding("density", severity, message, hint, place, figures)]


def _soft(found: Density, layout: Layout) -> list[Finding]:
    """Tell of a skin that deep cuts leave little stiffness."""
    rho = found.deep_cracks
    if rho <= SOFT_CRACK_DENSITY.value:
        return []
    stiffness = 1 / (1 + math.pi * rho)
    shorter = 1 - math.sqrt(SOFT_CRACK_DENSITY.value / rho)
    message = (
        f"the deep cuts leave the skin {stiffness:.0%} of its stiffness (crack density "
        f"{rho:.2f}): the loaf may flatten"
    )
    hint = f"make the deep cuts {math.ceil(100 * shorter)}% shorter, or fewer"
    figures = {"cracks": rho, "stiffness": stiffness, "shorter": shorter}
    deep = [cut for cut in layout.cuts if cut.depth_mm >= DEEP_MM.value]
    lines = tuple(cut.line for cut in deep)
    place = max(cut.place for cut in deep)
    return [Finding("density", "note", message, hint, place, figures, lines)]
