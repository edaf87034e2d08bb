"""The command line: thin commands that read options, make one call, and print."""

import io
import os
import sys
from functools import cache
from importlib import import_module
from pathlib import Path

import click

import scorecraft.cli.telling as telling
from scorecraft import __version__
from scorecraft.cli.output import say, told
from scorecraft.errors import ScorecraftError

CHANGES = Path(__file__).parents[1] / "CHANGELOG.md"


@cache
def sections() -> dict[str, dict[str, str]]:
    """List the commands as a baker meets them: on the way to the first loaf, after it, to look up.

    Each has its help: a print in its row, any other in the module of its name.
    """
    from scorecraft.prints import PRINTS

    told = telling.BRIEFS | {name: row.brief for name, row in PRINTS.items()}
    every = {
        telling.START: ("page", "list", "new"),
        telling.WORK: ("check", *PRINTS),
        telling.BAKED: ("tune",),
        telling.LOOK_UP: ("words", "rules"),
    }
    return {heading: {name: told[name] for name in names} for heading, names in every.items()}


def commands() -> dict[str, str]:
    """List every command with its help, in the order a baker meets them."""
    return {name: told for each in sections().values() for name, told in each.items()}


class Commands(click.Group):
    """Finds commands by name, and loads only the one that is asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """List the commands in the order a baker meets them."""
        return list(commands())

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Load a command's module."""
        if cmd_name not in telling.BRIEFS:
            from scorecraft.cli.print_commands import print_command
            from scorecraft.prints import PRINTS

            return print_command(PRINTS[cmd_name]) if cmd_name in PRINTS else None
        command = import_module(f"scorecraft.cli.{cmd_name}_command").command
        assert isinstance(command, click.Command)
        return command

    def invoke(self, ctx: click.Context) -> object:
        """Run the command; it is done when whoever reads its output has gone."""
        try:
            return super().invoke(ctx)
        except BrokenPipeError:
            return 0

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Write the list of commands, the way one goes through them, without loading them."""
        wide = max(map(len, commands()))
        for heading, each in sections().items():
            with formatter.section(heading):
                formatter.write_dl([(f"{name:<{wide}}", told) for name, told in each.items()])


def changes(ctx: click.Context, param: click.Parameter, wanted: bool) -> None:
    """Print what has changed from release to release, and stop."""
    if wanted and not ctx.resilient_parsing:
        click.echo(CHANGES.read_text("utf-8"), nl=False)
        ctx.exit()


@click.command(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="scorecraft")
@click.option("--changes", is_flag=True, is_eager=True, expose_value=False, callback=changes,
              help=telling.CHANGES)  # fmt: skip
@click.option("--debug", is_flag=True, help=telling.DEBUG)
@click.pass_context
def cli(ctx: click.Context, debug: bool) -> None:
    """Plan how to score a loaf: draw the cuts, check that it can rise freely, print the guide."""
    ctx.obj = {"debug": debug}


def main() -> None:
    """Run the command line; the exit code is 0, 1 (a stop), 2 (usage or pattern) or 3."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    code = run(sys.argv[1:])
    try:
        if sys.stdout is not None:
            sys.stdout.flush()
    except OSError:  # told already; what is left in the stream is not to be told again
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    sys.exit(code)


def run(arguments: list[str]) -> int:
    """Run one command and give its exit code."""
    try:
        result = cli.main(arguments, prog_name="scorecraft", standalone_mode=False)
        return result if isinstance(result, int) else 0
    except click.exceptions.Abort:
        click.echo("stopped", err=True)
        return 130
    except click.ClickException as error:
        words = io.StringIO()
        error.show(file=words)
        say(words.getvalue(), err=True, nl=False)
        return error.exit_code
    except ScorecraftError as error:
        say(told(error), err=True)
        return error.exit_code
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        say(f"the output cannot be written: {reason}", err=True)
        return 2
    except Exception as error:
        if "--debug" in arguments:
            raise
        kind = type(error).__name__
        say(f"internal error: {kind}: {error} (add --debug before the command)", err=True)
        return 3
