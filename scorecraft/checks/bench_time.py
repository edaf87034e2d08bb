"""Whether the cutting is done before the dough spreads."""

from dataclasses import replace

from scorecraft.bench.clock import allowed_seconds, told
from scorecraft.bench.pace import between, time_words
from scorecraft.bench.steps import Work
from scorecraft.checks import telling_loaf as say
from scorecraft.checks.finding import Finding
from scorecraft.cuts import Layout
from scorecraft.practice import CHILLED_C


def bench_time(layout: Layout, work: Work) -> list[Finding]:
    """Find that the cutting takes longer than the dough allows (common practice, no source)."""
    needed, allowed = work.effort.seconds, work.allowed_s
    if needed <= allowed:
        return []
    bench, dough = work.bench, layout.dough
    message = say.too_slow(dough, time_words(needed, bench.skill), told(allowed))
    slowest = max(work.runs, key=lambda run: run.seconds)
    cut = layout.cuts[slowest.first.pulls[0].cut]
    chilled = allowed_seconds(replace(dough, temperature_c=CHILLED_C.value))
    count = sum(len(step.pulls) for step in slowest.steps)
    hint = say.fewer_cuts(cut, count, time_words(slowest.seconds, bench.skill))
    if chilled >= needed:
        hint = f"{say.CHILL(chilled=CHILLED_C.value, time=told(chilled))}; or {hint}"
    least, most = between(needed, bench.skill)
    figures = {"seconds": needed, "seconds_least": least, "seconds_most": most}
    figures |= {"allowed_s": allowed, "slowest_s": slowest.seconds}
    return [Finding("bench_time", "warning", message, hint, cut.place, figures)]
