"""What the dough under the skin holds: the lips of every cut, the less the deeper the blade went.

The loaf is a stiff skin on a soft inside, whose modulus is a share m of the skin's. A cut that
parts the skin of thickness h is still held by the inside it has not reached: per length it takes

    k = T / w = 1 / (h c),     c = 0.74 + 3.19 / sqrt(m)

to part the lips by w (the mean over the skin) under tension T of the skin, in units of E. That is
the plane section of such a skin, welded to a deep inside and cut to its bottom, by finite elements
of our own (tests/published; within 4 % for m from 0.03 to 1). Below the skin what is left to hold
falls quickly, since the inside itself comes apart and wells up; and skin passes into crumb without
a border. So the hold falls as exp(1 - (d / h)^`FALL`) with the depth d. `FALL` is the one number
that is set and not derived: 2.2 opens the section between half the skin's depth and its bottom
(where the ligament, a spring beside this one, takes over) too far, by up to a third with m = 0.1
and a half with 0.03, and meets a solid dome cut to 5/3 of its skin, with its bulge, within 11 %.
"""

import numpy as np

from scorecraft.arrays import Floats

LAYER = (0.74, 3.19)
"""Opening over T h / E of a long cut down to the inside: the first plus the second over sqrt(m)."""
FALL = 2.2
"""Power of the depth with which the hold of the inside falls."""


def hold(depth_mm: Floats, skin_mm: float, inside: float) -> Floats:
    """Stiffness (M,), E per mm, of the inside against the opening of cuts of depths (M,).

    `inside` is the inside's modulus over the skin's; 0 holds nothing. It is as stiff against
    sliding (an edge crack gives 5.82 T d / E' in opening and 6 T d / E' in sliding).
    """
    if inside <= 0:
        return np.zeros_like(depth_mm)
    least, grows = LAYER
    whole = 1 / (skin_mm * (least + grows / np.sqrt(inside)))
    return np.asarray(whole * np.exp(1 - (depth_mm / skin_mm) ** FALL))
