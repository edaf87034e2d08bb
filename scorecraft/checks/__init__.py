"""The checks: what is wrong with a layout, how grave it is, and what to do about it."""

from collections.abc import Callable, Iterable, Mapping

from scorecraft.checks.balance import balance
from scorecraft.checks.crossings import crossings
from scorecraft.checks.cures import tried
from scorecraft.checks.density import density
from scorecraft.checks.depth import depth
from scorecraft.checks.dropped import dropped
from scorecraft.checks.finding import Finding
from scorecraft.checks.known import Known, Level
from scorecraft.checks.overlaps import overlaps
from scorecraft.checks.pieces import pieces
from scorecraft.checks.proof import proof
from scorecraft.checks.rim import rim
from scorecraft.checks.severed import of_scores
from scorecraft.checks.size import size
from scorecraft.checks.skin import skin
from scorecraft.checks.snips import snips
from scorecraft.checks.strips import strips
from scorecraft.checks.tears import tears
from scorecraft.checks.telling import FIX_LISTED, NOT_LISTED
from scorecraft.checks.undercut import undercut
from scorecraft.checks.vessel import vessel
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass

MOST_FINDINGS = 50
"""One check tells no more than these."""
Found = Mapping[str, tuple[Finding, ...]]
"""Findings by the name of their check."""


@dataclass(frozen=True, slots=True)
class Check:
    """A check: its name, in a line what it says, what it needs to be known, and how it finds.

    One that is `surer` at a higher level finds anew there what it found before.
    """

    name: str
    says: str
    needs: Level
    find: Callable[[Known], list[Finding]]
    surer: Level | None = None


def _drawn(name: str, says: str, find: Callable[[Layout], list[Finding]]) -> Check:
    """Make the row of a check that looks at the layout alone."""
    return Check(name, says, "layout", lambda known: find(known.layout))


def _balance(known: Known) -> list[Finding]:
    return balance(known.layout, known.opening.widest_mm if known.opening else None)


def _opens(known: Known) -> list[Finding]:
    if known.met is None:
        return []
    from scorecraft.checks.opens import opens

    return opens(known.met)


def _bench_time(known: Known) -> list[Finding]:
    from scorecraft.checks.bench_time import bench_time

    return bench_time(known.layout, known.work) if known.work else []


def _room(known: Known) -> list[Finding]:
    from scorecraft.checks.room import coarse, room

    if known.opening is None or known.room is None:
        return []
    return [*coarse(known.opening), *room(known.layout, known.room, known.opening, known.skin)]


ROWS = (
    _drawn("rim", "a cut runs off the loaf, or comes too close to the rim", rim),
    _drawn("overlaps", "a cut runs over another one", overlaps),
    _drawn(
        "crossings", "cuts cross at a sharp angle, or cuts of different figures cross", crossings
    ),
    _drawn("strips", "the strip of dough between two cuts is too narrow for their depth", strips),
    _drawn("pieces", "a piece of skin is cut free all around and lifts off", pieces),
    _drawn("undercut", "a slanted cut runs under the skin into its neighbour", undercut),
    _drawn("tears", "dough between cuts right through is too narrow, or pulled too far", tears),
    _drawn("snips", "a cut with scissors cuts its piece off, or leaves it too stiff", snips),
    _drawn("depth", "a cut is too deep for the loaf, or too shallow to do its job", depth),
    _drawn("proof", "the cuts do not suit the dough's proof, or an oven without steam", proof),
    _drawn("density", "too much cut for the dough, in one part or over the whole loaf", density),
    Check(
        "balance",
        "one side is cut more than the other, and so rises more",
        "layout",
        _balance,
        surer="opening",
    ),
    _drawn("size", "the loaf is taller than dough stands, or too much for its basket", size),
    _drawn(
        "vessel",
        "the baked loaf fills or touches its covered pot (`loaf round dough 900g vessel 26cm`)",
        vessel,
    ),
    Check("opens", "an opening asked for (`opens 12mm`) is out of reach", "layout", _opens),
    _drawn("dropped", "strokes too short for any blade were left out", dropped),
    Check("skin", "too few bakes to be sure of the skin", "layout", lambda known: skin(known.skin)),
    Check("bench_time", "scoring takes longer than the dough allows", "work", _bench_time),
    Check(
        "room",
        "the cuts absorb too little of the oven spring: where the loaf would burst, "
        "and a cut that helps",
        "opening",
        _room,
    ),
)
CHECKS: Mapping[str, Check] = {check.name: check for check in ROWS}
"""Every check by its name, in the order of telling."""


LOOKS: Mapping[str, Callable[[Layout], list[Finding]]] = {
    "rim": rim,
    "overlaps": overlaps,
    "crossings": crossings,
    "strips": strips,
    "pieces": pieces,
    "undercut": undercut,
    "depth": depth,
    "proof": proof,
    "density": density,
    "balance": balance,
}
"""What a cure is tried against: the checks of where the cuts lie, the quick ones for most first."""


def found(known: Known, before: Found | None = None) -> Found:
    """Run every check that what is known allows, and try the cures of what is new."""
    told = untried(known, before)
    every = [finding for each in told.values() for finding in each]
    return {name: tuple(tried(known.layout, each, every, LOOKS)) for name, each in told.items()}


def untried(known: Known, before: Found | None = None) -> Found:
    """Run every check that what is known allows; their cures are yet to be tried.

    What was found `before`, when less was known, is taken over, but from checks that are surer now.
    """
    before = before or {}
    told: dict[str, tuple[Finding, ...]] = {}
    for name, check in CHECKS.items():
        if known.reaches(check.needs):
            stays = name in before and not (check.surer and known.reaches(check.surer))
            told[name] = before[name] if stays else tuple(seen(known, check))
    return told


def seen(known: Known, check: Check) -> list[Finding]:
    """Run a check, and leave out what it holds against cuts that are meant to part the dough."""
    return bounded(of_scores(known.layout, check.name, check.find(known)))


def ranked(told: Found) -> tuple[Finding, ...]:
    """List findings, stops first, then warnings, then notes."""
    every: Iterable[Finding] = (finding for each in told.values() for finding in each)
    return tuple(sorted(every, key=lambda finding: finding.weight))


def run(layout: Layout) -> tuple[Finding, ...]:
    """Run every check that looks at the layout alone, weightiest first; no cure is tried."""
    return ranked(untried(Known(layout)))


def bounded(found: list[Finding]) -> list[Finding]:
    """Leave the weightiest MOST_FINDINGS of what one check found; tell how many more there are."""
    most = MOST_FINDINGS
    if len(found) <= most:
        return found
    kept = sorted(found, key=lambda finding: finding.weight)[:most]
    check = found[0].check
    told = NOT_LISTED(check=check, more=len(found) - most)
    more = Finding(check, "note", told, FIX_LISTED, None)
    return [*kept, more]
