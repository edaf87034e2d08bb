"""The lip of a slanted cut: it rises as the cut opens, and the mouth is measured from its edge.

A blade held at an angle a to the dough that ends d below the surface is s = d / sin a long in it
and runs c = d / tan a sideways under the skin. An upright cut as deep is held as much, since what
holds is what lies below: an edge crack of length s slanted by 45 degrees has K_I = 0.705 and
K_II = 0.364 of T sqrt(pi s), so that (K_I^2 + K_II^2) s^2 is that of an upright one of depth
d = 0.707 s within 1 % (Murakami, ed., Stress Intensity Factors Handbook, 1987; recalled). The lip
over the blade hangs from the tip of the cut. When the mouth opens by w, its lower face parts from
the other by w sin a over the length s, so the lip turns up by b = atan(w sin a / s): its edge
rises by c sin b and draws back by c (1 - cos b). A ruler laid across the mouth from edge to edge,
as a baker measures, shows the straight distance between the two.
"""

from math import cos, radians, sin

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.cuts import ON_TOP_MM, Bench, Cut
from scorecraft.frozen import dataclass
from scorecraft.opening.ligament import ligament, mouth
from scorecraft.practice import UPRIGHT_DEG


def slant_of(cut: Cut) -> float:
    """Tell how far a blade reaches sideways under the skin, per depth: 0 for an upright one."""
    return 0.0 if upright(cut) else float(1 / np.tan(cut.blade_rad))


def upright(cut: Cut) -> bool:
    """Whether a cut goes straight in, and so has no lip."""
    return cut.blade_rad >= radians(UPRIGHT_DEG.value)


def rising_side(cut: Cut, way: int = 1) -> int:
    """Tell on which side of the stroke the lip rises: 1 left, -1 right, 0 where none does.

    A slanted blade leans in under that side, and its handle to the other: as the layout says, else
    outward from the crown. The handle of a cut along the top leans to the hand that pulls it
    toward the cutter: `way` is 1 for the right hand, -1 for the left.
    """
    if upright(cut):
        return 0
    told = cut.side_of((0, 0), ON_TOP_MM) if cut.rises is None else cut.rises
    return told or -way * pulled(cut, way)


def pulled(cut: Cut, way: int) -> int:
    """Tell whether a cut is pulled toward the cutter in the direction of its stroke: 1, or -1."""
    toward = Bench("right" if way > 0 else "left").drift_rad
    x, y = cut.line[-1] - cut.line[0]
    return 1 if cos(toward) * x + sin(toward) * y >= 0 else -1


def lift(mouth_mm: Floats, depth_mm: Floats, slant: Floats) -> Floats:
    """How far the lip's edge rises (M,), mm, over mouths, depths and slants."""
    return np.asarray(depth_mm * slant * np.sin(_turn(mouth_mm, depth_mm, slant)))


def across(mouth_mm: Floats, depth_mm: Floats, slant: Floats) -> Floats:
    """Straight distance (M,), mm, from the edge of the raised lip to the other."""
    back = depth_mm * slant * (1 - np.cos(_turn(mouth_mm, depth_mm, slant)))
    return np.asarray(np.hypot(mouth_mm + back, lift(mouth_mm, depth_mm, slant)))


def _turn(mouth_mm: Floats, depth_mm: Floats, slant: Floats) -> Floats:
    """Angle (M,), radians, by which the lip has turned up."""
    return np.asarray(np.arctan2(mouth_mm, depth_mm * (1 + slant**2)))


@dataclass(frozen=True, slots=True, eq=False)
class Blades:
    """Depth below the surface (M,), mm, and reach sideways per depth (M,) of panels."""

    depth_mm: Floats
    slant: Floats

    def across(self, gap_mm: Floats, skin_mm: float) -> Floats:
        """Mouths (M,), mm, of slits whose faces part by gaps (M,)."""
        return across(mouth(gap_mm, self.depth_mm, skin_mm), self.depth_mm, self.slant)

    def carried(self, jumps_mm: Floats, length_mm: Floats, skin_mm: float) -> Floats:
        """Force (2M,) that the skin left under each still carries: against gaps, then slides."""
        left = ligament(self.depth_mm, skin_mm)
        stiff = np.concatenate([left.normal, left.sliding]) * np.tile(length_mm, 2)
        return np.asarray(stiff * jumps_mm)

    def lift(self, gap_mm: Floats, skin_mm: float) -> Floats:
        """How far the lip of each rises (M,), mm."""
        return lift(mouth(gap_mm, self.depth_mm, skin_mm), self.depth_mm, self.slant)
