"""What the checks say of cuts right through, and of cuts with scissors."""

from scorecraft.checks.telling import both, the
from scorecraft.cuts import Cut
from scorecraft.units import mm_words

LEAVE_OPEN = "leave a gap in it, or cut it less deep"


def falls_out(cut: Cut) -> str:
    """Say that a cut right through frees a piece all around."""
    return f"{the(cut)} goes right through and all around: the piece falls out"


def corner(one: Cut, other: Cut) -> str:
    """Say that cuts right through meet."""
    return f"{both(one, other)} meet right through the dough: the corner between them tears off"


def strip(one: Cut, other: Cut, wide_mm: float) -> str:
    """Say that the strip between two cuts right through is too narrow."""
    wide = mm_words(wide_mm)
    return f"the strip between {both(one, other)} is {wide} wide: it tears when it is pulled"


def leave_strip(least_mm: float) -> str:
    """Advise how much dough to leave between cuts right through."""
    return f"leave {mm_words(least_mm)} or more between them"


def edge(cut: Cut, wide_mm: float) -> str:
    """Say that the dough between a cut right through and the rim is too narrow."""
    return f"{the(cut)} leaves {mm_words(wide_mm)} of dough at the edge: it tears when it is pulled"


def leave_edge(least_mm: float) -> str:
    """Advise how much dough to leave at the edge."""
    return f"end it {mm_words(least_mm)} or more from the edge"


def pulled_too_far(cut: Cut, pulled_mm: float, length_mm: float) -> str:
    """Say that a cut is pulled wider than its length lets it."""
    wide, long = mm_words(pulled_mm), mm_words(length_mm)
    return f"{the(cut)}, {long} long, is pulled {wide} open: its ends tear"


def pull_less(most_mm: float, length_mm: float) -> str:
    """Advise how far to pull a cut, or how long to make it."""
    return f"pull it {mm_words(most_mm)} at most, or cut it {mm_words(length_mm)} long"


def thin_hinge(cut: Cut, hinge_mm: float) -> str:
    """Say that scissors leave too little dough uncut."""
    return (
        f"{the(cut)} leaves {mm_words(hinge_mm)} uncut: the piece tears off when it is laid aside"
    )


def stiff_hinge(cut: Cut, hinge_mm: float) -> str:
    """Say that scissors leave too much dough uncut."""
    return f"{the(cut)} leaves {mm_words(hinge_mm)} uncut: the piece cannot be laid aside"


def leave_hinge(least_mm: float, most_mm: float) -> str:
    """Advise how much dough to leave uncut."""
    return f"leave {mm_words(least_mm)} to {mm_words(most_mm)} uncut, 6 mm is usual"


def held_flat(cut: Cut, held_deg: float) -> str:
    """Say that scissors are held too flat."""
    return f"{the(cut)} is made with scissors at {held_deg:.0f}°: its tongue is too thin to be laid"


def held_steep(cut: Cut, held_deg: float) -> str:
    """Say that scissors are held too steeply."""
    return f"{the(cut)} is made with scissors at {held_deg:.0f}°: its piece is blunt, not a grain"


def hold_between(flat_deg: float, steep_deg: float) -> str:
    """Advise how to hold the scissors."""
    return f"hold them at {flat_deg:.0f} to {steep_deg:.0f}° to the dough"


def under_the_next(cut: Cut, apart_mm: float) -> str:
    """Say that a cut runs under the next one."""
    return f"{the(cut)} is {mm_words(apart_mm)} from the next one and runs under it: it cuts it off"


def further_apart(least_mm: float) -> str:
    """Advise how far apart to make cuts with scissors."""
    return f"make them {mm_words(least_mm)} apart or more, or hold the scissors more steeply"
