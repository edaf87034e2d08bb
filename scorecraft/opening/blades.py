"""What blades have made of panels: how deep each is, how slanted, and the mouth that shows."""

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.frozen import dataclass
from scorecraft.opening import lip
from scorecraft.opening.ligament import ligament, mouth


@dataclass(frozen=True, slots=True, eq=False)
class Blades:
    """Depth below the surface (M,), mm, and reach sideways per depth (M,) of panels."""

    depth_mm: Floats
    slant: Floats

    def across(self, gap_mm: Floats, skin_mm: float) -> Floats:
        """Mouths (M,), mm, of slits whose faces part by gaps (M,)."""
        return lip.across(mouth(gap_mm, self.depth_mm, skin_mm), self.depth_mm, self.slant)

    def carried(self, jumps_mm: Floats, length_mm: Floats, skin_mm: float) -> Floats:
        """Force (2M,) that the skin left under each still carries: against gaps, then slides."""
        left = ligament(self.depth_mm, skin_mm)
        stiff = np.concatenate([left.normal, left.sliding]) * np.tile(length_mm, 2)
        return np.asarray(stiff * jumps_mm)

    def lift(self, gap_mm: Floats, skin_mm: float) -> Floats:
        """How far the lip of each rises (M,), mm."""
        return lip.lift(mouth(gap_mm, self.depth_mm, skin_mm), self.depth_mm, self.slant)
