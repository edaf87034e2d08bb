"""`check` of the leaf crown against the bare import of the libraries it stands on."""

import subprocess
import sys
import time

COMMANDS = {
    "imports": ["-c", "import numpy, shapely, click"],
    "quick": ["-m", "scorecraft", "check", "leaf-crown", "--quick"],
    "whole": ["-m", "scorecraft", "check", "leaf-crown"],
}
ROUNDS = 9


def seconds(arguments: list[str]) -> float:
    """Give the wall time of one run."""
    start = time.perf_counter()
    subprocess.run([sys.executable, *arguments], check=True, capture_output=True)
    return time.perf_counter() - start


def best(*names: str) -> list[float]:
    """Give the shortest time of each command over rounds that take turns."""
    rounds = [[seconds(COMMANDS[name]) for name in names] for _ in range(ROUNDS)]
    return [min(times) for times in zip(*rounds, strict=True)]


def test_a_quick_check_costs_little_more_than_its_imports():
    base, quick = best("imports", "quick")
    assert quick <= 2.5 * base, f"{quick:.3f} s against {base:.3f} s"


def test_the_opening_model_and_the_bench_cost_a_few_start_ups_more():
    """Measured on two quiet cores: imports 0.08 s, quick 0.19 s, the whole check 0.37 s."""
    base, whole = best("imports", "whole")
    assert whole <= 6.5 * base, f"{whole:.3f} s against {base:.3f} s"
