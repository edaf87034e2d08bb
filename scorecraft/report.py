"""What `check` says of a design: a short report for people, and one for programs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import degrees
from typing import TYPE_CHECKING, Any

from scorecraft.checks.finding import Finding
from scorecraft.cuts import Cut, Layout
from scorecraft.designing import Design
from scorecraft.errors import Place
from scorecraft.groups import Group, groups
from scorecraft.units import turntable_degrees

if TYPE_CHECKING:
    from scorecraft.opening.room import Room

SIGNS = {"stop": "STOP", "warn": "warn", "note": "note"}
VERDICTS = {
    "stop": "This cannot be cut as it is.",
    "warn": "This can be cut, but look at the warnings.",
    "note": "This can be cut.",
}


def verdict(findings: Sequence[Finding]) -> str:
    """Say in one sentence what the findings, the weightiest first, come to."""
    return VERDICTS[findings[0].severity if findings else "note"]


def report(
    design: Design, *, quiet: bool = False, verbose: bool = False, quick: bool = False
) -> str:
    """Write the report: the verdict, the findings by weight, the table of cuts.

    `verbose` adds how the size of the loaf was found from its dough; `quick` leaves the opening
    model and the bench out.
    """
    layout = design.layout
    findings = design.checked if quick else design.findings
    lines = [f"{layout.title or design.source.name}: {loaf_words(layout)}", verdict(findings)]
    if not quick and design.room_words:
        lines.append(design.room_words)
    lines += [""] if findings else []
    for finding in findings:
        lines += list(finding_lines(finding))
    if verbose:
        lines += ["", *sizing_lines(layout), *bench_lines(design)]
    if not quiet:
        lines += ["", *table(design, quick), *([] if quick else ["", LIMITS])]
    return "\n".join(lines).rstrip() + "\n"


LIMITS = (
    "Openings come from a model of a thin, elastic skin on a soft inside. Dough is not so, and no\n"
    "measurement links depth to opening: compare designs by them, and `scorecraft tune` them."
)


def loaf_words(layout: Layout) -> str:
    """Say what loaf it is."""
    loaf = layout.loaf
    sizes = [loaf.width_mm] if loaf.shape == "round" else [loaf.width_mm, loaf.length_mm]
    across = " × ".join(f"{size:.0f}" for size in sizes)
    return f"{loaf.shape} loaf {across} mm, {loaf.height_mm:.0f} mm high"


def sizing_lines(layout: Layout) -> Iterator[str]:
    """Write how the size of the loaf was found, step by step."""
    steps = layout.size.steps
    yield "Size of the loaf:" if steps else "Size of the loaf: as given."
    yield from (f"  {step}" for step in steps)


def bench_lines(design: Design) -> Iterator[str]:
    """Write how long the cutting takes, and what its order saves against the file's."""
    from scorecraft.bench.clock import told

    plan = design.work
    planned, filed = plan.work, plan.in_file_order
    yield "At the bench:"
    yield f"  cutting takes about {told(planned.seconds)}; the dough holds {told(plan.allowed_s)}"
    turned, longer = degrees(filed.turned_rad), plan.saved_s
    yield f"  the turntable turns {degrees(planned.turned_rad):.0f}° in all"
    yield f"  (in the order of the file {turned:.0f}° and {longer:.0f} s more)"
    if plan.proven:
        yield "  no order is quicker"
    else:
        yield f"  no order is more than {plan.gap_s:.0f} s quicker"


def finding_lines(finding: Finding) -> Iterator[str]:
    """Write one finding: its weight, what it is, where it is written, what to do."""
    where = f"  (line {finding.place.line})" if finding.place else ""
    yield f"{SIGNS[finding.severity]}  {finding.message}{where}"
    if finding.hint:
        yield f"      {finding.hint}"


def table(design: Design, quick: bool) -> Iterator[str]:
    """Write the table of cuts, with the predicted openings unless `quick`.

    The numbers follow the order of cutting, so the quick one, without the bench, has none.
    """
    foreseen = None if quick else design.foreseen
    opens = f"{'opens':>9}" if foreseen else ""
    yield f"{'':>3}  {'cut':<22}{'count':>6}{'length':>9}{'depth':>9}{'blade':>7}{opens}"
    widest = foreseen.widest_mm if foreseen else None
    for group in groups(design.layout) if quick else design.groups:
        number = "" if quick else str(group.number)
        wide = "" if widest is None else f"{max(widest[i] for i in group.cuts):>6.0f} mm"
        yield (
            f"{number:>3}  {group.key:<22}{group.count:>6}{group.length_mm:>6.0f} mm"
            f"{group.depth_mm:>6.1f} mm{degrees(group.blade_rad):>6.0f}°{wide}"
        )


def as_data(design: Design) -> dict[str, Any]:
    """Tell everything of a design as plain data: the stable form of `check --json`."""
    layout = design.layout
    loaf, foreseen = layout.loaf, design.foreseen
    lengths = layout.lengths_mm
    told = {cut: group_data(group) for group in design.groups for cut in group.cuts}
    return {
        "title": layout.title,
        "loaf": {
            "shape": loaf.shape,
            "width_mm": rounded(loaf.width_mm),
            "length_mm": rounded(loaf.length_mm),
            "height_mm": rounded(loaf.height_mm),
        },
        "cuts": [
            told[index] | cut_data(cut, layout, length)
            for index, (cut, length) in enumerate(zip(layout.cuts, lengths, strict=True))
        ],
        "findings": [finding_data(finding) for finding in design.findings],
        "opening": [
            {"cut": index, **told[index], "widest_mm": rounded(width)}
            for index, width in enumerate(foreseen.widest_mm if foreseen else ())
        ],
        "room": room_data(design.room) if foreseen else None,
    }


def room_data(found: Room) -> dict[str, Any]:
    """Tell the room as plain data: shares of the growth, and a turntable direction in degrees."""
    return {
        "least": rounded(found.least),
        "least_direction_deg": rounded(turntable_degrees(found.least_direction_rad) % 180),
        "most": rounded(found.most),
        "taken": rounded(found.taken),
        "verdict": found.verdict,
    }


def group_data(group: Group) -> dict[str, Any]:
    """Tell which cuts of the pattern these are: the number on the prints, and the lasting key."""
    return {"number": group.number, "key": group.key}


def cut_data(cut: Cut, layout: Layout, length_mm: float) -> dict[str, Any]:
    """Tell one cut as plain data; points are [x, y] mm."""
    plan = layout.loaf.sheet_to_plan(cut.line)
    return {
        "name": cut.name,
        "kind": cut.kind,
        "depth_mm": rounded(cut.depth_mm),
        "blade_deg": rounded(degrees(cut.blade_rad)),
        "length_mm": rounded(length_mm),
        "sheet": [[rounded(x), rounded(y)] for x, y in cut.line],
        "plan": [[rounded(x), rounded(y)] for x, y in plan],
        "line": cut.place.line,
    }


def finding_data(finding: Finding) -> dict[str, Any]:
    """Tell one finding as plain data."""
    place = finding.place or Place("", 0, 0)
    return {
        "check": finding.check,
        "severity": finding.severity,
        "message": finding.message,
        "hint": finding.hint,
        "figures": {name: rounded(value) for name, value in finding.figures.items()},
        "cuts": list(finding.cuts),
        "line": place.line or None,
        "column": place.column or None,
    }


def rounded(value: float) -> float:
    """Round to a thousandth, without a minus zero."""
    return round(float(value), 3) + 0.0
