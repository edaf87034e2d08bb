"""What is to be seen inside a wide opening: blotches, terraces, torn strands and pores."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import shapely

from scorecraft.arrays import Floats, Line
from scorecraft.drawing.bloom.bread import BLOTCH, CREASE, PORE, PORE_DEEP, STRAND
from scorecraft.drawing.bloom.eye import Eye
from scorecraft.drawing.bloom.lens import Lens
from scorecraft.drawing.picture import Ink, Item, Layer, Shape

WIDE_MM = 3.0
"""Openings wider than this show what is inside."""
PER_PATH = 120
BLOTCHES_PER_MM2 = 0.02
PORES_PER_MM2 = 0.03
STRANDS_PER_MM = 1.3
TERRACE_EVERY_MM = 2.6


@dataclass(frozen=True, slots=True, eq=False)
class Bed:
    """The floor of an opening: distances along it (mm), and where they lie."""

    lens: Lens
    gone: Floats
    area_mm2: float

    def half(self, along: Floats) -> Floats:
        """Half width at distances along, mm."""
        return np.interp(along, self.gone, self.lens.half)

    def at(self, along: Floats, part: Floats) -> Line:
        """Points at distances along and parts (-1 right edge, 1 left edge) of the half width."""
        middle, left = (
            np.column_stack([np.interp(along, self.gone, each[:, k]) for k in (0, 1)])
            for each in (self.lens.middle, self.lens.left)
        )
        return np.asarray(middle + left * (part * self.half(along))[:, None])


def texture(eye: Eye, opened: Sequence[Lens], rng: np.random.Generator) -> Layer:
    """Draw what the openings show, in the order in which it lies on top of each other."""
    beds = [_bed(lens) for lens in opened if lens.widest > WIDE_MM]
    blotches = [each for bed in beds for each in _blots(bed, rng, BLOTCHES_PER_MM2, 1.5)]
    terraces = [each for bed in beds for each in _terraces(bed, rng)]
    strands = [each for bed in beds for each in _strands(bed, rng)]
    pores = [each for bed in beds for each in _blots(bed, rng, PORES_PER_MM2, 0.3)]
    thin, pale = 0.24 * eye.scale, 0.3 * eye.scale
    items: list[Item] = [
        *_filled(eye, blotches, BLOTCH, 0.28, "blotch"),
        *_filled(eye, [_shrunk(each) for each in blotches], BLOTCH, 0.22, "blotch"),
        *_stroked(eye.lines(terraces), Ink(2.2 * thin, CREASE, opacity=0.22), "terrace"),
        *_stroked(eye.lines(strands[::2]), Ink(thin, CREASE, opacity=0.32), "crease"),
        *_stroked(eye.lines(strands[1::2]), Ink(pale, STRAND, opacity=0.38), "strand"),
        *_filled(eye, pores, PORE, 0.5, "pore"),
        *_filled(eye, [_shrunk(each) for each in pores], PORE_DEEP, 0.5, "pore"),
    ]
    return Layer("texture", tuple(items))


def _bed(lens: Lens) -> Bed:
    run = np.hypot(*np.diff(lens.middle, axis=0).T)
    area = float((run * (lens.half[1:] + lens.half[:-1])).sum())
    return Bed(lens, np.concatenate([[0.0], np.cumsum(run)]), area)


def _filled(eye: Eye, loops: list[Line], color: str, opacity: float, css: str) -> Iterator[Item]:
    for first in range(0, len(loops), PER_PATH):
        rings = eye.rings(shapely.buffer(shapely.polygons(loops[first : first + PER_PATH]), 0))
        if rings:
            yield Shape(tuple(rings), closed=True, fill=color, fill_opacity=opacity, css=css)


def _stroked(lines: list[Line], ink: Ink, css: str) -> Iterator[Item]:
    for first in range(0, len(lines), PER_PATH):
        yield Shape(tuple(lines[first : first + PER_PATH]), ink=ink, css=css)


def _strands(bed: Bed, rng: np.random.Generator) -> list[Line]:
    """Short curved lines across the opening, leaning a little, none of them from edge to edge."""
    made = []
    phase = rng.uniform(0, math.tau)
    for at in rng.uniform(0.03, 0.97, int(2 * bed.gone[-1] * STRANDS_PER_MM)) * bed.gone[-1]:
        half = float(bed.half(at))
        if half < 1.2:
            continue
        start = rng.uniform(-0.92, 0.5)
        across = np.linspace(start, min(start + rng.uniform(0.3, 1.2), 0.92), 4)
        lean = (0.22 * math.sin(at / 11 + phase) + rng.normal(0, 0.07)) * half
        bow = rng.normal(0, 0.08) * half
        along = at + lean * across + bow * np.sin(np.linspace(0, math.pi, 4))
        made.append(bed.at(along, across))
    return made


def _terraces(bed: Bed, rng: np.random.Generator) -> list[Line]:
    """Wavy lines along the opening, left where the skin paused while it tore."""
    made = []
    tries = 2 * int(bed.lens.widest / TERRACE_EVERY_MM)
    for part in rng.uniform(-0.85, 0.85, tries):
        start = rng.uniform(0.04, 0.75)
        end = min(start + rng.uniform(0.1, 0.45), 0.96)
        count = max(5, int((end - start) * bed.gone[-1] / 2.5))
        along = np.linspace(start, end, count) * bed.gone[-1]
        drift = np.cumsum(rng.normal(0, 0.045, len(along)))
        line = bed.at(along, np.clip(part + drift, -0.93, 0.93))
        if bed.half(along).min() > 1.0:
            made.append(line)
    return made


def _blots(bed: Bed, rng: np.random.Generator, per_mm2: float, size_mm: float) -> list[Line]:
    """Irregular spots, lying across the opening as the crumb is pulled."""
    angle = np.linspace(0, math.tau, 9)[:-1]
    made = []
    for at in rng.uniform(0.04, 0.96, int(bed.area_mm2 * per_mm2)) * bed.gone[-1]:
        half = float(bed.half(at))
        if half < 1.2:
            continue
        size = min(size_mm * rng.gamma(2.2, 0.4) + 0.1, 0.32 * half)
        wobble = size * (1 + rng.normal(0, 0.2, len(angle)))
        part = rng.uniform(-0.8, 0.8)
        across = part + rng.uniform(1.0, 2.0) * wobble * np.sin(angle) / half
        made.append(bed.at(at + wobble * np.cos(angle), np.clip(across, -0.93, 0.93)))
    return made


def _shrunk(ring: Line) -> Line:
    middle = ring.mean(axis=0)
    return np.asarray(middle + (ring - middle) * 0.6 + np.array([-0.05, 0.06]))
