"""The bloom: what the loaf will look like after baking."""

from scorecraft.prints.row import Drawn, Option, Print, Printed


def bloom(
    design: Drawn,
    form: str,
    *,
    before: bool = False,
    proofed: bool = False,
    tension: bool = False,
    view: str = "top",
) -> Printed:
    """Draw the baked loaf, its cuts opened as far as the model predicts; or another picture."""
    from scorecraft.drawing.bloom.showing import Look, picture

    wanted = Look(before=before, proofed=proofed, tension=tension, view=view)
    opening = None if proofed else design.opening
    return Printed((picture(design.layout, wanted, opening=opening),))


BLOOM = Print(
    "bloom",
    "draw the baked loaf as the model predicts it",
    "Draw the baked loaf of PATTERN as the model predicts: its cuts open, its ears lifted.",
    ("svg", "png", "pdf"),
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
    ),
    bloom,
    usual="png",
    predicts=True,
    on_page=False,  # it has a room of its own there
    example="--before -o bloom.png",
)
