"""`scorecraft page`: the live page in a browser."""

from pathlib import Path

import click


@click.command("page")
@click.argument("folder", type=click.Path(path_type=Path), default=".")
@click.option("--port", type=click.IntRange(0, 65535), default=8337, show_default=True,
              help="The port of the page; 0 takes any free one.")  # fmt: skip
@click.option("--no-browser", is_flag=True, help="Do not open the browser.")
@click.option("--share", is_flag=True, help="Let a phone on the same network follow the cuts.")
def command(folder: Path, port: int, no_browser: bool, share: bool) -> int:
    """Open the live page on the patterns of FOLDER (the current one if none is named)."""
    from scorecraft.web.serve import serve

    serve(folder, port=port, browser=not no_browser, share=share, say=click.echo)
    return 0
