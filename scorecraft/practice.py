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

# --- loaf -----------------------------------------------------------------------------------

# --- bake -----------------------------------------------------------------------------------

# --- checks ---------------------------------------------------------------------------------

# --- opening --------------------------------------------------------------------------------

# --- bench ----------------------------------------------------------------------------------

# --- textures -------------------------------------------------------------------------------
CHORD_MM = Rule(0.04, "mm", "the furthest a drawn chord strays from its curve", OURS)
MOST_TEXTURE_CELLS = Rule(
    40_000, "cells", "the most cells, a texture's size square, that one fill may cover", OURS
)

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
