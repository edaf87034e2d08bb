"""Whether the cutting is done before the dough spreads."""

from dataclasses import replace

from scorecraft.bench.clock import allowed_seconds, told
from scorecraft.bench.steps import Plan
from scorecraft.checks.finding import Finding
from scorecraft.cuts import Layout
from scorecraft.practice import CHILLED_C


def bench_time(layout: Layout, work: Plan) -> list[Finding]:
    """Find that the cutting takes longer than the dough allows (common practice, no source)."""
    needed, allowed = work.work.seconds, work.allowed_s
    if needed <= allowed:
        return []
    bench = work.bench
    message = (
        f"cutting takes about {told(needed)}; dough of {bench.temperature_c:.0f} °C with "
        f"{bench.hydration:.0%} water holds about {told(allowed)} before it spreads"
    )
    slowest = max(work.runs, key=lambda run: run.seconds)
    cut = layout.cuts[slowest.first.pulls[0].cut]
    chilled = allowed_seconds(replace(bench, temperature_c=CHILLED_C.value))
    hint = f"fewer cuts: {cut.name} alone takes {told(slowest.seconds)}"
    if chilled >= needed:
        hint = (
            f"chill the loaf: at {CHILLED_C.value:.0f} °C it holds about {told(chilled)} "
            f"(write bench temperature {CHILLED_C.value:.0f}C); or {hint}"
        )
    figures = {"seconds": needed, "allowed_s": allowed, "slowest_s": slowest.seconds}
    return [Finding("bench_time", "warning", message, hint, cut.place, figures)]
