"""The prints: the one table that the command line, the page and Python read.

A row and the file it stands in load no drawing: that is imported when a print is made.
"""

from collections.abc import Mapping

from scorecraft.prints.bloom import BLOOM
from scorecraft.prints.card import CARD
from scorecraft.prints.drape import DRAPE
from scorecraft.prints.guide import GUIDE
from scorecraft.prints.practise import PRACTISE
from scorecraft.prints.ring import RING
from scorecraft.prints.row import Print
from scorecraft.prints.stencil import STENCIL

ROWS = (
    GUIDE,
    CARD,
    STENCIL,
    DRAPE,
    RING,
    BLOOM,
    PRACTISE,
)
PRINTS: Mapping[str, Print] = {each.name: each for each in ROWS}
"""Every print by its name, in the order a baker meets them."""
