"""One measured bake: what was cut, what opened, what the model learns from it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from scorecraft.cuts import Layout
from scorecraft.groups import Group
from scorecraft.json_data import Json, JsonObject
from scorecraft.tune.fit import Bounds, Fit, Widths, fit_closely
from scorecraft.tune.measured import Measured


@dataclass(frozen=True, slots=True)
class Tuned:
    """A fit with the cuts it is about, row by row of what was measured."""

    layout: Layout
    groups: tuple[Group, ...]
    measured: tuple[Measured, ...]
    fit: Fit


def tune(
    layout: Layout, told: Sequence[Group], measured: Sequence[Measured], widths: Widths
) -> Tuned:
    """Fit a model of a layout's bake to the openings measured on its groups of cuts, by key."""
    column = {group.key: k for k, group in enumerate(told)}
    rows = [column[each.key] for each in measured]
    sizes = np.array([each.width_mm for each in measured])
    return Tuned(layout, tuple(told), tuple(measured), fit_closely(widths, rows, sizes))


def openings(tuned: Tuned) -> list[tuple[float, float]]:
    """List measured and predicted width (mm) of every row."""
    predicted = tuned.fit.predicted_mm
    return [(row.width_mm, float(p)) for row, p in zip(tuned.measured, predicted, strict=True)]


def record(tuned: Tuned, *, pattern: str, date: str, note: str) -> JsonObject:
    """Tell a bake as plain data for the log."""
    layout, loaf = tuned.layout, tuned.layout.loaf
    return {
        "date": date,
        "pattern": pattern,
        "title": layout.title,
        "loaf": {
            "shape": loaf.shape,
            "width_mm": round(loaf.width_mm, 1),
            "length_mm": round(loaf.length_mm, 1),
            "height_mm": round(loaf.height_mm, 1),
        },
        "bake": {
            "spring": layout.bake.spring, "spread": layout.bake.spread, "steam": layout.bake.steam,
        },
        "knobs": {knob.name: [round(knob.value, 6), knob.unit] for knob in layout.knobs},
        "cuts": [
            {
                "number": group.number,
                "key": group.key,
                "name": group.name,
                "depth_mm": round(group.depth_mm, 2),
                **_openings(tuned, group.key),
            }
            for group in tuned.groups
        ],
        "skin_mm": _bounds(tuned.fit.skin_mm),
        "growth": _bounds(tuned.fit.growth),
        "settled": tuned.fit.settled,
        "sure": tuned.fit.sure,
        "note": note,
    }  # fmt: skip


def _openings(tuned: Tuned, key: str) -> Mapping[str, Json]:
    rows = [k for k, each in enumerate(tuned.measured) if each.key == key]
    if not rows:
        return {}
    return {
        "measured_mm": [tuned.measured[k].width_mm for k in rows],
        "predicted_mm": round(float(tuned.fit.predicted_mm[rows[0]]), 2),
    }


def _bounds(bounds: Bounds) -> dict[str, float]:
    return {
        "best": round(bounds.best, 3),
        "low": round(bounds.low, 3),
        "high": round(bounds.high, 3),
    }
