"""`scorecraft guide`: the full-size sheet to hold beside the bench."""

import click

from scorecraft.cli.options import Given, pattern_options


@click.command("guide")
@pattern_options
@click.option("-o", "--output", metavar="FILE", help="An .svg, .pdf, .png or .dxf file, or -.")
@click.option("--paper", metavar="NAME", help="A4, A3, Letter or Tabloid.")
@click.option("--tiled", is_flag=True, help="On as many sheets of A4 or Letter as it takes.")
@click.option("--cutter", is_flag=True, help="The cuts alone, as plain lines for a cutter (.svg).")
@click.option(
    "--as", "form", type=click.Choice(["svg", "pdf", "png", "dxf"]), help="The form, for -."
)
def command(
    given: Given, output: str | None, paper: str | None, tiled: bool, cutter: bool,
    form: str | None,
) -> int:  # fmt: skip
    """Print the full-size guide of PATTERN: the loaf from above, its cuts numbered, a table."""
    from scorecraft.cli.output import deliver, patience
    from scorecraft.cli.prints import deliver_pictures, file_form, home, named, tell_sheets
    from scorecraft.drawing.guide.guide import one_sheet_paper
    from scorecraft.drawing.templates.cutter import cuts_cutter
    from scorecraft.drawing.templates.cutter_file import encoded_for_cutter

    target = output or named(given.pattern, "guide")
    form = file_form(target, form, ("svg", "pdf", "png", "dxf"))
    made = given.design()
    if cutter or form == "dxf":
        deliver(target, encoded_for_cutter(cuts_cutter(made.layout), form), quiet=given.quiet)
        return 0
    with patience(given.quiet):
        pages = made.guide_pages(paper=paper, tiled=tiled, one_sheet=form != "pdf")
    larger = one_sheet_paper(made.layout.loaf, home())
    tell_sheets(pages, quiet=given.quiet, larger=larger)
    deliver_pictures(pages, target, form, quiet=given.quiet)
    return 0
