"""Cuts that cross: at a sharp angle, or where they belong to different figures.

Cuts that end on one another (a vein on its midrib, the tip of a leaf, a T) are meant to meet, and
so are the lines of one figure that cross at a good angle (a cross, a lattice).
"""

import math
from collections.abc import Iterator
from functools import partial

import numpy as np
import shapely

from scorecraft.arrays import Flags, Floats, Ints, Shapes
from scorecraft.checks import telling_cuts as say
from scorecraft.checks.changes import parted, shortened, turned
from scorecraft.checks.finding import SEVERITIES, Finding, Offer, Severity
from scorecraft.checks.linework import strings
from scorecraft.checks.meetings import Meetings, meetings
from scorecraft.checks.neighbours import unseen
from scorecraft.checks.telling import both, likewise, told_once
from scorecraft.curves import length
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.loaf.places import where
from scorecraft.practice import CLEAR_MM, SHALLOW_MM, SHARP_CROSSING_DEG
from scorecraft.units import half_up

MOST_TRIMMED = 400
"""So many crossings of two statements are looked at for how much sooner their cuts should end."""


def crossings(layout: Layout) -> list[Finding]:
    """Find crossings at a sharp angle, crossings of different figures, and cuts crossing selves."""
    lines = strings(layout)
    if len(lines) == 0:
        return []
    met = meetings(layout, lines)
    sharp = np.degrees(met.angle) < SHARP_CROSSING_DEG.value
    told = _worth_telling(layout, met, sharp)
    grave = [_severity(layout, met, int(i), bool(sharp[i])) for i in told]
    keys = [(*_families(layout, met, int(i)), bool(sharp[i])) for i in told]
    findings = []
    for worst, members in told_once(keys, np.pi - met.angle[told]):
        teller = _sharp if sharp[told[worst]] else _between_figures
        weightiest = min((grave[i] for i in members), key=SEVERITIES.index)
        findings.append(teller(layout, met, told[members], int(told[worst]), weightiest))
    more = [] if met.whole else [unseen("crossings", layout)]
    return [*findings, *_own_crossings(layout, lines), *more]


def _worth_telling(layout: Layout, met: Meetings, sharp: Flags) -> Ints:
    """Leave out what is meant: lattices of one figure, and shallow ones of one statement."""
    figure = np.array([cut.figure for cut in layout.cuts])
    family = np.array([cut.family for cut in layout.cuts])
    depth = layout.depths_mm
    one, other = met.first, met.second
    deep = np.maximum(depth[one], depth[other]) > SHALLOW_MM.value
    within = figure[one] == figure[other]
    repeated = family[one] == family[other]
    told = np.where(within, sharp & deep, deep | sharp | ~repeated)
    return np.flatnonzero(met.crosses & told)


def _families(layout: Layout, met: Meetings, i: int) -> tuple[int, int]:
    one, other = sorted((layout.cuts[met.first[i]].family, layout.cuts[met.second[i]].family))
    return one, other


def _severity(layout: Layout, met: Meetings, i: int, sharp: bool) -> Severity:
    """Tell shallow crossings and those of single deep strokes (a lattice) as notes."""
    one, other = layout.cuts[met.first[i]], layout.cuts[met.second[i]]
    if max(one.depth_mm, other.depth_mm) <= SHALLOW_MM.value:
        return "note"
    drawn = one.part != one.word or other.part != other.word
    return "warning" if sharp or drawn else "note"


def _sharp(layout: Layout, met: Meetings, found: Ints, worst: int, severity: Severity) -> Finding:
    one, other = layout.cuts[met.first[worst]], layout.cuts[met.second[worst]]
    angle = math.degrees(met.angle[worst])
    turn = math.ceil(SHARP_CROSSING_DEG.value - angle)
    place = where(layout.loaf, met.point[worst])
    message = say.SHARP_CROSSING(cuts=both(one, other), angle=angle, place=place)
    sooner, shorten_mm = _sooner(layout, _trims(layout, met, found))
    offers = [*_turns(layout, met, worst, turn), sooner] if len(found) == 1 else [sooner]
    figures = {"count": len(found), "angle_deg": angle, "turn_deg": turn, "shorten_mm": shorten_mm}
    return Finding(
        "crossings",
        severity,
        message + likewise(len(found), met.whole),
        say.SQUARER,
        max(one.place, other.place),
        figures,
        _cuts(met, found),
        offers=tuple(offers),
    )


def _between_figures(
    layout: Layout, met: Meetings, found: Ints, worst: int, severity: Severity
) -> Finding:
    trims = _trims(layout, met, found)
    most = int(np.argmax([trim.mm for trim in trims]))
    deepest = int(found[most]) if len(found) < MOST_TRIMMED else worst
    one, other = layout.cuts[met.first[deepest]], layout.cuts[met.second[deepest]]
    place = where(layout.loaf, met.point[deepest])
    message = say.CROSSING(cuts=both(one, other), place=place)
    sooner, shorten_mm = _sooner(layout, trims)
    apart = _overlap(layout, one.figure, other.figure)
    offers = [sooner]
    figures = {
        "count": float(len(found)),
        "angle_deg": math.degrees(met.angle[deepest]),
        "shorten_mm": shorten_mm,
    }
    if apart is not None:
        offers.insert(0, _farther_apart(layout, met, found, half_up(apart)))
        figures["apart_mm"] = apart
    return Finding(
        "crossings",
        severity,
        message + likewise(len(found), met.whole),
        say.CROSSING_FIX,
        max(one.place, other.place),
        figures,
        _cuts(met, found),
        offers=tuple(offers),
    )


def _turns(layout: Layout, met: Meetings, i: int, by_deg: int) -> Iterator[Offer]:
    """Offer to turn one of two cuts, or its figure, about their crossing, either way round."""
    one, other = (layout.cuts[k] for k in (met.first[i], met.second[i]))
    alone = one.figure == other.figure
    cuts = [k for k, cut in enumerate(layout.cuts) if cut.figure == one.figure and not alone]
    about = cuts or [int(met.first[i])]
    for way, by in (("clockwise", -by_deg), ("counter-clockwise", by_deg)):
        turn = turned(about, met.point[i], math.radians(by))
        what = (one.name if alone else one.word).replace("_", " ")
        told = say.TURN_IT(what=what, by=by_deg, way=way)
        yield Offer(told, layout, partial(tuple, [turn]))


def _sooner(layout: Layout, trims: "list[Trim]") -> tuple[Offer, float]:
    """Offer to end cuts sooner, all alike, as much (mm) as the worst of them asks for."""
    most = max(trims, key=lambda trim: trim.mm)
    ends = [(trim.cut, trim.last) for trim in trims]
    by = half_up(most.mm)
    told = say.SHORTEN(cut=layout.cuts[most.cut], by=by)
    return Offer(told, layout, lambda: (shortened(ends, by),)), most.mm


def _farther_apart(layout: Layout, met: Meetings, found: Ints, by_mm: float) -> Offer:
    """Offer to move crossing figures apart along the lines of their middles."""
    figure = np.array([cut.figure for cut in layout.cuts])
    pairs = {(int(figure[met.first[i]]), int(figure[met.second[i]])): i for i in found}
    middle = {f: _points(layout, f).mean(axis=0) for pair in pairs for f in pair}
    ways = [
        (int(met.first[i]), int(met.second[i]), middle[b] - middle[a])
        for (a, b), i in pairs.items()
    ]
    told = say.MOVE_FIGURES_APART(by=by_mm)
    return Offer(told, layout, lambda: (parted(layout, ways, by_mm),))


@dataclass(frozen=True, slots=True)
class Trim:
    """The cut to end sooner, whether at its last end, and by how much (mm)."""

    cut: int
    last: bool
    mm: float


def _trims(layout: Layout, met: Meetings, found: Ints) -> list[Trim]:
    """Find how each of some crossings, as many as are trimmed at most, is parted."""
    return [_trim(layout, met, int(i)) for i in found[:MOST_TRIMMED]]


def _trim(layout: Layout, met: Meetings, i: int) -> Trim:
    """Find the shortest end whose removal parts two cuts, with some dough between them."""
    same = np.flatnonzero((met.first == met.first[i]) & (met.second == met.second[i]))
    ends = []
    for index, along in ((met.first[i], met.along_first), (met.second[i], met.along_second)):
        whole = length(layout.cuts[index].line)
        ends.append(Trim(int(index), False, float(along[same].max())))
        ends.append(Trim(int(index), True, whole - float(along[same].min())))
    least = min(ends, key=lambda trim: trim.mm)
    sine = max(math.sin(float(met.angle[i])), 0.2)
    return Trim(least.cut, least.last, least.mm + CLEAR_MM.value / sine)


def _overlap(layout: Layout, figure: int, other: int) -> float | None:
    """How far to move two figures apart, along the line of their middles, to part them (mm)."""
    if figure == other:
        return None
    one, two = _points(layout, figure), _points(layout, other)
    way = two.mean(axis=0) - one.mean(axis=0)
    far = float(np.hypot(*way))
    if far < 1.0:
        return None
    return float((one @ way).max() - (two @ way).min()) / far + CLEAR_MM.value


def _points(layout: Layout, figure: int) -> Floats:
    return np.concatenate([cut.line for cut in layout.cuts if cut.figure == figure])


def _own_crossings(layout: Layout, lines: Shapes) -> list[Finding]:
    """Find single cuts that cross themselves."""
    found = np.flatnonzero(~shapely.is_simple(lines))
    keys = [layout.cuts[i].family for i in found]
    depth = np.array([layout.cuts[i].depth_mm for i in found])
    findings = []
    for worst, members in told_once(keys, depth):
        cut = layout.cuts[found[worst]]
        severity: Severity = "note" if cut.depth_mm <= SHALLOW_MM.value else "warning"
        message = say.CROSSES_ITSELF(cut=cut) + likewise(len(members))
        hint = say.TWO_STROKES(clear=CLEAR_MM.value)
        figures = {"count": float(len(members)), "clear_mm": CLEAR_MM.value}
        about = tuple(found[members].tolist())
        findings.append(Finding("crossings", severity, message, hint, cut.place, figures, about))
    return findings


def _cuts(met: Meetings, found: Ints) -> tuple[int, ...]:
    return tuple(np.unique([met.first[found], met.second[found]]).tolist())
