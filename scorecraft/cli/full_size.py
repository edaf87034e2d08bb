"""What stencil, drape and ring share: lengths as options, and sheets for a large figure."""

from typing import TYPE_CHECKING

import click

from scorecraft.errors import UsageError

if TYPE_CHECKING:
    from scorecraft.drawing.paper.full_size import Figure


def millimetres(ctx: click.Context, param: click.Parameter, value: str | None) -> float | None:
    """Read a length with its unit, like 3mm or 1/8in, in mm; raises UsageError for all else."""
    if value is None:
        return None
    from scorecraft.designing import turn
    from scorecraft.units import LENGTH

    name = str(param.name)
    refused = UsageError(f'"{value}" is not a length', None, f"write --{name} 3mm, with the unit")
    try:
        found = turn(name, value)
    except UsageError as error:
        raise refused from error
    if found.dimension != LENGTH or found.share:
        raise refused
    return found.value


def deliver_full_size(
    figure: "Figure", target: str, form: str, paper: str | None, *, tiled: bool, quiet: bool
) -> None:
    """Lay a figure out and write it; only a PDF is spread over sheets without being asked."""
    from scorecraft.cli.prints import deliver_pictures, home, tell_sheets
    from scorecraft.drawing.paper.full_size import full_size_pages

    pages = full_size_pages(figure, name=paper, home=home(), tiled=tiled, one_sheet=form != "pdf")
    tell_sheets(pages, quiet=quiet)
    deliver_pictures(pages, target, form, quiet=quiet)
