"""Pictures to files, and what is told on the way."""

from collections.abc import Sequence

from scorecraft.cli.output import deliver, say
from scorecraft.drawing.picture import Picture
from scorecraft.drawing.write import encoded, unprintable


def tell_unprintable(pictures: Sequence[Picture]) -> None:
    """Tell which characters of the labels cannot be printed."""
    if lacking := unprintable(pictures):
        shown = " ".join(lacking)
        say(f'warning  {shown} cannot be printed; "?" stands in its place', err=True)


def deliver_pictures(pictures: Sequence[Picture], target: str, form: str, *, quiet: bool) -> None:
    """Encode and write pictures."""
    data = encoded(pictures, form)
    tell_unprintable(pictures)
    deliver(target, data, quiet=quiet)
