"""`scorecraft stencil`: a plate to dust flour through."""

import click

from scorecraft.cli.full_size import millimetres
from scorecraft.cli.options import Given, pattern_options


@click.command("stencil")
@pattern_options
@click.option("-o", "--output", metavar="FILE", help="An .svg, .pdf, .png or .dxf file, or -.")
@click.option("--slot", callback=millimetres, metavar="LENGTH", help="Width of the slots.")
@click.option("--bridge", callback=millimetres, metavar="LENGTH", help="Least width of bridges.")
@click.option(
    "--web", callback=millimetres, metavar="LENGTH", help="Least width of all that stays."
)
@click.option("--only", metavar="NAMES", help="Only these figures or parts, like leaf,star.")
@click.option("--mirrored", is_flag=True, help="Draw the side that lies towards the dough.")
@click.option("--cutter", is_flag=True, help="Plain lines for a cutter or laser (.svg).")
@click.option("--paper", metavar="NAME", help="A4, A3, Letter or Tabloid.")
@click.option("--tiled", is_flag=True, help="On as many sheets of A4 or Letter as it takes.")
@click.option(
    "--as", "form", type=click.Choice(["svg", "pdf", "png", "dxf"]), help="The form, for -."
)
def command(
    given: Given, output: str | None, slot: float | None, bridge: float | None, web: float | None,
    only: str | None, mirrored: bool, cutter: bool, paper: str | None, tiled: bool,
    form: str | None,
) -> int:  # fmt: skip
    """Make a stencil of PATTERN: its cuts as slots in a plate that stays in one piece."""
    from scorecraft.cli.full_size import deliver_full_size
    from scorecraft.cli.output import deliver, say
    from scorecraft.cli.prints import file_form, named
    from scorecraft.drawing.templates.cutter import plate_cutter
    from scorecraft.drawing.templates.cutter_file import encoded_for_cutter
    from scorecraft.drawing.templates.stencil import stencil
    from scorecraft.plate.plate import make_plate

    target = output or named(given.pattern, "stencil")
    form = file_form(target, form, ("svg", "pdf", "png", "dxf"))
    layout = given.design().layout
    asked = {"bridge_mm": bridge, "web_mm": web}
    sizes = {name: size for name, size in asked.items() if size is not None}
    names = tuple(name.strip() for name in (only or "").split(",") if name.strip())
    plate = make_plate(layout, slot_mm=slot, only=names, mirrored=mirrored, **sizes)
    if plate.left_out and not given.quiet:
        say(f"note  too fine, left out: {', '.join(plate.left_out)}", err=True)
    if cutter or form == "dxf":
        deliver(
            target, encoded_for_cutter(plate_cutter(plate, layout.title), form), quiet=given.quiet
        )
    else:
        deliver_full_size(
            stencil(plate, layout), target, form, paper, tiled=tiled, quiet=given.quiet
        )
    return 0
