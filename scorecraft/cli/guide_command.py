"""`scorecraft guide`: the full-size sheet to hold beside the bench."""

import click

from scorecraft.cli.options import pattern_options, turned


@click.command("guide")
@pattern_options
@click.option("-o", "--output", metavar="FILE", help="An .svg, .pdf or .png file, or -.")
@click.option("--paper", metavar="NAME", help="A4, A3, Letter or Tabloid.")
@click.option("--tiled", is_flag=True, help="On as many sheets of the paper as it takes.")
@click.option("--as", "form", type=click.Choice(["svg", "pdf", "png"]), help="The form, for -.")
def command(
    pattern: str, knobs: tuple[str, ...], loaf: str | None, bake: str | None,
    quiet: bool, output: str | None, paper: str | None, tiled: bool, form: str | None,
) -> int:  # fmt: skip
    """Print the full-size guide of PATTERN: the loaf from above, its cuts numbered, a table."""
    from scorecraft.cli.prints import deliver_pictures, file_form, home, named
    from scorecraft.door import design
    from scorecraft.drawing.guide import guide_pages

    target = output or named(pattern, "guide")
    form = file_form(target, form)
    made = design(pattern, loaf=loaf, bake=bake, knobs=turned(knobs))
    pages = guide_pages(made.layout, paper=paper, home=home(), tiled=tiled, findings=made.findings)
    deliver_pictures(pages, target, form, quiet=quiet)
    return 0
