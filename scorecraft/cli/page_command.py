"""`scorecraft page`: the live page in a browser."""

from pathlib import Path

import click

import scorecraft.cli.telling as telling

PORT = 29571
"""Where the page is if no other port is asked for. No well-known program listens there: IANA's
registry of service names and port numbers gives 29170 to 29998 to nobody (read 2026-11), and it
lies below the ports that systems hand out to connections that go out (32768 and above)."""


@click.command("page", epilog=telling.EXAMPLE.format(command=telling.EXAMPLES["page"]))
@click.argument("folder", type=click.Path(path_type=Path), default=".")
@click.option("--port", type=click.IntRange(0, 65535), default=PORT, show_default=True,
              help=telling.PORT)  # fmt: skip
@click.option("--no-browser", is_flag=True, help=telling.NO_BROWSER)
@click.option("--share", is_flag=True, help=telling.SHARE)
def command(folder: Path, port: int, no_browser: bool, share: bool) -> int:
    """Open the live page on the patterns of FOLDER (the current one if none is named)."""
    from scorecraft.cli.output import say
    from scorecraft.web.serve import serve

    serve(folder, port=port, browser=not no_browser, share=share, say=say)
    return 0
