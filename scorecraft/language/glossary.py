"""Words of the bench and of the stencil that a baker may want explained: one line each.

The command line and the help of the page both read them here.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Term:
    """A word as it is asked for, what it is called, and what it means."""

    name: str
    title: str
    text: str


ROWS = (
    Term("tin", "Tin", "What holds a pan loaf's sides. The dough grows up and a little along, and "
         "its crown stands above the tin's rim: only the top is scored."),
    Term("hole", "Hole", "The open middle of a ring loaf, or couronne. The dough closes part of it "
         "in the oven: shape it wider than you want it. No cut may cross it."),
    Term("through", "Cut right through", "A cut down to the board, as in a fougasse, made with a "
         "dough cutter or a knife pressed down."),
    Term("pulled", "Pulled open", "How wide a cut right through is opened by hand, on the peel, "
         "before it bakes. Pulled too far, the strips beside it tear."),
    Term("snip", "Snip", "A cut with scissors held at 30–45° that leaves a few millimetres uncut "
         "at the bottom, as for an épi, the ear of wheat."),
    Term("hinge", "Hinge", "What a snip leaves uncut. Too thin, it tears when the piece is laid to "
         "its side; too thick, the piece does not lie."),
    Term("fill", "Filled figure", "In a stencil, a figure opened as a whole shape instead of a "
         "slot along its outline. One that encloses nothing keeps its slots."),
    Term("layer", "Layer", "One dusting, through a plate of its own: say flour first, then cocoa."),
    Term("plate", "Plate", "The sheet a stencil is cut from. Where it is larger than your bed, it "
         "is turned, or made in parts that are joined letter to letter."),
    Term("bridge", "Bridge", "A strip left across a slot so that what lies inside does not fall "
         "out. Wider is stronger; narrower shows less."),
    Term("web", "Strip left standing", "What is left of the plate between two slots. Thinner than "
         "about 1.5 mm, it tears."),
)  # fmt: skip
TERMS = {row.name: row for row in ROWS}
"""Every term by name."""
