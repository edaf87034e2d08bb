"""Whether the cuts leave the loaf enough room.

A loaf needs room for its growth. So the verdict goes by one number, the share of the growth's work
that the cuts take up: half of the tension given up times the jump, summed over the cuts, over half
of tension times strain, summed over the skin on the dome. For cuts through the skin that is the
elastic energy they set free, and weighs every direction and place by how much the loaf grows there.
What the skin left under a light cut still carries it has not given up: that skin sets, or tears.
A slash gives much across it and little along it: the directions have that room as the cuts take
the skin's tension away in them.
"""

from collections.abc import Mapping
from math import atan2, cos, hypot, pi, sin
from typing import Literal

import numpy as np
import shapely

from scorecraft.arrays import Floats
from scorecraft.frozen import dataclass
from scorecraft.limits import CROWN_ZONE
from scorecraft.loaf.places import LOW, LOW_FROM, clock, hour
from scorecraft.opening.load import tensor
from scorecraft.opening.result import Opening
from scorecraft.practice import ROOM_BURSTS, ROOM_ENOUGH
from scorecraft.units import percent_range

AT_CROWN = 0.1
"""A place this near is called the crown itself; a share of the reach."""
Verdict = Literal["enough", "tight", "will burst"]

ALIKE = 1e-4
"""Directions whose room differs by less, twenty times what solving leaves open, are all alike."""


@dataclass(frozen=True, slots=True)
class Room:
    """Room that cuts leave a loaf: shares of its growth from 0 (none taken up) to 1.

    `taken` is what the verdict goes by; `least` and `most` are the rooms of the directions with
    the least and the most, radians from +x. `enough` is the share that would be enough for this
    bake.
    """

    taken: float
    least: float
    least_direction_rad: float
    most: float
    verdict: Verdict
    enough: float = ROOM_ENOUGH.value

    @property
    def even(self) -> bool:
        """Whether all directions have the same room."""
        return self.most - self.least < ALIKE


def room(opening: Opening, strength: float = 1.0) -> Room:
    """Judge the room that opened cuts leave a loaf.

    `strength` is how much its bake stretches the skin, over the usual bake (`Bake.strength`): a
    loaf that springs more has to have more of it taken up.
    """
    uncut, strain = opening.load.mean, opening.load.even
    left = opening.tension_left * opening.uncut_tension
    shares, way = _directions(tensor(uncut), left, opening.uncut_tension)
    eased = 1 - float(left[[0, 1, 0], [0, 1, 1]] @ strain / (uncut @ strain))
    taken = min(opening.work_taken, 1.0)
    scale = taken / eased if eased > ALIKE else 0.0
    return Room(
        taken=taken,
        least=scale * float(1 - shares[1]),
        least_direction_rad=way,
        most=scale * float(1 - shares[0]),
        verdict=verdict_of(taken, strength),
        enough=ROOM_ENOUGH.value * strength,
    )


ROOMS: Mapping[Verdict, str] = {
    "enough": "Enough room to spring",
    "tight": "Barely enough room to spring",
    "will burst": "Too little room to spring, likely to burst",
}


def told(found: Room, taken_range: tuple[float, float]) -> str:
    """Say in one sentence whether the loaf has room to grow, its share as a range."""
    least = "" if found.even else f", least {direction(found.least_direction_rad)}"
    said, taken = ROOMS[found.verdict], percent_range(*taken_range)
    return f"{said} (model estimate): the cuts absorb {taken} of the oven spring{least}."


def verdict_of(taken: float, strength: float = 1.0) -> Verdict:
    """Say in a word what a share of growth taken up means for a bake of a `strength`."""
    if taken >= ROOM_ENOUGH.value * strength:
        return "enough"
    return "tight" if taken >= ROOM_BURSTS.value * strength else "will burst"


def _directions(uncut: Floats, left: Floats, scale: float) -> tuple[Floats, float]:
    """Least and greatest share of its tension that a direction keeps, and the latter direction.

    Extremes of (n.s.n) / (n.s0.n); where the uncut skin is not in tension all around, of
    n.s.n over the mean.
    """
    if np.linalg.eigvalsh(uncut)[0] <= 0:
        uncut = abs(scale) * np.eye(2)
    root = np.linalg.inv(np.linalg.cholesky(uncut))
    shares, turned = np.linalg.eigh(root @ left @ root.T)
    if shares[1] - shares[0] < ALIKE:
        return shares, pi / 2
    x, y = root.T @ turned[:, 1]
    return shares, atan2(y, x) % pi


def where(point: tuple[float, float], rim_mm: Floats) -> str:
    """Tell a place on the sheet (mm) in a baker's words: `at 4 o'clock, just above the base`.

    The clock is the turntable's, 12 away from the baker; the height goes by the share of the
    reach from crown to rim (K, 2) in that direction.
    """
    share = hypot(*point) / _reach(point, rim_mm)
    if share < AT_CROWN:
        return "at the crown"
    if share < CROWN_ZONE:
        height = "near the crown"
    else:
        height = "halfway down the side" if share <= LOW_FROM else LOW
    return f"{clock(atan2(point[1], point[0]))}, {height}"


def direction(angle_rad: float) -> str:
    """Tell a direction on the loaf (radians from +x) by the clock: `from 3 to 9 o'clock`."""
    hours = sorted([hour(angle_rad), hour(angle_rad + pi)], key=lambda each: each % 12)
    return f"from {hours[0]} to {hours[1]} o'clock"


def _reach(point: tuple[float, float], rim_mm: Floats) -> float:
    """Distance (mm) from the crown to the rim in the direction of a point."""
    angle = atan2(point[1], point[0])
    far = 2 * float(np.abs(rim_mm).max())
    ray = shapely.LineString([(0, 0), (far * cos(angle), far * sin(angle))])
    return float(shapely.length(ray.intersection(shapely.Polygon(rim_mm))))
