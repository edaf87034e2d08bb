"""Where the command starts, also as `python -m scorecraft`."""

import sys


def main() -> None:
    """Run the command line; Ctrl-C while it is still being loaded stops it without a word more."""
    try:
        from scorecraft.cli import main as command_line

        command_line()
    except KeyboardInterrupt:
        sys.exit(130)


if __name__ == "__main__":
    main()
