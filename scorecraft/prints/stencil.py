"""The stencil: a plate to dust flour through, or one for each dusting."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass
from scorecraft.prints.row import Drawn, Option, Print, Printed
from scorecraft.prints.sheets import PAPER, TILED, on_sheets

if TYPE_CHECKING:
    from scorecraft.cuts import Layout
    from scorecraft.plate.plate import Plate

ONE_PLATE = "a file of this kind holds one plate, and here are several"


@dataclass(frozen=True, slots=True)
class Made:
    """A plate as it is printed: its layer, which part it is, and what else is to be told of it."""

    plate: Plate
    layer: str = ""
    part: str = ""
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
    part: str = "",
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
    made = chosen(made, part)
    if len(made) > 1 and (flat or form != "pdf"):
        raise UsageError(ONE_PLATE, None, choose_one(made))
    remark = "; ".join(dict.fromkeys(told for each in made for told in remarks(each)))
    if flat:
        (one,) = made
        picture = plate_cutter(one.plate, layout.title)
        return Printed((picture,), remark=remark, caution=FILM, flat=picture)
    prints = [
        on_sheets(drawn(each.plate, layout, each.layer), form, paper, tiled=tiled) for each in made
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
    """Fit a plate to a limit: as it is, turned, or in parts to join.

    Raises UsageError where it does not fit.
    """
    from scorecraft.plate.parts import limit_of, parted, turned_to_fit
    from scorecraft.plate.telling import turned_by

    if not plate:
        return [made]
    limit = limit_of(plate)
    if split and limit.turn_deg(made.plate.polygon) is None:
        parts = enumerate(parted(made.plate, limit, turn=turn), start=1)
        return [Made(part, made.layer, f"{number}") for number, part in parts]
    turned, degrees = turned_to_fit(made.plate, layout.loaf, limit)
    told = turned_by(degrees) if degrees else ""
    return [Made(turned if turn else made.plate, made.layer, told=told)]


def remarks(made: Made) -> Sequence[str]:
    """Say what was left out of a plate, and how it lies."""
    from scorecraft.plate.telling import IN_PARTS, unfilled

    plate = made.plate
    left = ", ".join(plate.left_out)
    said = (
        f"too fine for this stencil, left out: {left}" if left else "",
        unfilled(plate.unfilled) if plate.unfilled else "",
        IN_PARTS.format(count=plate.part.split()[-1]) if plate.part else "",
        made.told,
    )
    return [each for each in said if each]


def chosen(made: Sequence[Made], part: str) -> list[Made]:
    """Keep the part that is asked for; raises UsageError where there is none."""
    kept = [each for each in made if not part or each.part == part]
    if not kept:
        raise UsageError(f"there is no part {part} of this stencil", None, choose_one(made))
    return kept


def choose_one(made: Sequence[Made]) -> str:
    """Say how one of several plates is chosen."""
    layers = [f"--layer {name}" for name in dict.fromkeys(each.layer for each in made) if name]
    parts = [f"--part {name}" for name in dict.fromkeys(each.part for each in made) if name]
    ways = [" or ".join(each) for each in (layers, parts) if len(each) > 1]
    if not ways:
        return "leave --part out: it is in one piece"
    return f"choose {', and '.join(ways)}; a .pdf holds them all"


STENCIL = Print(
    "stencil",
    "make a stencil to dust flour through",
    "Make a stencil of PATTERN: its cuts as slots in a sheet that stays in one piece.",
    ("svg", "pdf", "png", "dxf"),
    (
        Option("slot", "length", "Width of the slots.", choices=("2", "3", "4"),
               label="Slot width"),
        Option("bridge", "length", "Thinnest bridge across a slot.", choices=("2", "3", "4"),
               label="Least bridge across a slot"),
        Option("web", "length", "Thinnest strip left standing.", choices=("1.5", "2", "3"),
               label="Least strip left standing"),
        Option("only", "names", "Only these figures or parts, like leaf,star.", "NAMES"),
        Option("fill", "names", "Open these figures as whole shapes, like heart,leaf.", "NAMES",
               label="Fill these figures", like="heart, leaf"),
        Option("layers", "words", 'A plate for each dusting: "flour=leaf; cocoa=star".', "LAYERS",
               label="A plate for each dusting", like="flour=leaf; cocoa=star"),
        Option("layer", "words", "Only the plate of this layer.", "NAME",
               label="Only the plate for", like="flour"),
        Option("plate", "words", "The largest plate or bed, like 300x300mm.", "SIZE",
               label="Largest plate or bed", like="300x300mm"),
        Option("split", "flag", "In parts to join, where the plate is too small.",
               label="Split into plates to join"),
        Option("part", "words", "Only this part of a split stencil, like 2.", "NUMBER",
               label="Only part", like="2"),
        Option("mirrored", "flag", "Draw the side that faces the dough.",
               label="Mirrored: the side that faces the dough"),
        Option("cutter", "flag", "Plain lines for a cutter or laser (.svg)."),
        PAPER,
        TILED,
    ),
    stencil,
    example="--slot 2.5mm -o stencil.svg",
)  # fmt: skip
