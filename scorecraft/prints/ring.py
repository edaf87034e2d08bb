"""The ring: degrees and start angles to lie under the loaf."""

from scorecraft.prints.row import Drawn, Print, Printed
from scorecraft.prints.sheets import PAPER, TILED, on_sheets


def ring(design: Drawn, form: str, *, paper: str | None = None, tiled: bool = False) -> Printed:
    """Draw the ring for the turntable."""
    from scorecraft.drawing.templates.turn_ring import turn_ring

    return on_sheets(turn_ring(design.layout, design.groups), form, paper, tiled=tiled)


RING = Print(
    "ring",
    "print a ring of degrees for the turntable",
    "Print a ring for the turntable: degrees, and where the figures of PATTERN begin.",
    ("svg", "pdf", "png"),
    (PAPER, TILED),
    ring,
    example="--paper A4 -o ring.pdf",
)
