"""`scorecraft check`: what is wrong with a design, and what to do."""

import click

import scorecraft.cli.telling as telling
from scorecraft.cli.options import Given, pattern_options
from scorecraft.errors import ScorecraftError


@click.command("check", epilog=telling.EXAMPLE.format(command=telling.EXAMPLES["check"]))
@pattern_options
@click.option("--json", "as_json", is_flag=True, help=telling.AS_JSON)
@click.option("--quick", is_flag=True, help=telling.QUICK)
@click.option("-v", "--verbose", is_flag=True, help=telling.VERBOSE)
def command(
    given: Given, as_json: bool, quick: bool, verbose: bool,
) -> int:  # fmt: skip
    """Check PATTERN (a file, a shipped name, or - for standard input).

    Ends with the one thing to do next. The exit code is 1 where it cannot be cut as it is.
    """
    if as_json:
        return printed_as_json(given, quick=quick)
    from scorecraft.cli.next_step import next_step
    from scorecraft.cli.output import colored, patience, say
    from scorecraft.report import report

    design = given.design()
    with patience(given.quiet):
        told = report(design, quiet=given.quiet, verbose=verbose, quick=quick)
    click.echo(colored(told), nl=False)
    if not given.quiet:
        say(f"\n{next_step(design, given)}")
    return 1 if design.stops else 0


def printed_as_json(given: Given, *, quick: bool) -> int:
    """Print the design as JSON, or why there is none; the exit code is the same as without."""
    import json

    from scorecraft.check_data import as_data, refused
    from scorecraft.cli.output import patience

    try:
        design = given.design()
        with patience(given.quiet):
            data, code = as_data(design, quick=quick), 1 if design.stops else 0
    except ScorecraftError as error:
        data, code = refused(error), error.exit_code
    click.echo(json.dumps(data, indent=1, allow_nan=False))
    return code
