"""What the checks of where cuts lie say: rim, overlaps, crossings, strips, pieces, undercut."""

from scorecraft.checks.finding import Severity
from scorecraft.checks.telling import beside, both, the
from scorecraft.cuts import Cut
from scorecraft.groups import called
from scorecraft.units import degree_words, mm_words, mm_words_apart, percent_words

MEET = 0.05
"""A cut that ends nearer to the rim than this (mm) reaches it."""

RIM_FIX = "make it smaller or shorter, or turn it away from the rim"


def off_the_loaf(cut: Cut, far_mm: float, place: str) -> str:
    """Say that a cut runs off the loaf."""
    return f"{the(cut)} runs {mm_words(far_mm)} off the loaf {place}"


def into_the_hole(cut: Cut, far_mm: float, place: str) -> str:
    """Say that a cut runs into the hole of a ring."""
    return f"{the(cut)} runs {mm_words(far_mm)} into the hole {place}"


def near_the_rim(cut: Cut, left_mm: float, place: str) -> str:
    """Say that a cut ends too close to the rim."""
    if left_mm < MEET:
        return f"{the(cut)} runs right up to the rim {place}"
    return f"{the(cut)} comes within {mm_words(left_mm)} of the rim {place}"


def shorten_it(by_mm: float) -> str:
    """Advise to take a length off a cut."""
    return f"shorten it by {mm_words(by_mm)}"


def move_in(by_mm: float) -> str:
    """Advise to move a cut away from the rim."""
    return f"move it {mm_words(by_mm)} toward the crown"


def move_out(by_mm: float) -> str:
    """Advise to move a cut away from the hole of a ring."""
    return f"move it {mm_words(by_mm)} away from the hole"


OVERLAP_FIX = "end one where it meets the other, or draw them as one cut"


def cut_twice(one: Cut, other: Cut, place: str) -> str:
    """Say that a cut lies on another one from end to end."""
    return f"{_over(one, other)} {place}: it would be cut twice"


def runs_over(one: Cut, other: Cut, shared_mm: float, place: str) -> str:
    """Say that a cut lies on another one for a part of its way."""
    return f"{_over(one, other)} for {mm_words(shared_mm)} {place}"


def _over(one: Cut, other: Cut) -> str:
    if one.name == other.name:
        return f"one {called(one, 1)} runs over another"
    return f"{the(one)} runs over {the(other)}"


def remove_some(count: int, whole: bool) -> str:
    """Advise to leave out cuts that are drawn twice."""
    return f"remove {'' if whole else 'at least '}{'one' if count == 1 else count} of them"


def move_apart(by_mm: float) -> str:
    """Advise to move cuts that lie on one another."""
    return f"move them {mm_words(by_mm)} apart"


def move_farther_apart(by_mm: float) -> str:
    """Advise to move cuts that are too close farther from one another."""
    return f"move them {mm_words(by_mm)} farther apart"


SQUARER = "cross them more squarely, or end one before it reaches the other"
CROSSING_FIX = "use fewer or smaller figures, or end one where it meets the other"


def sharp_crossing(one: Cut, other: Cut, angle_rad: float, place: str) -> str:
    """Say that two cuts cross at a sharp angle."""
    angle = degree_words(angle_rad)
    return f"{both(one, other)} cross at only {angle} {place}: the thin points of dough will tear"


def crossing(one: Cut, other: Cut, place: str) -> str:
    """Say that cuts of two figures cross."""
    return f"{both(one, other)} cross {place}"


def crosses_itself(cut: Cut) -> str:
    """Say that one cut crosses itself."""
    return f"{the(cut)} crosses itself"


def two_strokes(clear_mm: float) -> str:
    """Advise to make one cut as two."""
    return f"make it in two strokes, the second ending {mm_words(clear_mm)} short of the first"


def turn_it(what: str, by_deg: int, way: str) -> str:
    """Advise to turn a cut or a figure."""
    return f"turn the {what.replace('_', ' ')} {by_deg}° {way}"


def shorten(cut: Cut, by_mm: float) -> str:
    """Advise to take a length off a cut that is named."""
    return f"shorten {the(cut)} by {mm_words(by_mm)}"


def move_figures_apart(by_mm: float) -> str:
    """Advise to move whole figures farther from one another."""
    return f"move the figures {mm_words(by_mm)} farther apart"


FEWER_OR_SHALLOWER = "use fewer or smaller figures, or cut them shallower"


def narrow_strip(one: Cut, other: Cut, width_mm: float, wanted_mm: float, place: str) -> str:
    """Say that two cuts leave too little dough between them."""
    width, wanted = mm_words_apart(width_mm, wanted_mm)
    return (
        f"only {width} of dough between {_between(one, other)}, {place}: "
        f"leave {wanted} between cuts this deep"
    )


def _between(one: Cut, other: Cut) -> str:
    if one is other:
        return f"the turns of {the(one)}"
    if one.name == other.name:
        return f"one {called(one, 1)} and the next"
    return f"{the(one)} and {the(other)}"


def them_no_deeper(depth_mm: float) -> str:
    """Advise to cut several cuts shallower."""
    return f"cut them no deeper than {depth_mm:g} mm"


GAP_OR_SHALLOWER = "leave a gap in the cuts around it, or make one of them shallower"
PIECES = {"stop": "will lift off", "warning": "will curl and dry out", "note": "may curl"}


UPRIGHT = "hold the blade upright"


def loose_piece(
    area_cm2: float, depth_mm: float, undercut: float, place: str, severity: Severity | None
) -> str:
    """Say that a piece of skin is cut free all around; with no severity it is a lid."""
    does = "opens like a lid" if severity is None else PIECES[severity]
    under = (
        f", and slanted cuts undercut {percent_words(undercut)} of it" if undercut > 0.05 else ""
    )
    return (
        f"a piece of {area_cm2:.1f} cm² {place} is cut free all around, "
        f"{mm_words(depth_mm)} deep or more{under}: it {does}"
    )


def leave_gap(cut: Cut, wide_mm: float) -> str:
    """Advise to leave a gap in a cut."""
    return f"leave a gap of {mm_words(wide_mm)} in {the(cut)}"


def no_deeper(cut: Cut, depth_mm: float) -> str:
    """Advise to cut one of several cuts shallower."""
    return f"cut {the(cut)} no deeper than {mm_words(depth_mm)}"


UNDERCUT_FIX = "cut them shallower, or hold the blade more upright"
SAME_WAY = ", or pull both strokes in the same direction"


def undercuts(
    slanted: Cut, other: Cut, reach_mm: float, left_mm: float, apart_mm: float, place: str
) -> str:
    """Say that a slanted cut runs under the skin as far as its neighbour, or nearly so far."""
    ends = "meets" if left_mm <= 0 else f"stops {mm_words(left_mm)} short of"
    return (
        f"{the(slanted)}, {mm_words(slanted.depth_mm)} deep with the blade at "
        f"{degree_words(slanted.blade_rad)}, runs {mm_words(reach_mm)} under the skin and {ends} "
        f"{beside(slanted, other)}, {mm_words(apart_mm)} away {place}"
    )


def steeper(blade_deg: int) -> str:
    """Advise to hold the blade steeper."""
    return f"hold the blade at {blade_deg}° or steeper"
