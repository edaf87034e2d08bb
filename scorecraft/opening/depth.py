"""How deep to cut for a wished opening.

Cuts shield one another, so all wishes are met together. Newton's method on the logarithms of the
widest mouths: the factors that give the openings give their change with every depth too.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Flags, Floats, Ints, Line
from scorecraft.errors import UsageError
from scorecraft.opening.blades import Blades
from scorecraft.opening.ligament import springs
from scorecraft.opening.load import Load, Strain, forces, load_on
from scorecraft.opening.result import Opening
from scorecraft.opening.solve import checked_depths, checked_sizes, opening_of, settled
from scorecraft.opening.system import Solver, System, held, system
from scorecraft.practice import DEPTH_STEP_MM

OPENING_WISH_ROUNDS = 60
"""Rounds in which depths for wished openings must be found."""
OPENING_WISH_ERROR = 0.005
"""How near an opening comes to the wish before the search ends, as a share of it."""
OPENING_WISH_MOST_PANELS = 1_500.0
"""With more panels than this, without a turn, no depths are sought."""
OPENING_WISH_WORK = 6.0
"""The work of a search for depths, in solves of 1000 panels: some 3 s on one core."""
OPENING_SHALLOWEST_MM = 0.1
"""No wish makes a cut shallower than this."""
FIRST_TRY = 1 / 3
"""Depth that the search starts from, as a share of the skin."""
COARSER = 1.6
"""The search begins with panels longer by this; the last rounds have those asked for."""
LONGEST_STEP = 0.25
"""The most a depth changes in one round, as a share of the skin."""
BEYOND = 2.0
"""So many times the skin deep, the inside holds a hundredth of what it held at first."""
LEAST_SLOPE = 0.2
"""Least change of the logarithm of an opening, over the thickness of the skin, that is believed:
near the bottom of the skin a deeper cut hardly opens further."""
MOST_AHEAD = 4.0
"""How many times further than alone a line may go because all go together."""
NUDGE = 1e-4
"""Share of the skin over which the change of the springs with depth is taken."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """Depths that meet wishes, per line: depth and widest mouth reached (mm), and what is possible.

    `reachable` is False where no depth is enough. A cut that its neighbours open further than
    wished stays at `OPENING_SHALLOWEST_MM` and counts as reachable. `most_mm` is how far the line
    opens when all lines with a wish are as deep as helps, or what it reached if that is more.
    Lines without a wish keep their depth. Where `settled` is False the work allowed was done before
    all wishes were met: these are the depths that came nearest.
    """

    depth_mm: Floats
    reached_mm: Floats
    reachable: Flags
    most_mm: Floats
    settled: bool = True


@dataclass(frozen=True, slots=True)
class _Search:
    """What stays the same from round to round."""

    equations: System
    load: Load
    skin_mm: float
    inside: float
    slant: Floats
    area_mm2: float | None
    wanted: Floats

    @property
    def deepest_mm(self) -> float:
        """Deeper cuts open hardly further: the skin, or twice that where the inside holds."""
        return deepest(self.skin_mm, self.inside)

    @property
    def wishes(self) -> Ints:
        """Lines with a wish."""
        return np.flatnonzero(np.isfinite(self.wanted))

    def rounds(self, work: float) -> int:
        """Tell how many rounds make up an amount of work, one at least.

        A round factors the equations, the cube of the panels over the square of the turns, and
        answers a side for every wish. The unit is a solve of 1000 panels.
        """
        count, turn = len(self.equations.panels), self.equations.turn
        parts = turn.count if turn else 1
        one = (count / 1000) ** 3 / parts**2 * (1 + 3 * len(self.wishes) * parts / count)
        return max(1, min(int(work / one), OPENING_WISH_ROUNDS))


def deepest(skin_mm: float, inside: float) -> float:
    """Give the depth (mm) beyond which cuts open hardly further."""
    return BEYOND * skin_mm if inside else skin_mm


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
) -> Wanted:
    """Find depths at which lines open as wide as wished, all together.

    `wanted_mm` is the wished widest mouth of each line, nan for lines that stay at their
    `depth_mm`; the rest is as in `solve`. The search ends after `OPENING_WISH_WORK`. Raises
    UsageError for wishes that are not positive, and for more panels than are searched.
    """
    wanted = _checked_wishes(lines, wanted_mm)
    fixed = np.isnan(wanted)
    given = checked_depths(lines, np.where(fixed, depth_mm, 0.0))
    depth = np.where(fixed, given, deepest(skin_mm, inside))
    checked_sizes(skin_mm, area_mm2, inside)
    # wishes stand in for depths here: only lines that are alike in both repeat with a turn
    alike = np.where(fixed, depth, 1e6 + wanted)
    slants = checked_depths(lines, slant, "slant")

    def search_near(about: Floats, size_mm: float) -> _Search:
        """Set up for depths near these: the springs of a cut move the tips of its panels."""
        held = springs(about, skin_mm, inside).normal
        most_panels = OPENING_WISH_MOST_PANELS
        equations = system(lines, alike, size_mm, held=held, strain=strain, most_panels=most_panels)
        load = load_on(equations.panels, strain)
        return _Search(equations, load, skin_mm, inside, slants, area_mm2, wanted)

    most = _opening(search_near(depth, panel_mm), depth)[0].widest_mm
    if fixed.all():
        return Wanted(depth, most, np.ones(len(lines), dtype=bool), most)
    start = np.where(fixed, depth, FIRST_TRY * skin_mm)
    work = OPENING_WISH_WORK / 2
    first = _searched(search_near(start, COARSER * panel_mm), start, most, work)
    return _searched(search_near(first.depth_mm, panel_mm), first.depth_mm, most, work)


def _checked_wishes(lines: Sequence[Line], wanted_mm: ArrayLike) -> Floats:
    """Return one wish per line, or refuse."""
    wanted = np.asarray(wanted_mm, dtype=np.float64)
    if wanted.shape != (len(lines),):
        raise UsageError(f"{len(lines)} cuts need {len(lines)} wished openings or nan")
    if not (np.isnan(wanted) | ((wanted > 0) & np.isfinite(wanted))).all():
        raise UsageError("a wished opening must be a number of mm above 0")
    return wanted


def _searched(search: _Search, depth: Floats, most: Floats, work: float) -> Wanted:
    """Change the depths of lines with a wish until every wish is met or out of reach.

    After so much work the depths that came nearest are taken.
    """
    wishes = search.wishes
    depth = depth.copy()
    tried: list[tuple[float, Floats, Floats]] = []
    for turn in range(search.rounds(work)):
        opening, solver = _opening(search, depth)
        reached = opening.widest_mm
        missing = np.log(search.wanted[wishes] / np.maximum(reached[wishes], 1e-12))
        if _settled(depth[wishes], search.deepest_mm, missing):
            reachable = np.ones(len(depth), dtype=bool)
            reachable[wishes] = missing <= OPENING_WISH_ERROR
            return Wanted(depth, reached, reachable, np.maximum(reached, most))
        tried.append((float(np.abs(missing).sum()), depth.copy(), reached))
        step = _step(search, opening, solver, depth, missing)
        longest = LONGEST_STEP * search.skin_mm * 0.9**turn
        depth[wishes] = np.clip(
            depth[wishes] + np.clip(step, -longest, longest),
            min(OPENING_SHALLOWEST_MM, search.skin_mm),
            search.deepest_mm,
        )
    _, depth, reached = min(tried, key=lambda each: each[0])
    met = np.ones(len(depth), dtype=bool)
    return Wanted(depth, reached, met, np.maximum(reached, most), settled=False)


def _settled(depth: Floats, deepest: float, missing: Floats) -> bool:
    """Tell whether every wish is met, or its cut as deep or as shallow as can be."""
    error = OPENING_WISH_ERROR
    most = (depth >= deepest) & (missing > 0)
    least = (depth <= OPENING_SHALLOWEST_MM) & (missing < 0)
    return bool(((np.abs(missing) <= error) | most | least).all())


def _opening(search: _Search, depth: Floats) -> tuple[Opening, Solver]:
    """Solve for the openings at depths per line, and give the factored equations they came from."""
    parts = search.equations.panels
    own = search.equations.depths(depth)
    solver = held(search.equations, springs(own, search.skin_mm, search.inside))
    done = settled(parts, solver, search.load, search.area_mm2)
    blades = Blades(own, search.equations.depths(search.slant))
    opening = opening_of(parts, blades, done, search.load, search.skin_mm, search.area_mm2)
    return opening, solver


def _step(
    search: _Search,
    opening: Opening,
    solver: Solver,
    depth: Floats,
    missing: Floats,
) -> Floats:
    """Change the depths that have a wish: Newton's step, where the line's own slope agrees.

    Lines that can go no further stay out of it. Where wishes work against one another the joint
    step would lead away, so a line that lacks opening then goes deeper by itself.
    """
    wishes = search.wishes
    slopes = _slopes(search, opening, solver, depth)
    free = ~((depth[wishes] >= search.deepest_mm) & (missing > 0))
    free &= ~((depth[wishes] <= OPENING_SHALLOWEST_MM) & (missing < 0))
    least = LEAST_SLOPE / search.skin_mm
    at = np.arange(len(wishes))
    slopes[at, at] = np.maximum(slopes[at, at], least)
    alone: Floats = missing / slopes[at, at]
    joint = np.zeros(len(wishes))
    joint[free] = np.linalg.lstsq(slopes[np.ix_(free, free)], missing[free], rcond=1e-6)[0]
    agree = (joint * alone > 0) & (np.abs(joint) < MOST_AHEAD * np.abs(alone))
    return np.where(agree, joint, alone)


def _slopes(search: _Search, opening: Opening, solver: Solver, depth: Floats) -> Floats:
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
    change = _with_growth(search, solver, solver.solve(sides))[: len(parts)]
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


def _with_growth(search: _Search, solver: Solver, change: Floats) -> Floats:
    """Add what the mean tension's answer to opening further does, where growth is given."""
    if search.area_mm2 is None:
        return change
    unit = forces(search.equations.panels)
    free = solver.solve(unit)
    stiff = search.load.compliance + unit.T @ free / search.area_mm2
    answer: Floats = change - free @ np.linalg.solve(stiff, unit.T @ change / search.area_mm2)
    return answer
