"""`scorecraft guide`: the full-size sheet to hold beside the bench."""

import click

from scorecraft.cli.options import Given, pattern_options


@click.command("guide")
@pattern_options
@click.option("-o", "--output", metavar="FILE", help="An .svg, .pdf or .png file, or -.")
@click.option("--paper", metavar="NAME", help="A4, A3, Letter or Tabloid.")
@click.option("--tiled", is_flag=True, help="On as many sheets of the paper as it takes.")
@click.option("--as", "form", type=click.Choice(["svg", "pdf", "png"]), help="The form, for -.")
def command(
    given: Given, output: str | None, paper: str | None, tiled: bool, form: str | None,
) -> int:  # fmt: skip
    """Print the full-size guide of PATTERN: the loaf from above, its cuts numbered, a table."""
    from scorecraft.cli.output import patience
    from scorecraft.cli.prints import deliver_pictures, file_form, named

    target = output or named(given.pattern, "guide")
    form = file_form(target, form)
    with patience(given.quiet):
        pages = given.design().guide_pages(paper=paper, tiled=tiled)
    deliver_pictures(pages, target, form, quiet=given.quiet)
    return 0
