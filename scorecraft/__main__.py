"""Where the command starts, also as `python -m scorecraft`."""

import gc
import sys


def main() -> None:
    """Run the command line; Ctrl-C while it is still being loaded stops it without a word more."""
    gc.set_threshold(100_000)  # most things stay to the end: to sift them all the time is in vain
    try:
        from scorecraft.cli import main as command_line

        command_line()
    except KeyboardInterrupt:
        sys.exit(130)
    finally:
        gc.freeze()  # and at the end all of them go


if __name__ == "__main__":
    main()
