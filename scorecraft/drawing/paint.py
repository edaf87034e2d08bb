"""What areas of a drawing are filled with: a colour, or colours that change on the way."""

from typing import TypeAlias

from scorecraft.frozen import dataclass, replace


@dataclass(frozen=True, slots=True)
class Stop:
    """A colour of a gradient at a part (0 to 1) of its way."""

    at: float
    color: str


@dataclass(frozen=True, slots=True)
class LinearGradient:
    """Colours that change along the way from one point of the paper to another (mm)."""

    start: tuple[float, float]
    end: tuple[float, float]
    stops: tuple[Stop, ...]


@dataclass(frozen=True, slots=True)
class RadialGradient:
    """Colours that change from a centre out to the ellipse of the radii (mm).

    `focus` is where the first colour stands, if not in the centre.
    """

    centre: tuple[float, float]
    radii: tuple[float, float]
    stops: tuple[Stop, ...]
    focus: tuple[float, float] | None = None


Paint: TypeAlias = str | LinearGradient | RadialGradient


def moved(paint: Paint | None, dx: float, dy: float, scale: float) -> Paint | None:
    """Return a fill scaled about the paper's corner, then shifted (mm)."""
    if isinstance(paint, LinearGradient):
        return replace(
            paint,
            start=(paint.start[0] * scale + dx, paint.start[1] * scale + dy),
            end=(paint.end[0] * scale + dx, paint.end[1] * scale + dy),
        )
    if isinstance(paint, RadialGradient):
        focus = paint.focus
        return replace(
            paint,
            centre=(paint.centre[0] * scale + dx, paint.centre[1] * scale + dy),
            radii=(paint.radii[0] * scale, paint.radii[1] * scale),
            focus=focus and (focus[0] * scale + dx, focus[1] * scale + dy),
        )
    return paint
