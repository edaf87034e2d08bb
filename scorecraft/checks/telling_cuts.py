"""What the checks of where cuts lie say: rim, overlaps ... undercut, and of cuts right through."""

from scorecraft.checks.finding import Severity
from scorecraft.checks.telling import Sentence, beside, the
from scorecraft.cuts import Cut
from scorecraft.groups import called
from scorecraft.units import degree_words, mm_words, mm_words_apart, percent_words

MEET = 0.05
"""A cut that ends nearer to the rim than this (mm) reaches it."""

RIM_FIX = "make it smaller or shorter, or turn it away from the rim"
OFF_THE_LOAF = Sentence("{cut:the} runs {far:mm} off the loaf {place}")
INTO_THE_HOLE = Sentence("{cut:the} runs {far:mm} into the hole {place}")


def near_the_rim(cut: Cut, left_mm: float, place: str) -> str:
    """Say that a cut ends too close to the rim."""
    if left_mm < MEET:
        return f"{the(cut)} runs right up to the rim {place}"
    return f"{the(cut)} comes within {mm_words(left_mm)} of the rim {place}"


SHORTEN_IT = Sentence("shorten it by {by:mm}")
MOVE_IN = Sentence("move it {by:mm} toward the crown")
MOVE_OUT = Sentence("move it {by:mm} away from the hole")

OVERLAP_FIX = "end one where it meets the other, or draw them as one cut"
CUT_TWICE = Sentence("{over} {place}: it would be cut twice")
RUNS_OVER = Sentence("{over} for {shared:mm} {place}")


def over(one: Cut, other: Cut) -> str:
    """Say that a cut lies on another one."""
    if one.name == other.name:
        return f"one {called(one, 1)} runs over another"
    return f"{the(one)} runs over {the(other)}"


def remove_some(count: int, whole: bool) -> str:
    """Advise to leave out cuts that are drawn twice."""
    return f"remove {'' if whole else 'at least '}{'one' if count == 1 else count} of them"


MOVE_APART = Sentence("move them {by:mm} apart")
MOVE_FARTHER_APART = Sentence("move them {by:mm} farther apart")

SQUARER = "cross them more squarely, or end one before it reaches the other"
CROSSING_FIX = "use fewer or smaller figures, or end one where it meets the other"
SHARP_CROSSING = Sentence(
    "{cuts} cross at only {angle:.0f}° {place}: the thin points of dough will tear"
)
CROSSING = Sentence("{cuts} cross {place}")
CROSSES_ITSELF = Sentence("{cut:the} crosses itself")
TWO_STROKES = Sentence("make it in two strokes, the second ending {clear:mm} short of the first")
TURN_IT = Sentence("turn the {what} {by}° {way}")
SHORTEN = Sentence("shorten {cut:the} by {by:mm}")
MOVE_FIGURES_APART = Sentence("move the figures {by:mm} farther apart")

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


THEM_NO_DEEPER = Sentence("cut them no deeper than {depth:g} mm")

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


LEAVE_GAP = Sentence("leave a gap of {wide:mm} in {cut:the}")
NO_DEEPER = Sentence("cut {cut:the} no deeper than {depth:mm}")

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


STEEPER = Sentence("hold the blade at {blade}° or steeper")

LEAVE_OPEN = "leave a gap in it, or cut it less deep"
FALLS_OUT = Sentence("{cut:the} goes right through and all around: the piece falls out")
CORNER = Sentence("{cuts} meet right through the dough: the corner between them tears off")
STRIP = Sentence("the strip between {cuts} is {wide:mm} wide: it tears when it is pulled")
LEAVE_STRIP = Sentence("leave {least:mm} or more between them")
EDGE = Sentence("{cut:the} leaves {wide:mm} of dough at the edge: it tears when it is pulled")
LEAVE_EDGE = Sentence("end it {least:mm} or more from the edge")
PULLED_TOO_FAR = Sentence(
    "{cut:the}, {length:mm} long, is pulled {cut.pulled_mm:mm} open: its ends tear"
)
PULL_LESS = Sentence("pull it {most:mm} at most, or cut it {length:mm} long")

THIN_HINGE = Sentence(
    "{cut:the} leaves {cut.hinge_mm:mm} uncut: the piece tears off when it is laid aside"
)
STIFF_HINGE = Sentence("{cut:the} leaves {cut.hinge_mm:mm} uncut: the piece cannot be laid aside")
LEAVE_HINGE = Sentence("leave {least:mm} to {most:mm} uncut, 6 mm is usual")
HELD_FLAT = Sentence(
    "{cut:the} is made with scissors at {held:.0f}°: its tongue is too thin to be laid"
)
HELD_STEEP = Sentence(
    "{cut:the} is made with scissors at {held:.0f}°: its piece is blunt, not a grain"
)
HOLD_BETWEEN = Sentence("hold them at {flat:.0f} to {steep:.0f}° to the dough")
UNDER_THE_NEXT = Sentence(
    "{cut:the} is {apart:mm} from the next one and runs under it: it cuts it off"
)
FURTHER_APART = Sentence("make them {least:mm} apart or more, or hold the scissors more steeply")
