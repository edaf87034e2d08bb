"""Which picture of the loaf is asked for, and its making from a layout alone."""

import scorecraft.drawing.bloom.telling as telling
from scorecraft.cuts import Layout
from scorecraft.drawing.bloom.bloom import PIXELS, bloom
from scorecraft.drawing.bloom.mouths import closed, mouths_of, predicted
from scorecraft.drawing.picture import Picture
from scorecraft.drawing.tension.tension import tension_map
from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass
from scorecraft.opening import Opening


@dataclass(frozen=True, slots=True)
class Look:
    """What to draw: the baked loaf, or with it or instead of it something else.

    `view` is `top`, `front`, `side` or degrees above the bench; `crust` a word of CRUSTS, `flour`
    one of FLOURS or None for what suits the loaf; `pixels` count along the longer side. Raises
    UsageError for wishes that exclude one another.
    """

    before: bool = False
    proofed: bool = False
    tension: bool = False
    view: str = "top"
    crust: str = "golden"
    flour: str | None = None
    pixels: int = PIXELS

    def __post_init__(self) -> None:
        if self.before + self.proofed + self.tension > 1:
            raise UsageError(telling.SEPARATE, None, telling.ASK_FOR_ONE)
        if self.tension and self.view != "top":
            raise UsageError(telling.TENSION_FROM_TOP, None, telling.LEAVE_OUT_VIEW)


def picture(
    layout: Layout,
    wanted: Look,
    *,
    opening: Opening | None = None,
    width_mm: float | None = None,
) -> Picture:
    """Draw the picture that is asked for; full size unless its width (mm) is given.

    `opening` is how the cuts open, if it is known already.
    """
    if not wanted.proofed:
        opening = opening or predicted(layout)
    if wanted.tension and opening:
        return tension_map(layout, opening.tension_at, width_mm=width_mm)
    return bloom(
        layout,
        mouths_of(opening) if opening else closed(layout),
        before=wanted.before,
        proofed=wanted.proofed,
        view=wanted.view,
        width_mm=width_mm,
        pixels=wanted.pixels,
        crust=wanted.crust,
        flour=wanted.flour,
    )
