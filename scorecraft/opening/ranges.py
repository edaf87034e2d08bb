"""How far predicted openings and room may be off: ranges about what the model says.

Three things are not known better, taken as independent: how well the model follows dough, how
thick the skin is, and how exactly a hand keeps a depth, each cut for itself. What skin and depth
make of an opening is found by opening the cuts once more, all a little deeper, in the same
equations: it is depth over skin that counts.
"""

from math import exp, hypot, log

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.loaf.skin import Skin
from scorecraft.opening.predict import Model
from scorecraft.opening.result import Opening
from scorecraft.practice import DEPTH_OFF_MM, MODEL_OFF

DEEPER = 1.1
"""The cuts are opened once more so many times as deep."""
PRECISE = 1e-3
"""They open so precisely, see `Held.solve`: that moves a range by less than a hundredth."""
LEAST_MM = 0.01
"""A narrower opening is not looked at."""


@dataclass(frozen=True, slots=True, eq=False)
class Ranges:
    """The least and the most that is likely: of each cut's widest opening (N, 2), mm; of room.

    About two loaves in three lie within.
    """

    widest_mm: Floats
    taken: tuple[float, float]


def ranges_of(layout: Layout, skin: Skin, model: Model, opening: Opening) -> Ranges:
    """Find the ranges about what a layout's model says of its cuts and their room."""
    if not layout.cuts:
        return Ranges(np.zeros((0, 2)), (0.0, 0.0))
    deeper = model.opened(deeper=DEEPER, near=opening, precise=PRECISE)
    hand = DEPTH_OFF_MM[layout.bench.skill].value / layout.depths_mm
    widest = opening.widest_mm
    steep = _steepness(widest, deeper.widest_mm)
    spread = np.exp(np.hypot(_always(skin), steep * np.hypot(hand, skin.unsure)))
    share = layout.lengths_mm * np.maximum(widest, LEAST_MM)
    off = hypot(skin.unsure, float(np.linalg.norm(share * hand) / share.sum()))
    given = np.array([opening.work_taken, deeper.work_taken])
    room = exp(hypot(_always(skin), float(_steepness(given[:1], given[1:])[0]) * off))
    taken = min(opening.work_taken, 1.0)
    return Ranges(
        widest_mm=np.column_stack([widest / spread, widest * spread]),
        taken=(taken / room, min(taken * room, 1.0)),
    )


def _steepness(before: Floats, after: Floats) -> Floats:
    """How steeply values grow with depth: the power of it that they go by, at least 0."""
    safe = np.maximum(before, LEAST_MM), np.maximum(after, LEAST_MM)
    return np.asarray(np.maximum(np.log(safe[1] / safe[0]) / log(DEEPER), 0.0))


def _always(skin: Skin) -> float:
    """Give what every opening may be off by: the error of the model, and that of the growth."""
    return hypot(MODEL_OFF.value, skin.growth_unsure)
