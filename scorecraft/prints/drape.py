"""The drape: the pattern on paper that lies on the dome."""

from scorecraft.prints.row import Drawn, Option, Print, Printed
from scorecraft.prints.sheets import PAPER, TILED, on_sheets


def drape(
    design: Drawn,
    form: str,
    *,
    fit_mm: float | None = None,
    paper: str | None = None,
    tiled: bool = False,
) -> Printed:
    """Draw the sheet with darts that lies on the dome and fits to `fit_mm`."""
    from scorecraft.drape.drape import make_drape
    from scorecraft.drawing.templates.drape import drape_sheet

    made = drape_sheet(make_drape(design.layout, fit_mm=fit_mm), design.layout)
    return on_sheets(made, form, paper, tiled=tiled)


DRAPE = Print(
    "drape",
    "print the pattern on a sheet that folds over the dome",
    "Print PATTERN in true length on a sheet with darts that folds over the dome.",
    ("svg", "pdf", "png"),
    (Option("fit", "length", "Allowed misfit."), PAPER, TILED),
    drape,
    example="--paper A4 -o drape.pdf",
)
