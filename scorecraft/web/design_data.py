"""A design as the page needs it: the picture, the knobs, the loaf's form and the findings."""

from collections.abc import Mapping, Sequence

from scorecraft.check_data import cut_words, dough_data, finding_data, loaf_data, rounded
from scorecraft.checks.finding import Finding
from scorecraft.cuts import Knob
from scorecraft.designing import Design
from scorecraft.editing.head import is_plain, keys_as_written
from scorecraft.groups import Group
from scorecraft.json_data import JsonObject
from scorecraft.language.tree import Pattern
from scorecraft.language.words import WORDS
from scorecraft.limits import (
    LARGEST_LOAF_MM,
    LEAST_HEIGHT_MM,
    MOST_LOAVES,
    SMALLEST_LOAF_MM,
    WIDEST_MEASURED_MM,
)
from scorecraft.loaf.bake import Bake
from scorecraft.report import verdict
from scorecraft.web import telling
from scorecraft.web.baskets import baskets_data
from scorecraft.web.loaf_forms import loaf_forms
from scorecraft.web.stage import cuts_of, drawn, frame, pointers


def design_data(design: Design) -> JsonObject:
    """Tell a design as data for the page, without the opening model: it has to be quick."""
    layout = design.layout
    return {
        "ok": True,
        "title": layout.title,
        "notes": list(layout.notes),
        "loaf": loaf_data(layout.loaf),
        "kinds": loaf_forms(),
        "forms": {word: form(design.tree, word) for word in ("loaf", "dough", "bake", "bench")},
        "dough": dough_data(layout.dough),
        "bake": bake_data(layout.bake),
        "baskets": baskets_data(design),
        "choices": telling.CHOICES,
        "limits": limits(),
        "knobs": [knob_data(knob, design) for knob in layout.knobs],
        "findings": findings_data(design, design.drawn_findings),
        "verdict": verdict(design.drawn_findings),
        "groups": [group_data(group, design.fingerprints) for group in design.groups],
        "cuts": cuts_data(design),
        "frame": frame_data(design),
        "svg": drawn(design),
        "pointers": pointers(design, design.drawn_findings),
    }


def sight_data(design: Design) -> JsonObject:
    """Tell the picture of a design and its frame, without what the checks find."""
    return {"ok": True, "frame": frame_data(design), "svg": drawn(design)}


def frame_data(design: Design) -> JsonObject:
    """Tell where the crown lies on the picture and how large that is (mm)."""
    centre, size = frame(design.layout)
    return {"crown": [rounded(each) for each in centre], "size": [rounded(s) for s in size]}


def cuts_data(design: Design) -> list[JsonObject]:
    """Tell every cut in words and figures; its line is in the picture."""
    cuts = design.cuts
    numbers = {cut: group.number for group in design.groups for cut in group.cuts}
    lengths = design.layout.lengths_mm
    return [
        cut_words(cut, length)
        | {
            "line": cut.place.line,
            "group": numbers[index],
            "said": telling.cut_words(numbers[index], cut.name, length, cut.depth_mm),
        }
        for index, (cut, length) in enumerate(zip(cuts, lengths, strict=True))
    ]


def findings_data(design: Design, findings: Sequence[Finding]) -> list[JsonObject]:
    """Tell findings, each with the cuts it is about."""
    told = [finding_data(finding) for finding in findings]
    for each, finding in zip(told, findings, strict=True):
        each["hint"] = each.pop("fix")  # as in all that the page is told
        each["cuts"] = cuts_of(design.layout, finding)
    return told


def form(tree: Pattern, word: str) -> JsonObject | None:
    """Tell a header statement as its keys with their values as written, for a form."""
    statement = next((each for each in tree.statements if each.word == word), None)
    return {"keys": keys_as_written(statement)} if statement else None


def knob_data(knob: Knob, design: Design) -> JsonObject:
    """Tell a knob, and whether it turns: its value may be worked out from others."""
    return {
        "name": knob.name,
        "value": rounded(knob.value),
        "unit": knob.unit,
        "low": rounded(knob.low),
        "high": rounded(knob.high),
        "step": rounded(knob.step),
        "line": knob.place.line,
        "turns": turns(knob, design),
    }


def turns(knob: Knob, design: Design) -> bool:
    """Tell whether the value of a knob is written in the text as a plain number."""
    statement = next((each for each in design.tree.statements if each.place == knob.place), None)
    value = statement.get("value") if statement else None
    return value is not None and is_plain(value)


def bake_data(bake: Bake) -> JsonObject:
    """Tell how the loaf grows, whether the text says so or its dough."""
    return {
        "spring": rounded(bake.spring),
        "spread": rounded(bake.spread),
        "steam": bake.steam,
    }


def limits() -> dict[str, dict[str, list[float]]]:
    """Tell what the fields of the forms take, least and most: sizes in mm, shares in percent."""
    size = [SMALLEST_LOAF_MM, LARGEST_LOAF_MM]
    keys = {key.name: key for word in ("bake", "dough") for key in WORDS[word].keys}
    spring, spread, water = keys["spring"], keys["spread"], keys["hydration"]
    return {
        "loaf": {
            "width": size,
            "length": size,
            "height": [LEAST_HEIGHT_MM, size[1]],
            "hole": [10.0, size[1]],
        },
        "bake": {
            "spring": [spring.least or 0.0, spring.most or 0.0],
            "spread": [100 * (spread.least or 0.0), 100 * (spread.most or 0.0)],
        },
        "dough": {
            "hydration": [100 * (water.least or 0.0), 100 * (water.most or 0.0)],
            **{
                name: [keys[name].least or 0.0, keys[name].most or 0.0]
                for name in ("temperature", "kitchen")
            },
        },
        "bench": {"loaves": [1.0, float(MOST_LOAVES)]},
        "measured": {"width": [0.0, WIDEST_MEASURED_MM]},
    }


def group_data(group: Group, said: Mapping[str, str]) -> JsonObject:
    """Tell a group of like cuts, and in a mark what its statement says."""
    return {
        "number": group.number,
        "key": group.key,
        "mark": said[group.key],
        "name": group.name,
        "count": group.count,
        "kind": group.kind,
        "length_mm": rounded(group.length_mm),
    }
