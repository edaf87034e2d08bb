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
    from scorecraft.drawing.bloom.showing import Wanted, picture

    wanted = Wanted(before=before, proofed=proofed, tension=tension, view=view)
    opening = None if proofed else design.opening
    return Printed((picture(design.layout, wanted, opening=opening),))


BLOOM = Print(
    "bloom",
    "draw the loaf as it will be after baking",
    "Draw the baked loaf of PATTERN, its cuts opened as far as the model predicts.",
    ("svg", "png", "pdf"),
    (
        Option("before", "flag", "Show the proofed loaf beside the baked one."),
        Option("proofed", "flag", "Show the proofed loaf with its cuts alone.", renames=True),
        Option("tension", "flag", "Map where the skin stays tight instead.", renames=True),
        Option(
            "view", "words", "top, front, side, or degrees above the bench.", "VIEW", default="top"
        ),
    ),
    bloom,
    usual="png",
    predicts=True,
    on_page=False,  # it has a room of its own there
)
