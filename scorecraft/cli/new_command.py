"""`scorecraft new`: a pattern of one's own to start from."""

from pathlib import Path
from shlex import quote

import click

import scorecraft.cli.telling as telling
from scorecraft.cli.options import shipped_names


@click.command("new", epilog=telling.EXAMPLE.format(command=telling.EXAMPLES["new"]))
@click.argument("file", type=click.Path(path_type=Path))
@click.option(
    "--like", "shipped", default="leaf-crown", show_default=True, metavar="NAME",
    shell_complete=shipped_names, help=telling.LIKE,
)  # fmt: skip
@click.option("-q", "--quiet", is_flag=True, help=telling.QUIET)
def command(file: Path, shipped: str, quiet: bool) -> int:
    """Start a pattern of your own in FILE from a shipped one; never overwrites a file."""
    from scorecraft.cli.output import deliver, say
    from scorecraft.errors import UsageError
    from scorecraft.shelf import SUFFIX, find_source, shelf

    if shipped not in shelf():
        find_source(shipped)
        raise UsageError(f'"{shipped}" is not a shipped pattern', None, "see: scorecraft list")
    if not file.name:
        raise UsageError("no file is named", None, "like: scorecraft new mine")
    target = file if file.suffix else file.with_suffix(SUFFIX)
    if target.exists():
        raise UsageError(f'"{target}" already exists', None, "choose another name")
    deliver(str(target), find_source(shipped).text.encode(), quiet=quiet)
    if not quiet:
        say(telling.EDIT_IT.format(target=quote(str(target))), err=True)
    return 0
