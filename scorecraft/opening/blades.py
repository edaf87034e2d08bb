"""What blades have made of panels: how deep each is, how slanted, and the mouth that shows."""

from dataclasses import dataclass

from scorecraft.arrays import Floats
from scorecraft.opening import lip
from scorecraft.opening.ligament import mouth


@dataclass(frozen=True, slots=True)
class Blades:
    """Depth below the surface (M,), mm, and reach sideways per depth (M,) of panels."""

    depth_mm: Floats
    slant: Floats

    def across(self, gap_mm: Floats, skin_mm: float) -> Floats:
        """Mouths (M,), mm, of slits whose faces part by gaps (M,)."""
        return lip.across(mouth(gap_mm, self.depth_mm, skin_mm), self.depth_mm, self.slant)

    def lift(self, gap_mm: Floats, skin_mm: float) -> Floats:
        """How far the lip of each rises (M,), mm."""
        return lip.lift(mouth(gap_mm, self.depth_mm, skin_mm), self.depth_mm, self.slant)
