"""The stencil: a plate to dust flour through, or one for each dusting."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from scorecraft.errors import UsageError
from scorecraft.prints.row import Drawn, Option, Print, Printed
from scorecraft.prints.sheets import PAPER, TILED, on_sheets

if TYPE_CHECKING:
    from scorecraft.cuts import Layout
    from scorecraft.plate.plate import Plate

ONE_PLATE = "a file of this kind holds one plate, and here are several"
HALVES = ("1", "2")


@dataclass(frozen=True, slots=True)
class Made:
    """A plate as it is printed: its layer, which half it is, and what else is to be told of it."""

    plate: Plate
    layer: str = ""
    half: str = ""
    told: str = ""


def stencil(
    design: Drawn,
    form: str,
    *,
    only: tuple[str, ...] = (),
    fill: tuple[str, ...] = (),
    layers: str = "",
    layer: str = "",
    plate: str = "",
    split: bool = False,
    half: str = "",
    mirrored: bool = False,
    cutter: bool = False,
    paper: str | None = None,
    tiled: bool = False,
    **sizes: float,
) -> Printed:
    """Draw plates with slots, bridges and webs of `sizes` (mm), or their edges for a cutter.

    What is not asked for is as the pattern's `stencil` says. Raises UsageError where a file of one
    plate would have to hold several.
    """
    from scorecraft.drawing.paper.cautions import FILM
    from scorecraft.drawing.templates.cutter import plate_cutter
    from scorecraft.drawing.templates.stencil import stencil as drawn
    from scorecraft.plate.plate import make_plate

    layout, wish = design.layout, design.layout.stencil
    own: dict[str, float] = {**wish.sizes, **sizes}
    whole = fill or wish.fill
    flat = cutter or form == "dxf"
    made: list[Made] = []
    for name, names in dusted(layers or wish.layers, layer, only).items():
        opened = [each for each in whole if not name or each in names]
        found = make_plate(layout, only=names, fill=opened, mirrored=mirrored, **own)
        made += fitted(Made(found, name), layout, plate or wish.plate, split=split, turn=flat)
    made = [each for each in made if not half or each.half == half]
    if len(made) > 1 and (flat or form != "pdf"):
        raise UsageError(ONE_PLATE, None, choose_one(made))
    remark = "; ".join(dict.fromkeys(told for each in made for told in remarks(each)))
    if flat:
        (one,) = made
        picture = plate_cutter(one.plate, layout.title)
        return Printed((picture,), remark=remark, caution=FILM, flat=picture)
    prints = [
        on_sheets(drawn(each.plate, layout, each.layer, each.half), form, paper, tiled=tiled)
        for each in made
    ]
    return Printed(
        tuple(page for each in prints for page in each.pages),
        sheets="; ".join(each.sheets for each in prints if each.sheets),
        larger=next((each.larger for each in prints if each.larger), ""),
        remark=remark,
    )


def dusted(text: str, layer: str, only: tuple[str, ...]) -> Mapping[str, tuple[str, ...]]:
    """Tell which cuts go into which plate: all into one without a name where there are no layers.

    Raises UsageError for layers and a layer that cannot be.
    """
    from scorecraft.plate.layers import layer_of, layers_of

    if only or not (text or layer):
        return {"": only}
    found = layers_of(text)
    return {layer: layer_of(found, layer)} if layer else found


def fitted(made: Made, layout: Layout, plate: str, *, split: bool, turn: bool) -> Sequence[Made]:
    """Fit a plate to a limit: as it is, turned, or in two halves.

    Raises UsageError where it does not fit.
    """
    from scorecraft.plate.halves import halves, limit_of, turned_to_fit
    from scorecraft.plate.telling import turned_by

    if not plate:
        return [made]
    limit = limit_of(plate)
    if split and limit.turn_deg(made.plate.polygon) is None:
        parts = halves(made.plate, limit)
        return [Made(part, made.layer, n) for n, part in zip(HALVES, parts, strict=True)]
    turned, degrees = turned_to_fit(made.plate, layout.loaf, limit)
    told = turned_by(degrees) if degrees else ""
    return [Made(turned if turn else made.plate, made.layer, told=told)]


def remarks(made: Made) -> Sequence[str]:
    """Say what was left out of a plate, and how it lies."""
    left = ", ".join(made.plate.left_out)
    return [*([f"too fine for this stencil, left out: {left}"] if left else []),
            *([made.told] if made.told else [])]  # fmt: skip


def choose_one(made: Sequence[Made]) -> str:
    """Say how one of several plates is chosen."""
    layers = [f"--layer {name}" for name in dict.fromkeys(each.layer for each in made) if name]
    halves = [f"--half {name}" for name in dict.fromkeys(each.half for each in made) if name]
    ways = [" or ".join(each) for each in (layers, halves) if len(each) > 1]
    return f"add {', and '.join(ways)}; a .pdf holds them all"


STENCIL = Print(
    "stencil",
    "make a stencil to dust flour through",
    "Make a stencil of PATTERN: its cuts as slots in a sheet that stays in one piece.",
    ("svg", "pdf", "png", "dxf"),
    (
        Option("slot", "length", "Width of the slots.", choices=("2", "3", "4"), on_page=True),
        Option("bridge", "length", "Thinnest bridge across a slot."),
        Option("web", "length", "Thinnest strip left standing."),
        Option("only", "names", "Only these figures or parts, like leaf,star.", "NAMES"),
        Option("fill", "names", "Open these figures as whole shapes, like heart,leaf.", "NAMES"),
        Option("layers", "words", 'A plate for each dusting: "flour=leaf; cocoa=star".', "LAYERS"),
        Option("layer", "words", "Only the plate of this layer.", "NAME"),
        Option("plate", "words", "The largest plate or bed, like 300x300mm.", "SIZE"),
        Option("split", "flag", "In two halves to join, where the plate is too small."),
        Option("half", "choice", "Only this half of a split stencil.", choices=HALVES),
        Option("mirrored", "flag", "Draw the side that faces the dough.", on_page=True),
        Option("cutter", "flag", "Plain lines for a cutter or laser (.svg)."),
        PAPER,
        TILED,
    ),
    stencil,
    example="--slot 2.5mm -o stencil.svg",
)
