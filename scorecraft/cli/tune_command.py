"""`scorecraft tune`: learn the skin from a baked loaf, and keep a log of bakes."""

import os
from pathlib import Path
from typing import TYPE_CHECKING

import click

import scorecraft.cli.telling as telling
from scorecraft.cli.options import shipped_names, turned

if TYPE_CHECKING:
    from scorecraft.designing import Design

LOG = "bakes.jsonl"


@click.command("tune", epilog=telling.EXAMPLE.format(command=telling.EXAMPLES["tune"]))
@click.argument("pattern", required=False, shell_complete=shipped_names)
@click.option(
    "--measured",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help=telling.MEASURED,
)
@click.option(
    "-o",
    "--output",
    default="baker.toml",
    show_default=True,
    metavar="FILE",
    help=telling.CALIBRATION,
)
@click.option(
    "--log",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help=telling.LOG.format(log=LOG),
)
@click.option("--note", default="", metavar="TEXT", help=telling.LOG_NOTE)
@click.option("--list", "listing", is_flag=True, help=telling.LIST_BAKES)
@click.option(
    "--plot",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help=telling.PLOT,
)
@click.option("--set", "knobs", multiple=True, metavar="KNOB=VALUE", help=telling.SET)
@click.option("--loaf", metavar="WORDS", help=telling.BAKED_LOAF)
@click.option("--dough", metavar="WORDS", help=telling.BAKED_DOUGH)
@click.option("--bake", metavar="WORDS", help=telling.BAKED_HOW)
@click.option("-q", "--quiet", is_flag=True, help=telling.QUIET)
def command(
    pattern: str | None, measured: Path | None, output: str, log: Path | None, note: str,
    listing: bool, plot: Path | None, knobs: tuple[str, ...], loaf: str | None,
    dough: str | None, bake: str | None, quiet: bool,
) -> int:  # fmt: skip
    """Adjust the model to the openings measured on a baked loaf of PATTERN, or list the bakes."""
    from scorecraft.errors import UsageError

    if listing:
        return listed(log or Path(LOG), plot, quiet=quiet)
    if pattern is None or measured is None:
        hint = "scorecraft tune PATTERN --measured FILE.csv, or scorecraft tune --list"
        raise UsageError("tune needs a pattern and what was measured", None, hint)
    given = {"loaf": loaf, "dough": dough, "bake": bake}
    return fitted(pattern, measured, output, log, note, plot, turned(knobs), given, quiet=quiet)


def listed(log: Path, plot: Path | None, *, quiet: bool) -> int:
    """List the bakes of a log, and plot all their openings if asked."""
    from scorecraft.cli.output import deliver, say
    from scorecraft.tune.log import read
    from scorecraft.tune.telling import log_text, measured_and_predicted

    found = read(log)
    if plot is not None:
        pairs = [pair for each in found.bakes for pair in measured_and_predicted(each)]
        title = f"{len(found.bakes)} bakes" if len(found.bakes) != 1 else "1 bake"
        deliver(str(plot), plotted(plot, pairs, title, ""), quiet=quiet)
    say(log_text(found), nl=False)
    return 0


def fitted(
    pattern: str, measured: Path, output: str, log: Path | None, note: str, plot: Path | None,
    knobs: dict[str, str], given: dict[str, str | None], *, quiet: bool,
) -> int:  # fmt: skip
    """Fit one bake, with those of the log; write nothing before everything is made."""
    from datetime import date

    from scorecraft.cli.output import deliver, say
    from scorecraft.prints.forms import file_form
    from scorecraft.tune.bake import openings, record, tune
    from scorecraft.tune.baker import baker_of, baker_text
    from scorecraft.tune.log import add, earlier, read
    from scorecraft.tune.measured import read_measured
    from scorecraft.tune.predict import predictor
    from scorecraft.tune.telling import skin_words, tuned_text

    design = baked(pattern, knobs, given)
    rows = read_measured(measured, design.groups)
    if plot is not None:
        file_form(str(plot), None)
    if not quiet:
        click.echo(telling.FITTING, err=True)
    model = predictor(design.layout, design.groups)
    before = earlier(read(log)) if log is not None and log.exists() else []
    tuned = tune(design.layout, design.groups, rows, model, before)
    today, name = date.today().isoformat(), named(pattern)
    baker = baker_text(baker_of(tuned.fit, pattern=name, date=today)).encode()
    if plot is not None:
        drawn = plotted(plot, openings(tuned), design.layout.title or name, skin_words(tuned))
    if log is not None:
        add(log, record(tuned, pattern=name, date=today, note=note))
        if not quiet:
            say(f"added to {log}", err=True)
    if plot is not None:
        deliver(str(plot), drawn, quiet=quiet)
    if output != "-":
        say(tuned_text(tuned), nl=False)
    deliver(output, baker, quiet=quiet)
    return 0


def baked(pattern: str, knobs: dict[str, str], given: dict[str, str | None]) -> "Design":
    """Make the design of the loaf that was baked."""
    from scorecraft.designing import make

    loaf, dough, bake = given["loaf"], given["dough"], given["bake"]
    here = Path.cwd()
    return make(pattern, knobs=knobs, loaf=loaf, dough=dough, bake=bake, standing=here)


def named(pattern: str) -> str:
    """Give a pattern's name as text, whatever bytes its file's name is made of."""
    return os.fsencode(Path(pattern).stem).decode("utf-8", "replace")


def plotted(plot: Path, pairs: list[tuple[float, float]], title: str, note: str) -> bytes:
    """Draw a plot in the form of its file."""
    from scorecraft.drawing.tune_plot import tune_plot
    from scorecraft.drawing.write import encoded
    from scorecraft.prints.forms import file_form

    return encoded([tune_plot(pairs, title, note)], file_form(str(plot), None))
