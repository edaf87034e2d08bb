"""`scorecraft drape`: the pattern on paper that lies on the dome."""

import click

from scorecraft.cli.full_size import millimetres
from scorecraft.cli.options import Given, pattern_options


@click.command("drape")
@pattern_options
@click.option("-o", "--output", metavar="FILE", help="An .svg, .pdf or .png file, or -.")
@click.option("--fit", callback=millimetres, metavar="LENGTH", help="How closely it has to fit.")
@click.option("--paper", metavar="NAME", help="A4, A3, Letter or Tabloid.")
@click.option("--tiled", is_flag=True, help="On as many sheets of A4 or Letter as it takes.")
@click.option("--as", "form", type=click.Choice(["svg", "pdf", "png"]), help="The form, for -.")
def command(
    given: Given, output: str | None, fit: float | None, paper: str | None, tiled: bool,
    form: str | None,
) -> int:  # fmt: skip
    """Print PATTERN in true length on a sheet with darts that folds onto the dome."""
    from scorecraft.cli.full_size import deliver_full_size
    from scorecraft.cli.prints import file_form, named
    from scorecraft.drape.drape import make_drape
    from scorecraft.drawing.templates.drape import drape_figure

    target = output or named(given.pattern, "drape")
    form = file_form(target, form)
    layout = given.design().layout
    drape = make_drape(layout, fit_mm=fit)
    deliver_full_size(
        drape_figure(drape, layout), target, form, paper, tiled=tiled, quiet=given.quiet
    )
    return 0
