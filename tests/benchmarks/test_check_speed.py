"""`check` of the leaf crown and the page against the bare import of the libraries they stand on.

It runs from another folder, so that the installed package is measured, compiled as pip left it.
"""

import subprocess
import sys
import tempfile

import pytest
from support.timing import by_turns, settled

resource = pytest.importorskip("resource", reason="no processor time of commands on this system")

IMPORTS = ["-c", "import numpy, shapely, click"]
CHECK = ["-m", "scorecraft", "check", "leaf-crown"]
PAGE = ["-u", "-m", "scorecraft", "page", "--no-browser", "--port", "0"]


def children():
    """Give the processor time of all commands that have ended, in seconds."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def cost(arguments):
    """Give the processor time of a command; the page is stopped as soon as it serves."""
    before = children()
    command = [sys.executable, *arguments]
    with subprocess.Popen(command, stdout=subprocess.PIPE, cwd=tempfile.gettempdir()) as process:
        if arguments is PAGE:
            assert b"http://127.0.0.1" in process.stdout.readline()
            process.kill()
        process.communicate()
    assert arguments is PAGE or process.returncode == 0
    return children() - before


def test_commands_cost_a_few_imports():
    """Measured: quick 2.3, whole 5.0, of which 1 is our own modules and 2.3 the opening model."""
    commands = (IMPORTS, [*CHECK, "--quick"], CHECK, PAGE)

    def holds(imports, quick, whole, page):
        return quick <= 3.2 * imports and whole <= 6.3 * imports and page <= 6.0 * imports

    assert holds(*settled(lambda: by_turns(*commands, cost=cost), holds))
