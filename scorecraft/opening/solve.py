"""The slit-opening model: cuts in, openings out."""

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Floats, Line
from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass
from scorecraft.opening.contact import settle
from scorecraft.opening.held import OPENING_PRECISE, Held, Rest, held
from scorecraft.opening.ligament import Springs, springs
from scorecraft.opening.lip import Blades
from scorecraft.opening.load import (
    Load,
    Strain,
    forces,
    scale_of,
    tensor,
    uncut_forces,
)
from scorecraft.opening.panels import Panels
from scorecraft.opening.result import Opening
from scorecraft.opening.system import System, system


@dataclass(frozen=True, slots=True, eq=False)
class Jumps:
    """Jumps (2M,) of all panels, gaps then slides in mm, and the mean tension left, (3,).

    `uncut` (2M,) is the force of the uncut sheet that opened them.
    """

    jumps: Floats
    left: Floats
    uncut: Floats


def solve(
    lines: Sequence[Line],
    depth_mm: ArrayLike,
    *,
    strain: Strain,
    skin_mm: float = 12.0,
    area_mm2: float | None = None,
    panel_mm: float = 2.0,
    inside: float = 0.0,
    slant: ArrayLike = 0.0,
) -> Opening:
    """Predict how cuts along lines (list of (N, 2), mm) of given depths (mm) open.

    `depth_mm` is one number per line (or one for all), below the surface; from `skin_mm` on a cut
    is through the skin, and held by the dough under it alone, whose modulus is `inside` times the
    skin's: 0 holds nothing. `slant` is how far each blade reaches sideways per depth: 0 upright.
    `strain` (exx, eyy, exy) is the mismatch strain of the uncut sheet: how much the loaf grows
    and its skin does not; it may be a function from points (N, 2) to strains (N, 3), and its
    mean is then taken over the cuts, weighted by length. `area_mm2` is the area of the sheet
    whose mean growth is given, tied at a round rim if the strain is a `Field`; None is an endless
    sheet under the tension that the strain puts into it uncut. `panel_mm` is the length of the
    panels. Raises UsageError for numbers that make no sense and for more panels than fit,
    ScorecraftError where contact does not settle. The same input always gives the same numbers.
    Time and memory grow hardly more than the panels.

    >>> cut = np.array([[-30.0, 0.0], [30.0, 0.0]])
    >>> through = solve([cut], 12.0, strain=(0.1, 0.1, 0.0))
    >>> half = solve([cut], 6.0, strain=(0.1, 0.1, 0.0))
    >>> round(float(through.mouth_mm.max())), round(float(half.mouth_mm.max()))
    (20, 9)
    """
    depth = checked_depths(lines, depth_mm)
    checked_sizes(skin_mm, area_mm2, inside)
    equations = system(lines, panel_mm, springs(depth, skin_mm, inside).normal, strain)
    return opened(
        equations,
        depth,
        skin_mm=skin_mm,
        area_mm2=area_mm2,
        inside=inside,
        slant=checked_depths(lines, slant, "slant"),
    )


def opened(
    equations: System,
    depth_mm: Floats,
    *,
    skin_mm: float,
    area_mm2: float | None,
    inside: float = 0.0,
    slant: Floats | None = None,
    near: Opening | None = None,
    precise: float = OPENING_PRECISE,
) -> Opening:
    """Solve equations that are set up already for depths per line (mm); see `solve`.

    They are started from an opening `near` the answer, and jumps are as precise as in `Held.solve`.
    """
    depth, load = equations.depths(depth_mm), equations.load
    slants = np.zeros(len(depth)) if slant is None else equations.depths(slant)
    start = None if near is None else near.jumps_mm
    held_by = springs(depth, skin_mm, inside)
    done = jumps(equations, held_by, load, area_mm2=area_mm2, start=start, precise=precise)
    return opening_of(equations.panels, Blades(depth, slants), done, load, skin_mm, area_mm2)


def opening_of(
    parts: Panels,
    blades: Blades,
    done: Jumps,
    load: Load,
    skin_mm: float,
    area_mm2: float | None,
) -> Opening:
    """Tell the jumps of panels, each cut by its blade, as an `Opening`."""
    gap, slide = np.split(done.jumps, 2)
    scale = scale_of(load.mean)
    freed = (done.uncut - blades.carried(done.jumps, parts.length, skin_mm)) @ done.jumps / 2
    stored = load.stored(area_mm2) if area_mm2 is not None else math.inf
    return Opening(
        midpoint_mm=parts.midpoint,
        line=parts.line,
        length_mm=parts.length,
        gap_mm=gap,
        slide_mm=slide,
        mouth_mm=blades.across(gap, skin_mm),
        lift_mm=blades.lift(gap, skin_mm),
        tension_left=tensor(done.left) / scale,
        uncut_tension=scale,
        work_taken=float(freed / stored) if freed > 0 else 0.0,
        skin_mm=skin_mm,
        panels=parts,
        load=load,
    )


def jumps(
    equations: System,
    ligaments: Springs,
    load: Load,
    *,
    area_mm2: float | None = None,
    start: Floats | None = None,
    precise: float = OPENING_PRECISE,
) -> Jumps:
    """Solve for the jumps of all panels with any springs."""
    if not len(equations.panels):
        return Jumps(np.zeros(0), load.mean, np.zeros(0))
    around = rest(equations.panels, load, area_mm2)
    return settled(held(equations.elastic, ligaments, around), load, start, precise)


def rest(parts: Panels, load: Load, area_mm2: float | None) -> Rest | None:
    """Tell how a sheet of an area pulls back where its growth is given; None if it is endless.

    A sheet tied at its rim gives less evenly, see `Stretch.tied`.
    """
    if area_mm2 is None:
        return None
    return Rest(forces(parts), np.asarray(np.linalg.inv(load.compliance) / area_mm2))


def settled(
    matrix: Held, load: Load, start: Floats | None = None, precise: float = OPENING_PRECISE
) -> Jumps:
    """Solve equations with their springs under a load; jumps (2M,) near the answer help.

    Where the growth is given the mean tension left is that of the uncut sheet less S^-1 times the
    mean strain that the jumps add, S the compliance of the uncut sheet (Kachanov, Appl. Mech. Rev.
    45 (1992) 304-335, sec. 2; recalled); else it stays.
    """
    parts = matrix.elastic.panels
    force = uncut_forces(parts, load)
    found = settle(matrix, force, start, precise).jumps
    taken = matrix.rest.times(found) if matrix.rest is not None else 0.0
    return Jumps(found, load.mean - taken, force)


def checked_depths(lines: Sequence[Line], depth_mm: ArrayLike, what: str = "depth") -> Floats:
    """Return one depth (or slant) per line, or refuse.

    Depths (N,) in mm. Raises UsageError.
    """
    depth = np.asarray(depth_mm, dtype=np.float64)
    if depth.ndim == 0:
        depth = np.full(len(lines), float(depth))
    if depth.shape != (len(lines),):
        raise UsageError(f"{len(lines)} cuts need {len(lines)} {what}s, not {depth.size}")
    if not (np.isfinite(depth) & (depth >= 0)).all():
        raise UsageError(f"the {what} of a cut must be a number, 0 or more")
    return depth


def checked_sizes(skin_mm: float, area_mm2: float | None, inside: float = 0.0) -> None:
    """Refuse a skin, an inside or a sheet that cannot be; raises UsageError."""
    if not 0 <= inside <= 1:
        raise UsageError(f"an inside {inside} times as stiff as the skin cannot be: 0 to 1")
    if not (np.isfinite(skin_mm) and skin_mm > 0):
        raise UsageError(f"a skin {skin_mm} mm thick cannot be")
    if area_mm2 is not None and not (np.isfinite(area_mm2) and area_mm2 > 0):
        raise UsageError(f"a sheet of {area_mm2} mm2 cannot be")
