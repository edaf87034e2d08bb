"""The stencil: a plate to dust flour through."""

from scorecraft.prints.row import Drawn, Option, Print, Printed
from scorecraft.prints.sheets import PAPER, TILED, on_sheets


def stencil(
    design: Drawn,
    form: str,
    *,
    only: tuple[str, ...] = (),
    mirrored: bool = False,
    cutter: bool = False,
    paper: str | None = None,
    tiled: bool = False,
    **sizes: float,
) -> Printed:
    """Draw the plate with slots, bridges and webs of `sizes` (mm), or its edges for a cutter."""
    from scorecraft.drawing.paper.cautions import FILM
    from scorecraft.drawing.templates.cutter import plate_cutter
    from scorecraft.drawing.templates.stencil import stencil as drawn
    from scorecraft.plate.plate import make_plate

    layout = design.layout
    plate = make_plate(layout, only=only, mirrored=mirrored, **sizes)
    remark = (
        f"too fine for this stencil, left out: {', '.join(plate.left_out)}"
        if plate.left_out
        else ""
    )
    if cutter or form == "dxf":
        flat = plate_cutter(plate, layout.title)
        return Printed((flat,), remark=remark, caution=FILM, flat=flat)
    return on_sheets(drawn(plate, layout), form, paper, tiled=tiled, remark=remark)


STENCIL = Print(
    "stencil",
    "make a stencil to dust flour through",
    "Make a stencil of PATTERN: its cuts as slots in a sheet that stays in one piece.",
    ("svg", "pdf", "png", "dxf"),
    (
        Option("slot", "length", "Width of the slots.", choices=("2", "3", "4"), on_page=True),
        Option("bridge", "length", "Thinnest bridge across a slot."),
        Option("web", "length", "Thinnest strip left standing."),
        Option("only", "names", "Only these figures or parts, like leaf,star.", "NAMES"),
        Option("mirrored", "flag", "Draw the side that faces the dough.", on_page=True),
        Option("cutter", "flag", "Plain lines for a cutter or laser (.svg)."),
        PAPER,
        TILED,
    ),
    stencil,
    example="--slot 2.5mm -o stencil.svg",
)
