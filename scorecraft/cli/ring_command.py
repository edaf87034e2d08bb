"""`scorecraft ring`: degrees and start angles to lie under the loaf."""

import click

from scorecraft.cli.options import Given, pattern_options


@click.command("ring")
@pattern_options
@click.option("-o", "--output", metavar="FILE", help="An .svg, .pdf or .png file, or -.")
@click.option("--paper", metavar="NAME", help="A4, A3, Letter or Tabloid.")
@click.option("--tiled", is_flag=True, help="On as many sheets of A4 or Letter as it takes.")
@click.option("--as", "form", type=click.Choice(["svg", "pdf", "png"]), help="The form, for -.")
def command(
    given: Given, output: str | None, paper: str | None, tiled: bool, form: str | None,
) -> int:  # fmt: skip
    """Print a ring for the turntable: degrees, and where the figures of PATTERN begin."""
    from scorecraft.cli.full_size import deliver_full_size
    from scorecraft.cli.prints import file_form, named
    from scorecraft.drawing.templates.turn_ring import turn_ring

    target = output or named(given.pattern, "ring")
    form = file_form(target, form)
    made = given.design()
    figure = turn_ring(made.layout, made.groups)
    deliver_full_size(figure, target, form, paper, tiled=tiled, quiet=given.quiet)
    return 0
