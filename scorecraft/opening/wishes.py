"""Wished openings of a layout: the depths that give them, and what is out of reach."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from scorecraft.checks.finding import Finding
from scorecraft.cuts import Cut, Layout
from scorecraft.loaf.skin import Skin
from scorecraft.opening.depth import Wanted, depths_for, to_hand
from scorecraft.opening.panel_size import panel_for
from scorecraft.opening.predict import sheet_of


@dataclass(frozen=True, slots=True)
class Met:
    """A layout whose cuts have the depths that were wished for, and what could not be had."""

    layout: Layout
    findings: tuple[Finding, ...] = ()


def meet(layout: Layout, skin: Skin) -> Met:
    """Give every cut with a wished opening its depth, all together, rounded to what a hand can do.

    Raises ScorecraftError where no depths are found.
    """
    wished = np.array([np.nan if c.opens_mm is None else c.opens_mm for c in layout.cuts])
    if np.isnan(wished).all():
        return Met(layout)
    sheet = sheet_of(layout, skin)
    lines = [cut.line for cut in layout.cuts]
    found = depths_for(
        lines,
        wished,
        [cut.depth_mm for cut in layout.cuts],
        strain=sheet.strain,
        skin_mm=sheet.skin_mm,
        area_mm2=sheet.area_mm2,
        panel_mm=panel_for(lines),
    )
    depths = np.where(np.isnan(wished), found.depth_mm, to_hand(found.depth_mm))
    cuts = tuple(
        replace(cut, depth_mm=float(depth)) if cut.opens_mm is not None else cut
        for cut, depth in zip(layout.cuts, depths, strict=True)
    )
    return Met(replace(layout, cuts=cuts), tuple(unmet(layout.cuts, found, skin)))


def unmet(cuts: tuple[Cut, ...], found: Wanted, skin: Skin) -> list[Finding]:
    """Tell the wishes out of reach, once for the copies of one statement."""
    lost: dict[int, list[int]] = {}
    for index in np.flatnonzero(~found.reachable):
        lost.setdefault(cuts[index].family, []).append(int(index))
    return [_told(cuts, found, members, skin) for members in lost.values()]


def _told(cuts: tuple[Cut, ...], found: Wanted, members: list[int], skin: Skin) -> Finding:
    """Tell of the cuts of one statement that cannot open as wished."""
    worst = min(members, key=lambda index: found.most_mm[index])
    cut, most = cuts[worst], float(found.most_mm[worst])
    message = (
        f"{cut.name} cannot open {cut.opens_mm:g} mm: cut through the skin "
        f"({skin.thickness_mm:g} mm) it opens {most:.1f} mm beside its neighbours"
    )
    reach = np.floor(most * 9) / 10
    hint = f"wish for {reach:.1f} mm or less, or make the cut longer or its neighbours fewer"
    figures: Mapping[str, float] = {"most_mm": most, "count": float(len(members))}
    lines = tuple(cuts[index].line for index in members)
    return Finding("opens", "warn", message, hint, cut.place, figures, lines)
