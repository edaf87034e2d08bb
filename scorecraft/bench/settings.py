"""Settings of the turntable: which cuts are made without turning it in between.

A figure's cuts stay together. Copies of a figure are turned to the cutter one by one, up to a
number; single strokes and many copies share settings where that takes less care.
"""

from collections import Counter
from collections.abc import Mapping, Sequence

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.bench.splitting import apart, split
from scorecraft.bench.strokes import Strokes, care, table_angles
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass, replace
from scorecraft.practice import MOST_COPIES_AIMED, SAME_AIM_DEG, TURN_TABLE_S


@dataclass(frozen=True, slots=True)
class Unit:
    """Cuts made at one setting, and the care they take at every table angle (A,).

    `best` and `other` index the angles to choose from, half a turn or so apart.
    """

    cuts: tuple[int, ...]
    families: frozenset[int]
    weight: Floats
    best: int
    other: int
    spin_rad: float = 0.0

    def at_angles_of(self, leader: "Unit") -> "Unit":
        """Offer another unit's angles."""
        return replace(self, best=leader.best, other=leader.other)


def _unit(
    cuts: tuple[int, ...],
    families: frozenset[int],
    weight: Floats,
    best: int,
    spin_rad: float = 0.0,
) -> Unit:
    """Make a unit whose other angle is its best in the other half turn."""
    quarter = len(weight) // 4
    far = np.arange(best + quarter, best + len(weight) - quarter + 1) % len(weight)
    other = int(far[np.argmin(weight[far])])
    return Unit(cuts, families, weight, best, other, spin_rad)


@dataclass(frozen=True, slots=True)
class Setting:
    """Cuts made at one angle of the table.

    `choices` (K,) are the angles to choose from (radians, the best first) and `extra` (K,) the
    care in seconds each takes above the best; `first` and `last` are depth (mm) and blade (radians)
    of its first and last cut; `spin_rad` is how far the table turns clockwise under the blade.
    """

    cuts: tuple[int, ...]
    families: frozenset[int]
    choices: Floats
    extra: Floats
    first: tuple[float, float]
    last: tuple[float, float]
    spin_rad: float = 0.0


def settings(
    layout: Layout, units: Sequence[Unit], way: int, *, shared: bool = True
) -> list[Setting]:
    """Make the settings for units of a layout's cuts, in the order of the pattern.

    `way` is the table's usual turn, 1 clockwise. Without `shared` every figure is aimed at by
    itself, as a hand that follows the file would.
    """
    angles = table_angles(len(layout.cuts), way)
    if shared:
        units = _aligned(_paired(units, angles), angles)
    return [_setting(layout, unit, angles, way) for unit in units]


def units_of(layout: Layout, made: Strokes, cuts: Sequence[int], way: int) -> list[Unit]:
    """Part some of a layout's cuts into units, in the order of the pattern; `way` as above."""
    angles = table_angles(len(layout.cuts), way)
    rows = np.asarray(cuts, dtype=np.intp)
    weights = care(made.rows(rows), angles)
    spun = made.spun
    families: dict[int, dict[int, list[int]]] = {}
    units: list[Unit] = []
    for row, index in enumerate(cuts):
        cut = layout.cuts[index]
        if spun[index]:
            spin = float(abs(made.winding[index]))
            own = frozenset([cut.family])
            units.append(_unit((index,), own, weights[row], int(np.argmin(weights[row])), spin))
        else:
            families.setdefault(cut.family, {}).setdefault(cut.figure, []).append(row)
    for family, figures in families.items():
        for part, best in _parts(list(figures.values()), weights, angles):
            own_cuts = tuple(rows[part].tolist())
            units.append(_unit(own_cuts, frozenset([family]), weights[part].sum(axis=0), best))
    return sorted(units, key=lambda unit: unit.cuts[0])


def _parts(
    figures: list[list[int]], weights: Floats, angles: Floats
) -> list[tuple[list[int], int]]:
    """Part the rows of one statement's figures by setting; each with the index of its angle."""
    if len(figures) > 1 and max(len(figure) for figure in figures) == 1:
        rows = [figure[0] for figure in figures]
        shares = split(weights[rows], angles, copies=True)
        return [([rows[k] for k in part], angle) for part, angle in shares]
    if len(figures) > MOST_COPIES_AIMED.value:
        summed = np.array([weights[figure].sum(axis=0) for figure in figures])
        shares = split(summed, angles, copies=True)
        return [([row for k in part for row in figures[k]], angle) for part, angle in shares]
    return [
        ([figure[k] for k in part], angle)
        for figure in figures
        for part, angle in split(weights[figure], angles, rounded=len(figures) == 1)
    ]


def _paired(units: Sequence[Unit], angles: Floats) -> list[Unit]:
    """Join families that go round in the same steps: an inner and an outer ring of petals."""
    rings: dict[frozenset[int], list[Unit]] = {}
    for unit in units:
        rings.setdefault(unit.families, []).append(unit)
    joined: list[list[Unit]] = []
    for ring in rings.values():
        for k, other in enumerate(joined):
            match = _matching(ring, other, angles)
            if match is not None:
                joined[k] = [_joined(a, ring[i]) for a, i in zip(other, match, strict=True)]
                break
        else:
            joined.append(ring)
    return sorted((unit for ring in joined for unit in ring), key=lambda unit: unit.cuts[0])


def _matching(ring: list[Unit], other: list[Unit], angles: Floats) -> list[int] | None:
    """Find for each unit of another ring the one of this ring that lies the same way, if all do."""
    if len(ring) != len(other) or len(ring) < 2 or any(u.spin_rad for u in [*ring, *other]):
        return None
    mine, theirs = (angles[[unit.best for unit in each]] for each in (ring, other))
    near = apart(theirs[:, None], mine)
    match = np.argmin(near, axis=1).tolist()
    off = near[np.arange(len(other)), match].max()
    whole = len(set(match)) == len(ring)
    return match if whole and off <= np.radians(SAME_AIM_DEG.value) else None


def _joined(a: Unit, b: Unit) -> Unit:
    weight = a.weight + b.weight
    cuts = tuple(sorted(a.cuts + b.cuts))
    return _unit(cuts, a.families | b.families, weight, int(np.argmin(weight)))


def _aligned(units: list[Unit], angles: Floats) -> list[Unit]:
    """Let units that lie nearly the same way be made at the same angle."""
    if not units:
        return units
    rings = Counter(unit.families for unit in units)
    order = sorted(range(len(units)), key=lambda k: (units[k].best, k))
    aims = np.array([units[k].best for k in order]) * 2 * np.pi / len(angles)
    gaps = np.diff(np.concatenate([aims, [aims[0] + 2 * np.pi]]))
    first = (int(np.argmax(gaps)) + 1) % len(order)
    order = order[first:] + order[:first]
    out = list(units)
    group: list[int] = []
    near = np.radians(SAME_AIM_DEG.value)
    for k in order:
        if group and apart(angles[units[k].best], angles[units[group[0]].best]) > near:
            _align(out, group, rings)
            group = []
        group.append(k)
    _align(out, group, rings)
    return _leaning(out, rings)


def _leaning(units: list[Unit], rings: Mapping[frozenset[int], int]) -> list[Unit]:
    """Let a unit without copies be made at another's angle where that costs less than a turn."""
    out = list(units)
    for k, unit in enumerate(out):
        if rings[unit.families] > 1 or unit.spin_rad:
            continue
        others = [each for each in out if each.best != unit.best]
        if not others:
            continue
        leader = min(others, key=lambda each: float(unit.weight[each.best]))
        if unit.weight[leader.best] - unit.weight[unit.best] < TURN_TABLE_S.value:
            out[k] = unit.at_angles_of(leader)
    return out


def _align(units: list[Unit], group: list[int], rings: Mapping[frozenset[int], int]) -> None:
    """Give units one of their own angles: of the largest ring, which so keeps its even steps."""
    weight = np.sum([units[k].weight for k in group], axis=0)
    leader = min(group, key=lambda k: (-rings[units[k].families], weight[units[k].best]))
    for k in group:
        units[k] = units[k].at_angles_of(units[leader])


def _setting(layout: Layout, unit: Unit, angles: Floats, way: int) -> Setting:
    """Offer a unit's angles, with the care each takes above its least."""
    picked = [unit.best, unit.other]
    extra = np.maximum(unit.weight[picked] - unit.weight.min(), 0.0)
    order = by_depth(layout, unit.cuts)
    ends = (layout.cuts[order[end]] for end in (0, -1))
    first, last = ((cut.depth_mm, cut.blade_rad) for cut in ends)
    return Setting(order, unit.families, angles[picked], extra, first, last, way * unit.spin_rad)


def by_depth(layout: Layout, cuts: Sequence[int]) -> tuple[int, ...]:
    """Sort cuts from light to deep, else as in the pattern, like parts together."""
    first: dict[tuple[int, str], int] = {}
    for index in sorted(cuts):
        first.setdefault((layout.cuts[index].family, layout.cuts[index].part), index)

    def key(index: int) -> tuple[float, int, int]:
        cut = layout.cuts[index]
        return (round(cut.depth_mm, 1), first[cut.family, cut.part], index)

    return tuple(sorted(cuts, key=key))
