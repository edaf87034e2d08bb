"""Where the command starts, also as `python -m scorecraft`."""

import gc
import sys

SELDOM = 100_000
"""So many new things are made before those nothing leads to are looked for: most stay to the end,
and looking through them every 700, as is usual, takes a twentieth of a check."""


def main() -> None:
    """Run the command line; Ctrl-C while it is still being loaded stops it without a word more."""
    gc.set_threshold(SELDOM)
    try:
        from scorecraft.cli import main as command_line

        command_line()
    except KeyboardInterrupt:
        sys.exit(130)
    finally:
        gc.freeze()  # nor are they looked through at the end, when all of them go


if __name__ == "__main__":
    main()
