"""What `check` says of a design, in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import degrees, pi

from scorecraft.arrays import Floats
from scorecraft.checks.finding import Finding
from scorecraft.cuts import Cut, Layout
from scorecraft.designing import Design
from scorecraft.drawing.paper.telling import blade_words, parted_words
from scorecraft.groups import Group, groups
from scorecraft.loaf.telling import PROOFS, size_words
from scorecraft.units import degree_words, mm_range

INDENT = 9
"""Columns before a finding: the longest severity and two spaces."""
VERDICTS = {
    "stop": "This cannot be cut as it is.",
    "warning": "This can be cut, but read the warnings first.",
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
    if not quick:
        lines += batch_lines(design)
    lines += [""] if findings else []
    for finding in findings:
        lines += list(finding_lines(finding))
    if verbose:
        lines += ["", *sizing_lines(layout), *dough_lines(layout), *bench_lines(design)]
    if not quiet:
        lines += ["", *table(design, quick), *([] if quick else ["", LIMITS])]
    return "\n".join(lines).rstrip() + "\n"


LIMITS = (
    "Room and openings are estimates of one model: a thin, elastic skin on a soft inside. Dough\n"
    "is not so simple, and we know of no published measurement that links depth to opening. The\n"
    "ranges allow for what the model leaves out, a skin nobody has measured, and a hand that is\n"
    "not exact: about two loaves in three lie within. `scorecraft tune` fits them to your bakes."
)


def loaf_words(layout: Layout) -> str:
    """Say what loaf it is."""
    return f"{layout.loaf.called}, {size_words(layout.loaf)}"


def sizing_lines(layout: Layout) -> Iterator[str]:
    """Write how the size of the loaf was found, step by step."""
    steps = layout.size.steps
    yield "Size of the loaf:" if steps else "Size of the loaf: as given."
    yield from (f"  {step}" for step in steps)
    side, end = (float(layout.loaf.reach(turn)) for turn in (0.0, pi / 2))
    far = f"{end:.0f} mm"
    if abs(side - end) >= 0.5:
        far += f" to 12 o'clock, {side:.0f} mm to 3 o'clock"
    yield f"  reach, over the dough from crown to rim: {far}"


def dough_lines(layout: Layout) -> Iterator[str]:
    """Write how far proofed the dough is, and how much it springs."""
    dough, bake = layout.dough, layout.bake
    steam = "with" if bake.steam else "without"
    yield f"Dough: {PROOFS[dough.stage]}, {dough.culture}, {dough.times:.1f} times its mixed volume"
    yield f"  {steam} steam it bakes to {bake.spring:.2f} times its proofed volume"


def batch_lines(design: Design) -> list[str]:
    """Write what many equal loaves in a row take, board by board; nothing for a single one."""
    from scorecraft.bench.batch import batch_of

    batch = batch_of(design.work)
    if batch is None:
        return []
    from scorecraft.bench.telling import batch_words

    return list(batch_words(batch))


def bench_lines(design: Design) -> Iterator[str]:
    """Write how long the cutting takes, and what its order saves against the file's."""
    from scorecraft.bench.clock import told
    from scorecraft.bench.pace import time_words

    work = design.work
    planned, filed = work.effort, work.in_file_order
    yield "At the bench:"
    skill = work.bench.skill
    took, holds = time_words(planned.seconds, skill), told(work.allowed_s)
    yield f"  scoring takes a {skill} hand {took}; aim to finish within {holds}"
    turned = degree_words(filed.turned_rad)
    yield f"  the turntable turns {degree_words(planned.turned_rad)} in all"
    yield f"  (in the order of the pattern: {turned}, and {work.saved_s:.0f} s longer)"
    if work.route.proven:
        yield "  no order is quicker"
    else:
        yield f"  no order can be more than {work.gap_s:.0f} s quicker"


def finding_lines(finding: Finding) -> Iterator[str]:
    """Write one finding: its severity, what it is, where it is written, what to do."""
    where = f"  (line {finding.place.line})" if finding.place else ""
    yield f"{finding.severity:<{INDENT}}{finding.message}{where}"
    if finding.hint:
        yield f"{'':<{INDENT}}{finding.hint}"


def table(design: Design, quick: bool) -> Iterator[str]:
    """Write the table of cuts, with the predicted openings unless `quick`.

    The numbers follow the order of cutting, so the quick one, without the bench, has none.
    """
    widest = None if quick else design.ranges.widest_mm
    opens = "" if widest is None else f"{'opens':>11}"
    told = groups(design.layout) if quick else design.groups
    depths = [_depth(design.layout.cuts[group.cuts[0]], group) for group in told]
    deep = max([9, *(len(each) + 2 for each in depths)])
    yield f"{'':>3}  {'cut':<22}{'count':>6}{'length':>9}{'depth':>{deep}}{'blade':>9}{opens}"
    for group, depth in zip(told, depths, strict=True):
        number = "" if quick else str(group.number)
        pulled = max(design.layout.cuts[index].pulled_mm for index in group.cuts)
        wide = "" if widest is None else f"{_widest(widest, group, pulled):>8} mm"
        yield (
            f"{number:>3}  {group.key:<22}{group.count:>6}{group.length_mm:>6.0f} mm"
            f"{depth:>{deep}}{blade_words(degrees(group.blade_rad)):>9}{wide}"
        )


def _depth(cut: Cut, group: Group) -> str:
    """Write how deep the cuts of a group go; what parts the dough says what it leaves."""
    return parted_words(cut, " mm") or f"{group.depth_mm:.1f} mm"


def _widest(ranges_mm: Floats, group: Group, pulled_mm: float) -> str:
    """Write the range of the cut of a group that opens the widest, or how wide hands pull it."""
    if pulled_mm:
        return mm_range(pulled_mm, pulled_mm)
    least, most = max((ranges_mm[index] for index in group.cuts), key=lambda each: float(each[1]))
    return mm_range(float(least), float(most))
