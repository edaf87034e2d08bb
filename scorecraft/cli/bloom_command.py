"""`scorecraft bloom`: what the loaf will look like after baking."""

import click

from scorecraft.cli.options import Given, pattern_options


@click.command("bloom")
@pattern_options
@click.option("-o", "--output", metavar="FILE", help="An .svg, .png or .pdf file, or -.")
@click.option("--before", is_flag=True, help="Show the proofed loaf beside the baked one.")
@click.option("--proofed", is_flag=True, help="Show the proofed loaf with its cuts alone.")
@click.option("--tension", is_flag=True, help="Map where the skin stays tight instead.")
@click.option(
    "--view", default="top", show_default=True, metavar="VIEW",
    help="top, front, side, or degrees above the bench.",
)  # fmt: skip
@click.option("--as", "form", type=click.Choice(["svg", "png", "pdf"]), help="The form, for -.")
def command(
    given: Given, output: str | None, before: bool, proofed: bool, tension: bool, view: str,
    form: str | None,
) -> int:  # fmt: skip
    """Draw the baked loaf of PATTERN, its cuts opened as far as the model predicts."""
    from scorecraft.cli.output import patience
    from scorecraft.cli.prints import deliver_pictures, file_form, named
    from scorecraft.drawing.bloom.showing import Wanted

    wanted = Wanted(before=before, proofed=proofed, tension=tension, view=view)
    target = output or named(given.pattern, wanted.name).replace(".pdf", ".png")
    form = file_form(target, form)
    with patience(given.quiet):
        made = given.design().bloom(wanted)
    deliver_pictures([made], target, form, quiet=given.quiet)
    return 0
