"""baker.toml: what the bakes of one baker, flour and oven have taught the model."""

import json
import math
import tomllib
from collections.abc import Mapping
from pathlib import Path
from statistics import NormalDist

from scorecraft.frozen import dataclass
from scorecraft.practice import INSIDE_PER_SKIN, SKIN_MM, SKIN_OFF
from scorecraft.reading import read_text
from scorecraft.tune import slips
from scorecraft.tune.fit import SETTLED_FROM_ROWS, Fit

MOST_BAKER_BYTES = 100_000
"""The largest baker file that is read."""
BELIEVED_MM = (0.5, 40.0)
"""No skin in a baker file is thinner or thicker."""
GROWTH_LIMITS = (0.05, 20.0)
UNSETTLED = (
    "The openings are too few, or differ too much, to be sure of the skin: the default is used."
)
TO_SETTLE = (
    f"measure {SETTLED_FROM_ROWS:.0f} openings or more, some of light cuts and some of deep ones"
)


@dataclass(frozen=True, slots=True)
class Baker:
    """Skin (mm), inside (over the skin) and growth (over the assumed one), with bounds; their bake.

    Where the openings did not settle them they are the usual ones; the bounds are as found. So is
    the inside of a file from before there was one.
    """

    skin_mm: float
    skin_bounds_mm: tuple[float, float]
    growth: float = 1.0
    growth_bounds: tuple[float, float] | None = None
    sure: float = 0.9
    settled: bool = True
    openings: int = 0
    pattern: str = ""
    date: str = ""
    inside: float = INSIDE_PER_SKIN.value
    inside_bounds: tuple[float, float] | None = None

    @property
    def skin_unsure(self) -> float:
        """By what share the skin may be off, two times in three, where it is settled."""
        return _unsure(self.skin_bounds_mm, self.sure) or SKIN_OFF.value

    @property
    def growth_unsure(self) -> float:
        """By what share the growth may be off, likewise; 0 where nothing is known of it."""
        return _unsure(self.growth_bounds, self.sure)


def _unsure(bounds: tuple[float, float] | None, sure: float) -> float:
    """Turn bounds that hold the truth at a rate into a standard deviation of the logarithm."""
    if bounds is None or not 0 < bounds[0] < bounds[1] or not 0 < sure < 1:
        return 0.0
    return math.log(bounds[1] / bounds[0]) / (2 * NormalDist().inv_cdf((1 + sure) / 2))


def baker_of(found: Fit, *, pattern: str, date: str) -> Baker:
    """Keep what a fit has found, or what is usual where the openings do not settle it."""
    return Baker(
        skin_mm=found.skin_mm.best if found.settled else SKIN_MM.value,
        skin_bounds_mm=(found.skin_mm.low, found.skin_mm.high),
        inside=found.inside.best if found.settled else INSIDE_PER_SKIN.value,
        inside_bounds=(found.inside.low, found.inside.high),
        growth=found.growth.best if found.settled else 1.0,
        growth_bounds=(found.growth.low, found.growth.high),
        sure=found.sure,
        settled=found.settled,
        openings=len(found.residual_mm),
        pattern=pattern,
        date=date,
    )


def baker_text(baker: Baker) -> str:
    """Write a baker as TOML."""
    low, high = baker.skin_bounds_mm
    lines = [
        "# What scorecraft has learned from my bakes. Use it with: --baker FILE",
        *([] if baker.settled else [f"# {UNSETTLED}", f"# To be sure, {TO_SETTLE}."]),
        f"settled = {str(baker.settled).lower()}",
        f"skin_mm = {baker.skin_mm:.3f}",
        f"skin_bounds_mm = [{low:.3f}, {high:.3f}]",
        f"inside = {baker.inside:.4f}  # how stiff the dough under the skin is, over the skin",
        *([_pair_line("inside_bounds", baker.inside_bounds)] if baker.inside_bounds else []),
        f"growth = {baker.growth:.4f}  # times the growth that the pattern assumes",
    ]
    if baker.growth_bounds:
        lines.append(_pair_line("growth_bounds", baker.growth_bounds))
    lines += [
        f"sure = {baker.sure:.3f}  # how likely the true values lie within the bounds",
        f"openings = {baker.openings}",
        f"pattern = {quoted(baker.pattern)}",
        f"date = {quoted(baker.date)}",
    ]
    return "\n".join(lines) + "\n"


def _pair_line(key: str, pair: tuple[float, float]) -> str:
    return f"{key} = [{pair[0]:.4f}, {pair[1]:.4f}]"


def quoted(text: str) -> str:
    """Write a TOML basic string (TOML 1.0.0): as in JSON, but that DEL is escaped, too."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007F")


def read_baker(path: str | Path) -> Baker:
    """Read a baker.toml; raises UsageError where it is none or holds numbers that cannot be.

    A file from before `settled` was written says so by few openings, or bounds at the limits.
    """
    text = read_text(path, MOST_BAKER_BYTES, slips.BAKER, slips.WRITES_BAKER)
    try:
        values = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise slips.no_baker(path, error).usage() from error
    except (ValueError, RecursionError) as error:  # endless digits or brackets
        raise slips.no_baker(path).usage() from error
    least, most = BELIEVED_MM
    skin = _number(path, values, "skin_mm", least, most)
    growth = _number(path, {"growth": 1.0, **values}, "growth", *GROWTH_LIMITS)
    inside = _number(path, {"inside": INSIDE_PER_SKIN.value, **values}, "inside", 0.0, 1.0)
    low, high = _pair(path, values, "skin_bounds_mm") or (skin, skin)
    openings = int(_number(path, {"openings": 0, **values}, "openings", 0, 1e9))
    few = 0 < openings < SETTLED_FROM_ROWS
    settled = values.get("settled", not few and (low == high or least < low < high < most))
    return Baker(
        skin_mm=skin if settled else SKIN_MM.value,
        skin_bounds_mm=(low, high),
        inside=inside if settled else INSIDE_PER_SKIN.value,
        inside_bounds=_pair(path, values, "inside_bounds"),
        growth=growth if settled else 1.0,
        growth_bounds=_pair(path, values, "growth_bounds"),
        sure=_number(path, {"sure": 0.9, **values}, "sure", 0.0, 1.0),
        settled=bool(settled),
        openings=openings,
        pattern=str(values.get("pattern", "")),
        date=str(values.get("date", "")),
    )


def _number(
    path: str | Path, values: Mapping[str, object], key: str, least: float, most: float
) -> float:
    value = _float(values.get(key))
    if value is None:
        raise slips.LACKS_NUMBER(path=path, key=key).usage()
    if not least <= value <= most:
        raise slips.OUT_OF_RANGE(path=path, key=key, value=value, least=least, most=most).usage()
    return value


def _pair(path: str | Path, values: Mapping[str, object], key: str) -> tuple[float, float] | None:
    found = values.get(key)
    if found is None:
        return None
    pair = [_float(each) for each in found] if isinstance(found, list) else []
    low, high = pair if len(pair) == 2 else (None, None)
    if low is None or high is None or not -math.inf < low <= high < math.inf:
        raise slips.NO_PAIR(path=path, key=key).usage()
    return low, high


def _float(value: object) -> float | None:
    """Take a number as such, however long; None for what is none."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        return None
    try:
        return float(value)
    except OverflowError:
        return math.inf if value > 0 else -math.inf
