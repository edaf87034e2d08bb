"""What the skin carries before it is cut, and after: tension and strain of a thin sheet.

Stresses are in units of Young's modulus E and Poisson's ratio is 0.5 (dough keeps its volume), so
no modulus enters the model anywhere. Strains are (exx, eyy, exy) with exy half the change of the
right angle; inside, stresses are (sxx, syy, sxy) and strains (exx, eyy, 2 exy).
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.errors import UsageError
from scorecraft.opening.panels import Panels

Strain = tuple[float, float, float] | Callable[[Floats], Floats]
"""(exx, eyy, exy), or a function from points (N, 2) in mm to such strains (N, 3)."""

COMPLIANCE = np.array([[1.0, -0.5, 0.0], [-0.5, 1.0, 0.0], [0.0, 0.0, 3.0]])
"""Plane stress with E = 1 and nu = 0.5: (exx, eyy, 2 exy) from (sxx, syy, sxy)."""
STIFFNESS = np.linalg.inv(COMPLIANCE)


@dataclass(frozen=True, slots=True)
class Load:
    """Tension of the uncut sheet, in units of E: its mean, and where it differs from that.

    `mean` (3,) is taken over the cuts, weighted by their length, because that is what opens them;
    `strain` is what was asked for.
    """

    strain: Strain
    mean: Floats

    def extra(self, points: Floats) -> Floats:
        """Tension of the uncut sheet at points (N, 2) less its mean, (N, 3)."""
        if not callable(self.strain):
            return np.zeros((len(points), 3))
        return uncut_tension(self.strain, points) - self.mean


def load_on(panels: Panels, strain: Strain) -> Load:
    """Work out the tension that a strain would put into the uncut sheet along the cuts."""
    if not callable(strain):
        return Load(strain, uncut_tension(strain, np.zeros((1, 2)))[0])
    if not len(panels):
        return Load(strain, uncut_tension(strain, np.zeros((1, 2)))[0])
    tension = uncut_tension(strain, panels.midpoint)
    mean: Floats = np.average(tension, axis=0, weights=panels.length)
    return Load(strain, mean)


def uncut_tension(strain: Strain, points: Floats) -> Floats:
    """Tension (N, 3) in units of E that a strain puts into the uncut sheet at points (N, 2).

    Raises UsageError for a strain of another shape or not finite.
    """
    given = strain(points) if callable(strain) else np.broadcast_to(strain, (len(points), 3))
    values = np.asarray(given, dtype=np.float64)
    if values.shape != (len(points), 3) or not np.isfinite(values).all():
        raise UsageError("the strain must be three numbers (exx, eyy, exy) at every point")
    tension: Floats = values * [1, 1, 2] @ STIFFNESS
    return tension


def forces(panels: Panels) -> Floats:
    """Force (2M, 3) on each panel, against its opening and its sliding, per unit of mean tension.

    The transpose takes jumps to the strain they add times the area of the sheet.
    """
    (nx, ny), (tx, ty) = panels.normal.T, panels.tangent.T
    opening = np.column_stack([nx * nx, ny * ny, 2 * nx * ny])
    sliding = np.column_stack([nx * tx, ny * ty, nx * ty + ny * tx])
    return np.concatenate([opening, sliding]) * np.tile(panels.length, 2)[:, None]


def forces_of(panels: Panels, tension: Floats) -> Floats:
    """Force (2M,) on each panel, against opening and sliding, of its own tension (M, 3)."""
    both = np.tile(tension, (2, 1))
    force: Floats = np.einsum("ij,ij->i", forces(panels), both)
    return force


def tensor(tension: Floats) -> Floats:
    """Tensions (..., 3) as symmetric matrices (..., 2, 2)."""
    return tension[..., [[0, 2], [2, 1]]]


def scale_of(tension: Floats) -> float:
    """Return the mean tension of the uncut sheet, or its largest where the mean is nearly none.

    In units of E.
    """
    principal = np.linalg.eigvalsh(tensor(tension))
    mean, largest = float(principal.mean()), float(np.abs(principal).max())
    return mean if abs(mean) > 1e-3 * largest else largest
