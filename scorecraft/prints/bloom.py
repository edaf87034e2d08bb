"""The bloom: what the loaf will look like after baking."""

from scorecraft.prints.row import Drawn, Option, Print, Printed

CRUSTS = ("light", "golden", "dark")
FLOURS = ("none", "light", "heavy")
PIXELS = ("500", "1000", "2000", "4000")


def bloom(
    design: Drawn,
    form: str,
    *,
    before: bool = False,
    proofed: bool = False,
    tension: bool = False,
    view: str = "top",
    crust: str = "golden",
    flour: str | None = None,
    pixels: str = "1000",
) -> Printed:
    """Draw the baked loaf, its cuts opened as far as the model predicts; or another picture."""
    from scorecraft.drawing.bloom.showing import Look, picture

    wanted = Look(before, proofed, tension, view, crust, flour, int(pixels))
    opening = None if proofed else design.opening
    return Printed((picture(design.layout, wanted, opening=opening),))


BLOOM = Print(
    "bloom",
    "draw the baked loaf as the model predicts it",
    "Draw the baked loaf of PATTERN as the model predicts: its cuts open, its ears lifted.",
    ("svg", "png", "jpg", "webp", "pdf"),
    (
        Option("before", "flag", "Show the scored loaf beside the baked one."),
        Option("proofed", "flag", "Show the scored loaf alone, before baking.", renames=True),
        Option("tension", "flag", "Map the tension left in the skin instead.", renames=True),
        Option(
            "view",
            "words",
            "top, front, side, or degrees above the bench to look from.",
            "VIEW",
            default="top",
        ),
        Option("crust", "choice", "How dark the oven bakes it: usually golden.", choices=CRUSTS),
        Option("flour", "choice", "How much flour lies on it.", choices=FLOURS),
        Option("pixels", "choice", "Along the longer side; usually 1000.", choices=PIXELS),
    ),
    bloom,
    usual="png",
    predicts=True,
    on_page=False,  # it has a room of its own there
    example="--before -o bloom.png",
)
