"""`scorecraft guide`: the full-size sheet to hold beside the bench."""

import click

from scorecraft.cli.options import pattern_options, turned


@click.command("guide")
@pattern_options
@click.option("-o", "--output", metavar="FILE", help="An .svg, .pdf or .png file, or -.")
@click.option("--paper", metavar="NAME", help="A4, A3, Letter or Tabloid.")
@click.option("--as", "form", type=click.Choice(["svg", "pdf", "png"]), help="The form, for -.")
def command(
    pattern: str, knobs: tuple[str, ...], loaf: str | None, bake: str | None,
    quiet: bool, output: str | None, paper: str | None, form: str | None,
) -> int:  # fmt: skip
    """Print the full-size guide of PATTERN: the loaf from above, its cuts numbered, a table."""
    from scorecraft.cli.prints import deliver_pictures, file_form, home, named
    from scorecraft.door import design
    from scorecraft.drawing.guide import guide

    target = output or named(pattern, "guide")
    form = file_form(target, form)
    made = design(pattern, loaf=loaf, bake=bake, knobs=turned(knobs))
    picture = guide(made.layout, paper=paper, home=home(), findings=made.findings)
    deliver_pictures([picture], target, form, quiet=quiet)
    return 0
