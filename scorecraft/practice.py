"""Every rule of thumb scorecraft uses, each with what it says and where it comes from.

Nothing here is a measured law of bread: there is no published measurement that links the depth,
angle or spacing of cuts to how a loaf opens. A rule marked `COMMON` is a habit of the trade.
"""

from dataclasses import dataclass

COMMON = "common practice, no source"
OURS = "a limit of this program"


@dataclass(frozen=True, slots=True)
class Rule:
    """A number with its unit, what it says in a sentence, and its source."""

    value: float
    unit: str
    says: str
    source: str


# --- limits of the program ------------------------------------------------------------------
MOST_BYTES = Rule(1_000_000, "bytes", "the largest pattern file that is read", OURS)
MOST_CUTS = Rule(20_000, "cuts", "the most cuts a pattern may expand to", OURS)
MOST_COPIES = Rule(2_000, "copies", "the most copies one placing may make", OURS)
MOST_NESTING = Rule(40, "levels", "the deepest nesting of blocks and rules", OURS)
MOST_STEPS = Rule(200_000, "statements", "the most statements one run may execute", OURS)

# --- cuts -----------------------------------------------------------------------------------
EXPANSION_DEPTH_MM = Rule(
    8.0, "mm", "depth of an expansion cut where none is given (6-13 mm is usual)", COMMON
)
DECORATIVE_DEPTH_MM = Rule(
    3.0, "mm", "depth of a decorative cut where none is given (2-4 mm is usual)", COMMON
)
EXPANSION_BLADE_DEG = Rule(
    40.0, "deg", "blade angle to the dough for a cut that should raise an ear (30-45)", COMMON
)
DECORATIVE_BLADE_DEG = Rule(
    90.0, "deg", "blade straight down for fine lines and cuts that open evenly", COMMON
)

EXPANSION_FROM_MM = Rule(
    5.0, "mm", "a cut this deep or deeper is an expansion cut unless the pattern says not", COMMON
)

# --- loaf -----------------------------------------------------------------------------------
HEIGHT_PER_WIDTH = Rule(0.43, "", "height of a proofed loaf over its width", COMMON)
LENGTH_PER_WIDTH = {
    "round": Rule(1.0, "", "length over width of a round loaf", "by definition"),
    "square": Rule(1.0, "", "length over width of a square loaf", "by definition"),
    "oval": Rule(1.6, "", "length over width of an oval loaf", COMMON),
    "long": Rule(2.6, "", "length over width of a long loaf", COMMON),
}

# --- bake -----------------------------------------------------------------------------------

# --- checks ---------------------------------------------------------------------------------

# --- opening --------------------------------------------------------------------------------

# --- bench ----------------------------------------------------------------------------------

# --- placing --------------------------------------------------------------------------------
GRID_MARGIN_MM = Rule(15.0, "mm", "a grid with no region of its own stays this far in", OURS)
CRUMB_MM = Rule(4.0, "mm", "scraps of clipped cuts shorter than this are dropped", OURS)

# --- textures -------------------------------------------------------------------------------
CHORD_MM = Rule(0.04, "mm", "the furthest a drawn chord strays from its curve", OURS)
MOST_TEXTURE_CELLS = Rule(
    40_000, "cells", "the most cells, a texture's size square, that one fill may cover", OURS
)
MOST_TRACED_BYTES = Rule(2_000_000, "bytes", "the largest SVG file that is traced", OURS)
MOST_TRACED_ELEMENTS = Rule(20_000, "elements", "the most elements of a traced file", OURS)
MOST_TRACED_DEPTH = Rule(40, "levels", "the deepest nesting of groups in a traced file", OURS)
MOST_TRACED_POINTS = Rule(200_000, "points", "the most points of a traced drawing", OURS)
LARGEST_DRAWING_MM = Rule(10_000, "mm", "how far a traced drawing may reach", OURS)
TRACED_GAP_MM = Rule(0.5, "mm", "ends of a traced rim nearer than this meet", OURS)

# --- drawing --------------------------------------------------------------------------------
LARGEST_PAGE_MM = Rule(
    5080.0, "mm", "the longest page of a PDF, 14400 points", "ISO 32000-1 annex C; recalled"
)
PNG_DPI = Rule(200.0, "dots per inch", "resolution of a picture where none is asked for", OURS)
PRINTER_MARGIN_MM = Rule(
    5.0, "mm", "the edge of the paper that most printers leave blank", COMMON
)
DEEP_LINE_MM = Rule(6.0, "mm", "a cut this deep or deeper is drawn as a bold line", OURS)
SHALLOW_LINE_MM = Rule(3.0, "mm", "a cut shallower than this is drawn as a dashed line", OURS)
NUMBER_CLEAR_MM = Rule(0.9, "mm", "a number on the plan keeps so far from every line", OURS)
