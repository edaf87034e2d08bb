"""One measured bake: what was cut, what opened, what the model learns from it."""

from collections.abc import Mapping, Sequence

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.groups import Group
from scorecraft.json_data import Json, JsonObject
from scorecraft.tune.fit import Bounds, Fit, fit
from scorecraft.tune.log import Earlier
from scorecraft.tune.measured import Measured
from scorecraft.tune.table import Widths, fine, knots, table


@dataclass(frozen=True, slots=True)
class Tuned:
    """A fit with the cuts it is about, row by row of what was measured.

    The rows of the fit are these, then those of the earlier bakes it was made with, so many bakes.
    `model_mm` (skins, insides, groups) is what the model says of this bake.
    """

    layout: Layout
    groups: tuple[Group, ...]
    measured: tuple[Measured, ...]
    fit: Fit
    model_mm: Floats
    earlier: int = 0


def tune(
    layout: Layout,
    told: Sequence[Group],
    measured: Sequence[Measured],
    widths: Widths,
    earlier: Sequence[Earlier] = (),
) -> Tuned:
    """Fit a model of a layout's bake to the openings measured on its groups of cuts, by key.

    Bakes of the log, of whatever patterns, are fitted together with it.
    """
    column = {group.key: k for k, group in enumerate(told)}
    model = table(widths)
    rows = [column[each.key] for each in measured]
    sizes = [each.width_mm for each in measured]
    models = [model]
    for bake in earlier:
        first = sum(each.shape[2] for each in models)
        rows += [first + cut for cut in bake.cuts]
        sizes += bake.measured_mm
        models.append(bake.model_mm)
    found = fit(fine(models), rows, np.array(sizes))
    return Tuned(layout, tuple(told), tuple(measured), found, model, len(earlier))


def openings(tuned: Tuned) -> list[tuple[float, float]]:
    """List measured and predicted width (mm) of every row."""
    predicted = tuned.fit.predicted_mm[: len(tuned.measured)]
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
        "dough": {
            "proof": layout.dough.stage, "times": round(layout.dough.times, 2),
            "culture": layout.dough.culture, "hydration": layout.dough.hydration,
            "temperature_c": layout.dough.temperature_c, "kitchen_c": layout.dough.kitchen_c,
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
        "knots": [each.round(6).tolist() for each in knots()],
        "skin_mm": _bounds(tuned.fit.skin_mm),
        "inside": _bounds(tuned.fit.inside),
        "growth": _bounds(tuned.fit.growth),
        "settled": tuned.fit.settled,
        "sure": tuned.fit.sure,
        "note": note,
    }  # fmt: skip


def _openings(tuned: Tuned, key: str) -> Mapping[str, Json]:
    rows = [k for k, each in enumerate(tuned.measured) if each.key == key]
    if not rows:
        return {}
    column = [group.key for group in tuned.groups].index(key)
    return {
        "measured_mm": [tuned.measured[k].width_mm for k in rows],
        "predicted_mm": round(float(tuned.fit.predicted_mm[rows[0]]), 2),
        "model_mm": tuned.model_mm[:, :, column].round(3).tolist(),
    }


def _bounds(bounds: Bounds) -> dict[str, float]:
    return {key: round(getattr(bounds, key), 3) for key in ("best", "low", "high")}
