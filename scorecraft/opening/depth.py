"""How deep to cut for a wished opening.

Cuts shield one another, so all wishes are met together. Newton's method on the logarithms of the
widest mouths. Their slopes cost a solve for every wish, so they are carried on from round to round
by what the last step did (Broyden, Math. Comp. 19 (1965) 577-593; recalled), from longer panels to
shorter ones too, and worked out anew where that does not do.
"""

import math
from collections.abc import Callable, Sequence
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Flags, Floats, Ints, Line
from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass
from scorecraft.opening.bulge import FLAT, Bed
from scorecraft.opening.held import OPENING_PRECISE, Held, held
from scorecraft.opening.ligament import springs
from scorecraft.opening.lip import Blades
from scorecraft.opening.load import Strain
from scorecraft.opening.result import Opening
from scorecraft.opening.solve import checked_depths, checked_sizes, opening_of, rest, settled
from scorecraft.opening.system import System, system
from scorecraft.practice import DEPTH_STEP_MM

OPENING_WISH_ROUNDS = 60
"""Rounds in which depths for wished openings must be found."""
OPENING_WISH_ERROR = 0.005
"""How near an opening comes to the wish before the search ends, as a share of it."""
COARSE_ERROR = 0.03
"""As near it must come with the longer panels of the beginning."""
PRECISE = 1e-4
"""Jumps are as good as this on the way, see `Held.solve`."""
OPENING_WISH_MOST = 2e6
"""With more panels times wishes than this no depths are sought."""
OPENING_WISH_WORK = 30.0
"""The work of a search for depths, in solves of 1000 panels: about a second on one core."""
OPENING_SHALLOWEST_MM = 0.1
"""No wish makes a cut shallower than this."""
FIRST_TRY = 1 / 3
"""Depth that the search starts from, as a share of the skin."""
COARSER = 1.6
"""The search begins with panels longer by this; the last rounds have those asked for."""
LONGEST_STEP = 0.4
"""The most a depth changes in one round, as a share of the skin."""
BEYOND = 2.0
"""So many times the skin deep, the inside holds a hundredth of what it held at first."""
LEAST_SLOPE = 0.2
"""Least change of the logarithm of an opening, over the thickness of the skin, that is believed:
near the bottom of the skin a deeper cut hardly opens further."""
MOST_AHEAD = 4.0
"""How many times further than alone a line may go because all go together."""
ASTRAY = 0.3
"""Slopes are worked out anew where a round that is stuck changed this share more or less than
they told."""
SLOPE_PRECISE = 0.01
"""Slopes are as good as this share of the greatest change."""
NUDGE = 1e-4
"""Share of the skin over which the change of the springs with depth is taken."""


@dataclass(frozen=True, eq=False)
class Wanted:
    """Depths that meet wishes, per line: depth and widest mouth reached (mm), and what is possible.

    `reachable` is False where no depth is enough. A cut that its neighbours open further than
    wished stays at `OPENING_SHALLOWEST_MM` and counts as reachable. `most_mm` is how far the line
    opens when all lines with a wish are as deep as helps, or what it reached if that is more.
    Lines without a wish keep their depth. Where `settled` is False the work allowed was done before
    all wishes were met: these are the depths that came nearest. `deepest` opens all lines as deep
    as helps (mm), which takes as long as many rounds of the search.
    """

    depth_mm: Floats
    reached_mm: Floats
    reachable: Flags
    deepest: Callable[[], Floats]
    settled: bool = True

    @cached_property
    def most_mm(self) -> Floats:
        """How far each line opens at the most (mm), worked out when asked for."""
        return np.maximum(self.reached_mm, self.deepest())


@dataclass(frozen=True, slots=True, eq=False)
class _Search:
    """What stays the same from round to round."""

    equations: System
    skin_mm: float
    inside: float
    slant: Floats
    area_mm2: float | None
    wanted: Floats
    deepest_mm: float

    @property
    def wishes(self) -> Ints:
        """Lines with a wish."""
        return np.flatnonzero(np.isfinite(self.wanted))

    def rounds(self, work: float) -> int:
        """Tell how many rounds make up an amount of work, one at least.

        A round solves the equations once; the unit is a solve of 1000 panels.
        """
        count = len(self.equations.panels)
        return max(1, min(int(1000 * work / count), OPENING_WISH_ROUNDS))


def to_hand(depth_mm: ArrayLike) -> Floats:
    """Round depths (mm) to what a hand can cut, `DEPTH_STEP_MM`, and never to nothing."""
    step = DEPTH_STEP_MM.value
    rounded: Floats = np.maximum(step, step * np.round(np.asarray(depth_mm) / step))
    return rounded


def depths_for(
    lines: Sequence[Line],
    wanted_mm: ArrayLike,
    depth_mm: ArrayLike,
    *,
    strain: Strain,
    skin_mm: float = 12.0,
    inside: float = 0.0,
    slant: ArrayLike = 0.0,
    area_mm2: float | None = None,
    panel_mm: float = 2.0,
    bed: Bed = FLAT,
    deepest_mm: float = math.inf,
) -> Wanted:
    """Find depths at which lines open as wide as wished, all together.

    `wanted_mm` is the wished widest mouth of each line, nan for lines that stay at their
    `depth_mm`, `deepest_mm` how deep the others may be; none goes deeper than where it would open
    hardly further, the skin, or twice that where the inside holds. The rest is as in `solve`. The
    search ends after `OPENING_WISH_WORK`. Raises UsageError for wishes that are not positive, and
    for more panels than are searched.
    """
    wanted = _checked_wishes(lines, wanted_mm)
    fixed = np.isnan(wanted)
    given = checked_depths(lines, np.where(fixed, depth_mm, 0.0))
    deepest_mm = min(deepest_mm, BEYOND * skin_mm if inside else skin_mm)
    depth = np.where(fixed, given, deepest_mm)
    checked_sizes(skin_mm, area_mm2, inside)
    slants = checked_depths(lines, slant, "slant")

    def search_near(about: Floats, size_mm: float) -> _Search:
        """Set up for depths near these: the springs of a cut move the tips of its panels."""
        equations = system(lines, size_mm, springs(about, skin_mm, inside).normal, strain, bed)
        most = OPENING_WISH_MOST * panel_mm / size_mm  # longer panels are fewer
        if len(equations.panels) * np.isfinite(wanted).sum() > most:
            raise UsageError("too many cuts ask for an opening of their own, with `opens`")
        return _Search(equations, skin_mm, inside, slants, area_mm2, wanted, deepest_mm)

    def most_mm() -> Floats:
        return _opening(search_near(depth, panel_mm), depth)[0].widest_mm

    if fixed.all():
        return Wanted(depth, most_mm(), np.ones(len(lines), dtype=bool), most_mm)
    start = np.minimum(depth, np.where(fixed, depth, FIRST_TRY * skin_mm))
    work = OPENING_WISH_WORK / 3
    coarse = search_near(start, COARSER * panel_mm)
    first, slopes = _searched(coarse, start, most_mm, work, COARSE_ERROR)
    fine = search_near(first.depth_mm, panel_mm)
    known = slopes if first.settled else None
    return _searched(fine, first.depth_mm, most_mm, 2 * work, OPENING_WISH_ERROR, known)[0]


def _checked_wishes(lines: Sequence[Line], wanted_mm: ArrayLike) -> Floats:
    """Return one wish per line, or refuse."""
    wanted = np.asarray(wanted_mm, dtype=np.float64)
    if wanted.shape != (len(lines),):
        raise UsageError(f"{len(lines)} cuts need {len(lines)} openings asked for, or nan")
    if not (np.isnan(wanted) | ((wanted > 0) & np.isfinite(wanted))).all():
        raise UsageError("an opening asked for must be a number of mm above 0")
    return wanted


def _searched(
    search: _Search,
    depth: Floats,
    most: Callable[[], Floats],
    work: float,
    error: float,
    slopes: Floats | None = None,
) -> tuple[Wanted, Floats | None]:
    """Change the depths of lines with a wish until every wish is met or out of reach.

    It is met within a share, and begun with slopes if any are known; the last ones are told too.
    After so much work the depths that came nearest are taken.
    """
    wishes = search.wishes
    depth = depth.copy()
    tried: list[tuple[float, Floats, Floats]] = []
    opening, step, before = None, np.zeros(len(wishes)), np.zeros(len(wishes))
    for turn in range(search.rounds(work)):
        opening, matrix = _opening(search, depth, opening)
        reached = opening.widest_mm
        missing = np.log(search.wanted[wishes] / np.maximum(reached[wishes], 1e-12))
        if _settled(depth[wishes], search.deepest_mm, missing, error):
            reachable = np.ones(len(depth), dtype=bool)
            reachable[wishes] = missing <= error
            return Wanted(depth, reached, reachable, most), slopes
        tried.append((float(np.abs(missing).sum()), depth.copy(), reached))
        change = before - missing
        if slopes is None or (_stuck(tried) and _astray(slopes @ step, change)):
            slopes = _slopes(search, opening, matrix, depth)
        else:
            slopes = _carried_on(slopes, step, change)
        longest = LONGEST_STEP * search.skin_mm * 0.9**turn
        least = min(OPENING_SHALLOWEST_MM, search.deepest_mm)
        change = np.clip(_step(search, slopes, depth[wishes], missing), -longest, longest)
        wanted = depth[wishes] + change
        new = np.clip(wanted, least, search.deepest_mm)
        step, before = new - depth[wishes], missing
        depth[wishes] = new
    _, depth, reached = min(tried, key=lambda each: each[0])
    met = np.ones(len(depth), dtype=bool)
    return Wanted(depth, reached, met, most, settled=False), slopes


def _settled(depth: Floats, deepest: float, missing: Floats, error: float) -> bool:
    """Tell whether every wish is met within a share, or its cut as deep or shallow as can be."""
    most = (depth >= deepest) & (missing > 0)
    least = (depth <= OPENING_SHALLOWEST_MM) & (missing < 0)
    return bool(((np.abs(missing) <= error) | most | least).all())


def _opening(search: _Search, depth: Floats, before: Opening | None = None) -> tuple[Opening, Held]:
    """Solve for the openings at depths per line, starting from others; give the equations too."""
    equations, load = search.equations, search.equations.load
    parts, own = equations.panels, equations.depths(depth)
    around = rest(parts, load, search.area_mm2)
    matrix = held(equations.elastic, springs(own, search.skin_mm, search.inside), around)
    start = None if before is None else before.jumps_mm
    done = settled(matrix, load, start, OPENING_PRECISE if start is None else PRECISE)
    blades = Blades(own, equations.depths(search.slant))
    return opening_of(parts, blades, done, load, search.skin_mm, search.area_mm2), matrix


def _stuck(tried: Sequence[tuple[float, Floats, Floats]]) -> bool:
    """Tell whether the last two rounds have not halved what is missing."""
    return len(tried) > 3 and tried[-1][0] > tried[-3][0] / 2


def _astray(told: Floats, change: Floats) -> bool:
    """Tell whether slopes told (W,) too little of what a step changed (W,)."""
    return bool(np.abs(change - told).sum() > ASTRAY * np.abs(told).sum())


def _carried_on(slopes: Floats, step: Floats, change: Floats) -> Floats:
    """Change slopes (W, W) as little as makes them tell what a step (W,) changed (W,)."""
    missed = change - slopes @ step
    return slopes + np.outer(missed, step) / max(float(step @ step), 1e-300)


def _step(search: _Search, slopes: Floats, depth: Floats, missing: Floats) -> Floats:
    """Change the depths (W,) that have a wish: Newton's step, where the line's own slope agrees.

    Lines that can go no further stay out of it. Where wishes work against one another the joint
    step would lead away, so a line that lacks opening then goes deeper by itself.
    """
    free = ~((depth >= search.deepest_mm) & (missing > 0))
    free &= ~((depth <= OPENING_SHALLOWEST_MM) & (missing < 0))
    at = np.arange(len(depth))
    slopes = slopes.copy()
    slopes[at, at] = np.maximum(slopes[at, at], LEAST_SLOPE / search.skin_mm)
    alone: Floats = missing / slopes[at, at]
    joint = np.zeros(len(depth))
    joint[free] = np.linalg.lstsq(slopes[np.ix_(free, free)], missing[free], rcond=1e-6)[0]
    agree = (joint * alone > 0) & (np.abs(joint) < MOST_AHEAD * np.abs(alone))
    return np.where(agree, joint, alone)


def _slopes(search: _Search, opening: Opening, matrix: Held, depth: Floats) -> Floats:
    """Change of the logarithm of each widest mouth with each depth (1/mm), lines with a wish.

    A deeper cut takes away spring, which acts like a force on its panels: one right-hand side
    per line. Which panels are pressed shut is taken to stay as it is.
    """
    parts, wishes = search.equations.panels, search.wishes
    own = search.equations.depths(depth)
    nudge = NUDGE * search.skin_mm
    now, deeper = (springs(d, search.skin_mm, search.inside) for d in (own, own + nudge))
    soft = (now.normal - deeper.normal) / nudge, (now.sliding - deeper.sliding) / nudge
    gap = opening.gap_mm
    push = np.concatenate([soft[0] * gap, soft[1] * opening.slide_mm])
    push *= np.tile(parts.length, 2)
    sides = np.zeros((2 * len(parts), len(wishes)))
    for column, line in enumerate(wishes):
        rows = np.concatenate([parts.of_line[line], parts.of_line[line] + len(parts)])
        sides[rows, column] = push[rows]
    change = matrix.each(sides, SLOPE_PRECISE)
    slant = search.equations.depths(search.slant)
    here, below = Blades(own, slant), Blades(own + nudge, slant)
    mouth = here.across(gap, search.skin_mm)
    show = (here.across(gap + nudge, search.skin_mm) - mouth) / nudge
    direct = (below.across(gap, search.skin_mm) - mouth) / nudge
    slopes = np.empty((len(wishes), len(wishes)))
    for row, line in enumerate(wishes):
        at = parts.of_line[line][np.argmax(opening.mouth_mm[parts.of_line[line]])]
        slopes[row] = show[at] * change[at]
        slopes[row, row] += direct[at]
        slopes[row] /= max(opening.mouth_mm[at], 1e-12)
    return slopes
