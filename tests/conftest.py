"""What all tests share: a flag, printing with and without Cairo, one thread, what was skipped.

Threads of OpenBLAS wait for one another by spinning: on a machine that also does something else
that makes small systems many times slower, and timings useless.
"""

import os

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # before anything imports numpy

import sys
from collections import Counter
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

from scorecraft.drawing.pdf import cairo

settings.register_profile(
    "any machine", deadline=None, suppress_health_check=[HealthCheck.too_slow]
)  # a test may take its time, and the making of its examples too
settings.load_profile("any machine")

LONGEST = (
    "tests/web", "tests/benchmarks", "tests/test_gallery", "tests/published",
    "tests/test_readme", "tests/test_designing", "tests/test_first_hour",
)  # fmt: skip
"""What takes longest goes first, in this order, so that all workers end together (`-n 3`)."""


def pytest_addoption(parser):
    parser.addoption("--remake", action="store_true", help="write the gallery anew")


def pytest_configure(config):
    """Let each worker read the tests from another place on: one of them compiles each file."""
    if hasattr(config, "workerinput") and config.args == ["tests"]:
        own, count = (config.workerinput[each] for each in ("workerid", "workercount"))
        parts = sorted(str(each) for each in Path("tests").iterdir() if each.stem != "conftest")
        turn = int(own.removeprefix("gw")) * len(parts) // count
        config.args[:] = parts[turn:] + parts[:turn]


def pytest_collection_modifyitems(items):
    """Begin with what takes longest; each file stays on one worker (`--dist=loadfile`)."""
    items.sort(key=lambda item: ([not item.nodeid.startswith(each) for each in LONGEST], item.path))


def pytest_terminal_summary(terminalreporter):
    """Count in the last lines what was skipped, and why."""
    reasons = Counter(
        report.longrepr[2].removeprefix("Skipped: ")
        for report in terminalreporter.stats.get("skipped", [])
    )
    for reason, count in reasons.most_common():
        terminalreporter.write_line(f"skipped {count}: {reason}")


@pytest.fixture
def remake(request):
    """Whether the gallery is to be written anew."""
    return request.config.getoption("--remake")


@pytest.fixture
def with_cairo():
    """Skip where Cairo cannot be loaded."""
    if not cairo():
        pytest.skip("the Cairo graphics library is not installed")


@pytest.fixture
def without_cairo(monkeypatch):
    """Let the import of cairosvg fail, as it does where libcairo is not installed."""
    monkeypatch.setitem(sys.modules, "cairosvg", None)
    monkeypatch.setitem(sys.modules, "cairocffi", None)
    cairo.cache_clear()
    yield
    cairo.cache_clear()


@pytest.fixture(params=["with_cairo", "without_cairo"])
def both_ways(request):
    """Run a test twice: as Cairo draws, and as it is drawn without it."""
    request.getfixturevalue(request.param)
