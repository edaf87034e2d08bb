"""What the skin carries before it is cut, and after: tension and strain of a thin sheet.

Stresses are in units of Young's modulus E and Poisson's ratio is 0.5 (dough keeps its volume), so
no modulus enters the model anywhere. Strains are (exx, eyy, exy) with exy half the change of the
right angle; inside, stresses are (sxx, syy, sxy) and strains (exx, eyy, 2 exy). The uncut sheet is
stretched finitely; what the cuts add to that is small beside it (`stretch`).
"""

from collections.abc import Callable

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass
from scorecraft.opening.panels import Panels
from scorecraft.opening.stretch import Stretch
from scorecraft.opening.stretch import tension as stretched_tension

Strain = tuple[float, float, float] | Callable[[Floats], Floats]
"""(exx, eyy, exy), or a function from points (N, 2) in mm to such strains (N, 3)."""


@dataclass(frozen=True, slots=True)
class Field:
    """The strain of a sheet that is tied at its rim, and the work that it stores uncut.

    `at` gives strains (N, 3) at points (N, 2); `stored_mm2` is half of tension times strain, summed
    over the sheet, in units of E per thickness.
    """

    at: Callable[[Floats], Floats]
    stored_mm2: float

    def __call__(self, points: Floats) -> Floats:
        """Give strains (N, 3) at points (N, 2)."""
        return self.at(points)


@dataclass(frozen=True, slots=True)
class Load:
    """Tension of the uncut sheet, in units of E: its mean, and where it differs from that.

    `mean` (3,) is taken over the cuts, weighted by their length, because that is what opens them;
    so is their strain, `even` (3,) as (exx, eyy, 2 exy). `strain` is what was asked for, `beside`
    (M, 3) by how much the tension at the panels differs from the mean, (1, 3) where it is even.
    """

    strain: Strain
    mean: Floats
    even: Floats
    beside: Floats
    stretch: Stretch

    @property
    def compliance(self) -> Floats:
        """What the sheet gives, beside its cuts, where its growth is given: (3, 3)."""
        return self.stretch.tied if isinstance(self.strain, Field) else self.stretch.compliance

    def stored(self, area_mm2: float) -> float:
        """Work (mm2, in units of E per thickness) stored in an uncut sheet of an area."""
        if isinstance(self.strain, Field):
            return self.strain.stored_mm2
        return area_mm2 * float(self.mean @ self.even) / 2

    def extra(self, points: Floats) -> Floats:
        """Tension of the uncut sheet at points (N, 2) less its mean, (N, 3)."""
        if not callable(self.strain):
            return np.zeros((len(points), 3))
        return stretched_tension(strain_at(self.strain, points)) - self.mean


def load_on(panels: Panels, strain: Strain) -> Load:
    """Work out the tension that a strain would put into the uncut sheet along the cuts."""
    points, weights = np.zeros((1, 2)), np.ones(1)
    if callable(strain) and len(panels):
        points, weights = panels.midpoint, panels.length
    values = strain_at(strain, points)
    tension = stretched_tension(values)
    mean = np.average(tension, axis=0, weights=weights)
    even = np.average(values * [1, 1, 2], axis=0, weights=weights)
    return Load(strain, mean, even, tension - mean, Stretch(float(even[:2].mean())))


def strain_at(strain: Strain, points: Floats) -> Floats:
    """Give a strain (N, 3) at points (N, 2).

    Raises UsageError for a strain of another shape or not finite, or that leaves no skin.
    """
    given = strain(points) if callable(strain) else np.broadcast_to(strain, (len(points), 3))
    values = np.asarray(given, dtype=np.float64)
    if values.shape != (len(points), 3) or not np.isfinite(values).all():
        raise UsageError("the strain must be three numbers (exx, eyy, exy) at every point")
    xx, yy, xy = values.T
    if ((xx + yy) / 2 - np.hypot((xx - yy) / 2, xy) <= -1).any():
        raise UsageError("a strain of -1 or less leaves no skin")
    return values


def stored(strain: Floats, area_mm2: Floats) -> float:
    """Work (mm2, in units of E per thickness) in patches of skin of strains (N, 3) and areas (N,).

    It is half of tension times strain.
    """
    density = (stretched_tension(strain) * strain) @ [1, 1, 2] / 2
    return float(density @ area_mm2)


def forces(panels: Panels) -> Floats:
    """Force (2M, 3) on each panel, against its opening and its sliding, per unit of mean tension.

    The transpose takes jumps to the strain they add times the area of the sheet.
    """
    (nx, ny), (tx, ty) = panels.normal.T, panels.tangent.T
    opening = np.column_stack([nx * nx, ny * ny, 2 * nx * ny])
    sliding = np.column_stack([nx * tx, ny * ty, nx * ty + ny * tx])
    return np.concatenate([opening, sliding]) * np.tile(panels.length, 2)[:, None]


def uncut_forces(panels: Panels, load: Load) -> Floats:
    """Force (2M,) of the uncut sheet on each panel, against its opening and its sliding."""
    opening, sliding = np.split(forces(panels), 2)
    here = load.mean + load.beside
    return np.concatenate([(opening * here).sum(axis=1), (sliding * here).sum(axis=1)])


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
