"""How much is cut, zone by zone: mm of cut per cm2 of dough, and the crack density."""

import math
from itertools import pairwise

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.checks import telling_loaf as say
from scorecraft.checks.finding import Finding, Severity
from scorecraft.checks.linework import STATION_MM, stations
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.limits import CROWN_ZONE, RIM_ZONE
from scorecraft.practice import (
    DEEP_MM,
    DENSE_FACE,
    DENSE_MM_PER_CM2,
    DENSE_WARN,
    SOFT_CRACK_DENSITY,
)

ZONES = ("crown", "side", "rim")
SIDES = ("12 o'clock", "3 o'clock", "6 o'clock", "9 o'clock")


@dataclass(frozen=True, eq=False, slots=True)
class Density:
    """Cut and dough of a loaf by zone (rows: crown, side, rim) and side (12, 3, 6, 9 o'clock).

    `length_mm` (3, 4) is true length of cut, `face_mm2` (3, 4) length times depth, `area_mm2`
    (3, 4) area of dough. `deep_cracks` is the crack density, the sum of a^2 / A over the cuts
    through the skin, with a half a cut's true length and A the dough's area.
    """

    length_mm: Floats
    face_mm2: Floats
    area_mm2: Floats
    deep_cracks: float

    @property
    def mm_per_cm2(self) -> Floats:
        """Cut on every zone and side, mm per cm2 of dough."""
        return np.asarray(100 * self.length_mm / self.area_mm2)


def cut_density(layout: Layout) -> Density:
    """Measure how much is cut on every part of the loaf.

    Crack density (Bristow, Brit. J. Appl. Phys. 11 (1960) 81-85; Kachanov, Appl. Mech. Rev. 45
    (1992) 304-335; recalled).
    """
    area = _dough(layout)
    if not layout.cuts:
        return Density(np.zeros((3, 4)), np.zeros((3, 4)), area, 0.0)
    depth = layout.depths_mm
    true = layout.lengths_mm
    spots = stations(layout, STATION_MM)
    flat = np.bincount(spots.cut, weights=spots.step)
    length = spots.step * (true / np.maximum(flat, 1e-12))[spots.cut]
    squares = (true / 2) ** 2 / area.sum()
    return Density(
        _by_zone(layout, spots.point, length),
        _by_zone(layout, spots.point, length * depth[spots.cut]),
        area,
        float(squares[depth >= DEEP_MM.value].sum()),
    )


def density(layout: Layout) -> list[Finding]:
    """Find parts of the loaf that are cut so much that the skin will not hold together."""
    found = cut_density(layout)
    return [*_crowded(found, layout), *_soft(found, layout)]


def _dough(layout: Layout) -> Floats:
    """Area (mm2) of dough by zone and side, (3, 4)."""
    ends = (0.0, CROWN_ZONE, RIM_ZONE, 1.0)
    total = np.zeros((3, 4))
    for inner, outer in pairwise(ends):
        points, areas = layout.loaf.patches(120, 8, inner, outer)
        total += _by_zone(layout, points.reshape(-1, 2), areas.reshape(-1))
    return total


def _by_zone(layout: Layout, points: Floats, amount: Floats) -> Floats:
    """Add up amounts at sheet points by zone and side, (3, 4)."""
    theta = np.arctan2(points[:, 1], points[:, 0])
    share = np.abs(layout.loaf.share(points))
    zone = (share > CROWN_ZONE).astype(int) + (share > RIM_ZONE)
    turn = math.pi / 2 - theta
    side = np.floor((turn + math.pi / 4) / (math.pi / 2)).astype(int) % 4
    sums = np.bincount(zone * 4 + side, weights=amount, minlength=12)
    return sums.astype(np.float64).reshape(3, 4)


@dataclass(frozen=True, slots=True)
class Part:
    """The crown, or a quarter of the side or of the rim: what it is called, its cuts and dough."""

    name: str
    length_mm: float
    face_mm2: float
    area_mm2: float

    @property
    def mm_per_cm2(self) -> float:
        """Cut on this part, mm per cm2 of dough."""
        return 100 * self.length_mm / self.area_mm2

    @property
    def face(self) -> float:
        """Cut face on this part, mm2 per mm2 of dough."""
        return self.face_mm2 / self.area_mm2

    @property
    def crowding(self) -> float:
        """How many times as much is cut as should be; more than 1 is too much."""
        return max(self.mm_per_cm2 / DENSE_MM_PER_CM2.value, self.face / DENSE_FACE.value)


def _parts(found: Density) -> list[Part]:
    """Take the crown whole, and the zones around it side by side."""
    amounts = (found.length_mm, found.face_mm2, found.area_mm2)
    parts = [Part("the crown", *(float(amount[0].sum()) for amount in amounts))]
    for zone, side in np.ndindex(2, 4):
        name = f"the {ZONES[zone + 1]} toward {SIDES[side]}"
        parts.append(Part(name, *(float(amount[zone + 1, side]) for amount in amounts)))
    return parts


def _crowded(found: Density, layout: Layout) -> list[Finding]:
    """Tell of the most crowded part, if any is crowded."""
    parts = _parts(found)
    worst = max(parts, key=lambda part: part.crowding)
    if worst.crowding <= 1.0:
        return []
    excess = worst.length_mm * (1 - 1 / worst.crowding)
    depth = worst.face_mm2 / worst.length_mm
    message = say.TOO_DENSE(part=worst.name, mm_per_cm2=worst.mm_per_cm2, depth=depth)
    hint = say.CUT_LESS(excess=math.ceil(excess / 10) * 10)
    figures = {
        "count": float(sum(part.crowding > 1 for part in parts)),
        "mm_per_cm2": worst.mm_per_cm2,
        "face": worst.face,
        "shorten_mm": excess,
    }
    severity: Severity = "warning" if worst.crowding > DENSE_WARN.value else "note"
    place = max(cut.place for cut in layout.cuts)
    return [Finding("density", severity, message, hint, place, figures)]


def _soft(found: Density, layout: Layout) -> list[Finding]:
    """Tell of a skin that deep cuts leave little stiffness."""
    rho = found.deep_cracks
    if rho <= SOFT_CRACK_DENSITY.value:
        return []
    stiffness = 1 / (1 + math.pi * rho)
    shorter = 1 - math.sqrt(SOFT_CRACK_DENSITY.value / rho)
    message = say.SOFT_SKIN(stiffness=stiffness)
    hint = say.DEEP_CUTS_SHORTER(percent=math.ceil(100 * shorter))
    figures = {"cracks": rho, "stiffness": stiffness, "shorter": shorter}
    deep = tuple(i for i, cut in enumerate(layout.cuts) if cut.depth_mm >= DEEP_MM.value)
    place = max(layout.cuts[i].place for i in deep)
    return [Finding("density", "note", message, hint, place, figures, deep)]
