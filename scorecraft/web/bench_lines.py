"""What a step at the bench asks for, in the card's words: what to cut, how deep, how to hold it."""

from itertools import groupby
from math import degrees

from scorecraft.bench.blade import upright
from scorecraft.bench.steps import Pull, Step
from scorecraft.bench.telling import (
    Handling,
    angle_words,
    depth_words,
    exact_degrees,
    handle_words,
    handling_of,
    lean_words,
    mark_words,
)
from scorecraft.cuts import Layout
from scorecraft.designing import Design
from scorecraft.drawing.card.blade import blade_picture, blade_wide
from scorecraft.drawing.picture import Picture
from scorecraft.drawing.svg import svg
from scorecraft.groups import numbers_of
from scorecraft.json_data import Json, JsonObject
from scorecraft.web import telling as say

MOST_NAMES = 3
GLYPH_MM = 24.0


def lines_data(design: Design, step: Step) -> list[JsonObject]:
    """Tell the pulls of a step: like ones together, those of one depth and blade in one line."""
    layout, numbers = design.layout, numbers_of(design.groups)

    def alike(pull: Pull) -> tuple[int, str, float, float]:
        cut = layout.cuts[pull.cut]
        depth = 0.0 if cut.severs else round(cut.depth_mm, 1)
        return numbers[pull.cut], cut.name, depth, round(degrees(cut.blade_rad))

    def held(pulls: list[Pull]) -> tuple[float, float, str]:
        cut = layout.cuts[pulls[0].cut]
        return round(cut.depth_mm, 1), round(degrees(cut.blade_rad)), lean_words(pulls)

    lines: list[list[list[Pull]]] = []
    for pulls in (list(same) for _, same in groupby(step.pulls, key=alike)):
        if lines and len(lines[-1]) < MOST_NAMES and held(lines[-1][0]) == held(pulls):
            lines[-1].append(pulls)
        else:
            lines.append([pulls])
    return [
        {"names": " + ".join(named(layout, pulls) for pulls in line)}
        | facts(handling_of(layout, [pull for pulls in line for pull in pulls], numbers))
        for line in lines
    ]


def turn_said(step: Step, time: int, times: int) -> list[Json]:
    """Say how the table is turned, in pieces each with its weight: strong, faint or "".

    A turn is told exactly, or else by where the mark goes, since rounded turns would add up.
    """
    way = say.CLOCKWISE if step.turn_rad > 0 else say.COUNTER
    turn, mark = angle_words(abs(step.turn_rad)), mark_words(step)
    pieces: list[Json] = []
    if turn == "0°":
        pieces.append([say.STAY, ""])
    elif exact_degrees(step.turn_rad) is not None:
        to = say.MARK_TO.format(angle=mark)
        pieces += [[say.TURN, ""], [turn, "strong"], [way, ""], [to, "faint"]]
    else:
        pieces += [[say.TURN_MARK, ""], [mark, "strong"], [way, ""]]
    if step.spin_rad:
        pieces.append([say.SPIN.format(degrees=degrees(step.spin_rad)), ""])
    if times > 1:
        pieces.append([say.TIME_OF.format(time=time, times=times), "faint"])
    return pieces


def named(layout: Layout, pulls: list[Pull]) -> str:
    """Name like strokes, with how many there are."""
    name = layout.cuts[pulls[0].cut].name
    return f"{len(pulls)} × {name}" if len(pulls) > 1 else name


def facts(handling: Handling) -> JsonObject:
    """Tell how cuts are made: rows of a name and what holds, a picture of the blade, a remark."""
    deep = depth_words(handling) + " uncut" * handling.scissors
    rows: list[Json] = [[say.DEPTH, deep]]
    aside = handling.aside[:1].upper() + handling.aside[1:]
    if handling.scissors:
        rows.append([say.SCISSORS, handle_words(handling).removeprefix("scissors ")])
        return {"facts": rows, "blade": "", "aside": aside}
    straight = upright(handling.blade_rad)
    if straight and handling.severed:
        rows.append([say.BLADE, handle_words(handling)])
    else:
        rows.append([say.BLADE, say.UPRIGHT if straight else f"{degrees(handling.blade_rad):.0f}°"])
    if handling.lean:
        rows.append([say.HANDLE, handle_words(handling).removeprefix("tilt the handle ")])
    return {"facts": rows, "blade": glyph(handling), "aside": aside}


def glyph(handling: Handling) -> str:
    """Draw the blade in the dough, as the card does, SVG."""
    items = tuple(blade_picture(handling, 0.0, GLYPH_MM, GLYPH_MM))
    wide = blade_wide(handling, GLYPH_MM)
    return svg(Picture(wide, 1.18 * GLYPH_MM, "", items=items), text="text", ids="blade")
