"""What is told of pictures on their way to files."""

from collections.abc import Sequence

from scorecraft.cli.output import say
from scorecraft.drawing.picture import Picture
from scorecraft.drawing.write import unprintable


def tell_unprintable(pictures: Sequence[Picture]) -> None:
    """Tell which characters of the labels cannot be printed."""
    if lacking := unprintable(pictures):
        shown = " ".join(lacking)
        say(f'warning  {shown} cannot be printed; "?" stands in its place', err=True)
