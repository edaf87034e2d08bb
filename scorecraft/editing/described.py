"""Statements and copies in a baker's words: name, size, place, and what they stand in."""

import numpy as np

from scorecraft.editing import telling as say
from scorecraft.editing.copying import COUNTED
from scorecraft.editing.scene import Scene
from scorecraft.editing.slots import slot
from scorecraft.expand.traced import Step
from scorecraft.language.tree import Statement, Text
from scorecraft.language.words import WORDS
from scorecraft.loaf.places import where
from scorecraft.units import mm_words


def name_of(statement: Statement) -> str:
    """Name a statement: as it is called, or by its word."""
    called = statement.get("called")
    if called is not None and isinstance(called.value, Text):
        return called.value.value
    return statement.word.replace("_", " ")


def trail_name(step: Step) -> str:
    """Name a step of a trail: `around 8`, `at`, `leaf`."""
    word = step.statement.word
    counted = word in (*COUNTED, "grid", "along")
    return f"{word} {step.blocks}" if counted else name_of(step.statement)


def size_of(scene: Scene, step: Step) -> str:
    """Say how large a figure is, by its lengths: `60 mm by 26 mm`."""
    word = WORDS.get(step.statement.word)
    if word is None or word.group != "motif":
        return ""
    found = [slot(scene, step, key.name) for key in word.handles if key.kind == "length"]
    sizes = [mm_words(each.value) for each in found if each and each.value > 0]
    return " by ".join(sizes[:2])


def place_of(scene: Scene, step: Step) -> str:
    """Say where a run's cuts lie: `at 2 o'clock, 40 mm from the crown`."""
    if not scene.cuts[step]:
        return say.OFF
    middle = scene.middle(step)
    out = float(np.hypot(*scene.plan(middle)))
    lies = where(scene.loaf, middle)
    return lies if lies == say.NEAR_CROWN else say.FROM_CROWN.format(lies=lies, far=mm_words(out))


def said_of(scene: Scene, step: Step) -> str:
    """Say name, size, place and copies of a run, for a screen reader."""
    copies = len(scene.runs[step.statement.place.line])
    parts = (
        trail_name(step),
        size_of(scene, step),
        place_of(scene, step),
        say.COPIES.format(count=copies) if copies > 1 else "",
    )
    return ", ".join(part for part in parts if part)
