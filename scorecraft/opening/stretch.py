"""Large strain: small openings on a sheet that is finitely stretched already, exactly.

The skin is taken as a thin incompressible neo-Hookean sheet: for small strains that of E and
nu = 0.5. Its tension per width and thickness before the stretch is (U - U^-1 / det^2 U) / 3 in
units of E. About an even stretch by 1 + e a further displacement u adds

    dP = (grad u + 2 s tr(grad u) I + s grad u^T) / 3,      s = (1 + e)^-6,

so it obeys lap u + 3 s grad div u = 0. Solved for a half plane whose edge opens as a wave, the
force it takes is that of the unstretched sheet times `strength`, and a depth y away it falls with
(1 + lean k y) exp(-k y) in place of (1 + k y) exp(-k y): the kernel keeps its form, see `kernel`
(derived here; checked against finite elements in tests/published). Lengths along the sheet are
those before the stretch, openings those after it, forces are per width before it. Where the stretch
is uneven its mean over the cuts counts. As e goes to 0, s, strength and lean go to 1.
"""

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.frozen import dataclass


@dataclass(frozen=True, slots=True)
class Stretch:
    """An even stretch by 1 + `strain`, on which the openings come."""

    strain: float = 0.0

    @property
    def softer(self) -> float:
        """How much of the pressure that keeps the volume is left: s, 1 without a stretch."""
        return float((1 + self.strain) ** -6)

    @property
    def strength(self) -> float:
        """Stiffness against opening a straight cut over that of the unstretched sheet."""
        s = self.softer
        return (1 + s) * (2 + 7 * s - 3 * s * s) / (3 * (1 + 3 * s))

    @property
    def lean(self) -> float:
        """Weight of the part of the kernel that hangs on directions; 1 without a stretch."""
        s = self.softer
        return 3 * s * (1 + s) / (2 + 7 * s - 3 * s * s)

    @property
    def pull(self) -> float:
        """Stiffness along one way where the sheet may give across it: 1 without a stretch."""
        return self.strength * (1 + self.lean) / 2

    @property
    def compliance(self) -> Floats:
        """Strains (exx, eyy, 2 exy) that tensions (sxx, syy, sxy) add to the stretch, (3, 3)."""
        s = self.softer
        stiffness = [[1 + 3 * s, 2 * s, 0.0], [2 * s, 1 + 3 * s, 0.0], [0.0, 0.0, (1 + s) / 2]]
        return np.asarray(np.linalg.inv(np.array(stiffness) / 3))

    @property
    def tied(self) -> Floats:
        """The same for a round sheet tied at its rim, and what cuts in its middle add, (3, 3).

        Beyond a cut the sheet opens like an endless one but at the rim, which stays: what pulls it
        back there is even in the middle of the sheet, and is the mean strain of the cuts times
        (1 + 5s) / 2(1 + 3s) where it is alike in all directions and 3s(1 + s)(k + 3/k) / 4(1 + 3s),
        k = 1 + 2/3s, where it is not (derived from the point force; 3/4 and 1.30 unstretched).
        """
        s = self.softer
        k = 1 + 2 / (3 * s)
        even = (1 + 5 * s) / 6 * (1 + 5 * s) / (2 + 6 * s)
        apart = (1 + s) / 6 * 3 * s * (1 + s) * (k + 3 / k) / (4 + 12 * s)
        stiffness = [
            [even + apart, even - apart, 0],
            [even - apart, even + apart, 0],
            [0, 0, apart],
        ]
        return np.asarray(np.linalg.inv(np.array(stiffness)))


def tension(strain: Floats) -> Floats:
    """Tension (N, 3) as (sxx, syy, sxy), in units of E, of a sheet stretched by strains (N, 3).

    Strains are (exx, eyy, exy), U = I + e symmetric; tension is force over width and thickness
    before the stretch.
    """
    xx, yy, xy = strain[:, 0] + 1, strain[:, 1] + 1, strain[:, 2]
    cubed = (xx * yy - xy * xy) ** 3
    parts = xx - yy / cubed, yy - xx / cubed, xy + xy / cubed
    return np.column_stack(parts) / 3
