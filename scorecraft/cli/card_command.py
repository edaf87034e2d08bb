"""`scorecraft card`: the order of cuts, to stand by the loaf."""

import click

from scorecraft.cli.options import Given, pattern_options


@click.command("card")
@pattern_options
@click.option("-o", "--output", metavar="FILE", help="A .pdf, .svg, .png or .txt file, or -.")
@click.option("--paper", metavar="NAME", help="A4 or Letter; larger ones work too.")
@click.option("--hand", type=click.Choice(["right", "left"]), help="The hand that cuts.")
@click.option(
    "--as", "form", type=click.Choice(["txt", "svg", "pdf", "png"]), help="The form, for -."
)
def command(
    given: Given, output: str | None, paper: str | None, hand: str | None, form: str | None,
) -> int:  # fmt: skip
    """Print the bench card of PATTERN: which cut next, how deep, and how far to turn."""
    from scorecraft.bench import plan
    from scorecraft.cli.output import deliver
    from scorecraft.cli.prints import deliver_pictures, file_form, home, named
    from scorecraft.drawing.card.card import card, joined
    from scorecraft.drawing.card.text import card_text

    target = output or named(given.pattern, "card")
    form = file_form(
        target, form or ("txt" if target == "-" else None), ("txt", "svg", "pdf", "png")
    )
    design = given.design()
    layout = design.layout
    made = plan(layout, hand) if hand else design.work
    if form == "txt":
        deliver(target, card_text(layout, made, design.groups).encode(), quiet=given.quiet)
    else:
        pages = card(layout, made, design.groups, paper=paper, home=home())
        shown = pages if form == "pdf" else [joined(pages)]
        deliver_pictures(shown, target, form, quiet=given.quiet)
    return 0
