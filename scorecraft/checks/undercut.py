"""Slanted cuts that reach so far under the skin that they meet their neighbour.

A cut that ends d below the surface, the blade at the angle phi to the dough, runs d cot(phi) under
the skin of the side whose lip it lifts. Where that goes by the hand, the blade leans to the same
side of every stroke, and both are looked at.
"""

import math
from collections.abc import Iterator

import numpy as np

from scorecraft.arrays import Flags, Ints
from scorecraft.checks import telling_cuts as say
from scorecraft.checks.alongside import STRIP_RUN_MM, STRIP_RUN_SHARE, Alongside, alongside
from scorecraft.checks.changes import no_flatter, parted
from scorecraft.checks.finding import Finding, Offer, Severity
from scorecraft.checks.neighbours import unseen
from scorecraft.checks.telling import likewise, told_once
from scorecraft.cuts import Layout
from scorecraft.loaf.places import where
from scorecraft.practice import DEEP_MM, SLANTED_DEG, UNDERCUT_CLEAR_MM, UNDERCUT_PARALLEL_DEG
from scorecraft.units import half_up


def undercut(layout: Layout) -> list[Finding]:
    """Find slanted cuts that meet, or nearly meet, a cut beside them under the skin."""
    if not any(cut.blade_rad < math.radians(SLANTED_DEG.value) for cut in layout.cuts):
        return []
    depth = layout.depths_mm
    slant = np.array([_slant(cut.blade_rad) for cut in layout.cuts])
    reach = depth * slant + UNDERCUT_CLEAR_MM.value / 2
    near = alongside(layout, reach, UNDERCUT_PARALLEL_DEG.value)
    one, other = near.stations.cut[near.here], near.stations.cut[near.there]
    alike, toward = _leaning(layout, near)
    closing = np.where(
        toward == 0,
        np.where(alike, np.abs(slant[one] - slant[other]), slant[one] + slant[other]),
        toward * np.where(alike, slant[one] - slant[other], slant[one] + slant[other]),
    )
    level = np.minimum(depth[one], depth[other])
    left = near.width - level * closing
    tight = np.flatnonzero((left < UNDERCUT_CLEAR_MM.value) & (closing > 0))
    groups = _long_enough(near, tight)
    worst = np.array([group[np.argmin(left[group])] for group in groups], dtype=np.intp)
    keys = [
        tuple(sorted((layout.cuts[one[i]].family, layout.cuts[other[i]].family))) for i in worst
    ]
    findings = [
        _finding(layout, near, alike, int(worst[w]), worst[members], float(left[worst[w]]))
        for w, members in told_once(keys, -left[worst])
    ]
    return findings if near.whole else [*findings, unseen("undercut", layout)]


def _leaning(layout: Layout, near: Alongside) -> tuple[Flags, Ints]:
    """Tell of facing stations whether their blades lean alike, and whether the first leans there.

    The second is 1 where the first cut runs under the skin toward the other, -1 where away from it,
    and 0 where the layout does not tell of both on which side they lift.
    """
    spots, gap = near.stations, near.stations.point[near.there] - near.stations.point[near.here]
    rises = np.array([cut.rises or 0 for cut in layout.cuts])
    slanted = np.array([_slant(cut.blade_rad) > 0 for cut in layout.cuts])
    ways = []
    for end, way in ((near.here, gap), (near.there, -gap)):
        along = spots.tangent[end]
        left = np.sign(along[:, 0] * way[:, 1] - along[:, 1] * way[:, 0])
        lifts = np.where(slanted, rises, 1)[spots.cut[end]]
        ways.append((left * lifts).astype(np.intp))
    one, other = ways
    known = (one != 0) & (other != 0)
    return np.where(known, one != other, near.same_way), np.where(known, one, 0)


def _slant(blade_rad: float) -> float:
    """Reach sideways for every mm of depth; nothing for a blade held upright."""
    return 0.0 if blade_rad >= math.radians(SLANTED_DEG.value) else 1 / math.tan(blade_rad)


def _long_enough(near: Alongside, tight: Ints) -> list[Ints]:
    """Sort tight facings by pair of cuts, and keep pairs that are tight for long enough."""
    spots = near.stations
    length = np.bincount(spots.cut, weights=spots.step)
    pairs: dict[tuple[int, int], list[int]] = {}
    for i in tight:
        a, b = int(spots.cut[near.here[i]]), int(spots.cut[near.there[i]])
        pairs.setdefault((min(a, b), max(a, b)), []).append(int(i))
    kept = []
    for (a, b), members in pairs.items():
        here = np.unique(near.here[members])
        run = max(float(spots.step[here[spots.cut[here] == c]].sum()) for c in (a, b))
        if run >= min(STRIP_RUN_MM, STRIP_RUN_SHARE * min(length[a], length[b])):
            kept.append(np.array(members, dtype=np.intp))
    return kept


def _finding(
    layout: Layout, near: Alongside, alike: Flags, worst: int, found: Ints, left: float
) -> Finding:
    spots = near.stations
    a, b = (layout.cuts[spots.cut[end[worst]]] for end in (near.here, near.there))
    slanted, beside = (a, b) if _slant(a.blade_rad) >= _slant(b.blade_rad) else (b, a)
    width = float(near.width[worst])
    same_way = bool(alike[worst])
    reaches = slanted.depth_mm * _slant(slanted.blade_rad)
    spot = where(layout.loaf, spots.point[near.here[worst]])
    message = say.undercuts(slanted, beside, reaches, left, width, spot)
    lacks = (UNDERCUT_CLEAR_MM.value - left) * float(near.flat[worst]) / width
    steeper = _steeper(width, min(a.depth_mm, b.depth_mm), _slant(beside.blade_rad), same_way)
    hint = say.UNDERCUT_FIX
    figures = {"count": float(len(found)), "reach_mm": reaches, "left_mm": left, "apart_mm": lacks}
    if steeper is not None:
        figures["blade_deg"] = float(steeper)
    if not same_way and _slant(beside.blade_rad) > 0 and not (a.rises and b.rises):
        hint += say.SAME_WAY
    touched = np.unique([spots.cut[near.here[found]], spots.cut[near.there[found]]])
    severity = _severity(left, min(a.depth_mm, b.depth_mm))
    place = max(a.place, b.place)
    return Finding(
        "undercut",
        severity,
        message + likewise(len(found), near.whole),
        hint,
        place,
        figures,
        tuple(touched.tolist()),
        offers=tuple(_offers(layout, near, found, lacks, steeper)),
    )


def _offers(
    layout: Layout, near: Alongside, found: Ints, lacks: float, steeper: int | None
) -> Iterator[Offer]:
    """Offer to hold the blade steeper, or to move the cuts apart."""
    spots = near.stations
    here, there = near.here[found], near.there[found]
    if steeper is not None:
        about = np.unique([spots.cut[here], spots.cut[there]]).tolist()
        steep = math.radians(steeper)
        told = say.STEEPER(blade=steeper)
        yield Offer(told, layout, lambda: (no_flatter(layout, about, steep),))
    by = half_up(lacks)
    pairs = [
        (int(spots.cut[a]), int(spots.cut[b]), spots.point[b] - spots.point[a])
        for a, b in zip(here, there, strict=True)
    ]
    if all(a != b for a, b, _ in pairs):
        told = say.MOVE_FARTHER_APART(by=by)
        yield Offer(told, layout, lambda: (parted(layout, pairs, by),))


def _severity(left: float, depth_mm: float) -> Severity:
    if depth_mm < DEEP_MM.value:
        return "note"
    return "stop" if left <= 0 else "warning"


def _steeper(width: float, level: float, beside: float, same_way: bool) -> int | None:
    """Blade angle (whole degrees) that leaves the dough between; None if no angle does."""
    room = (width - UNDERCUT_CLEAR_MM.value) / level
    if room <= 0:
        return None
    slant = room + beside if same_way else (room / 2 if beside else room)
    return math.ceil(math.degrees(math.atan(1 / slant)))
