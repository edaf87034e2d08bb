"""What all tests share: the flag that remakes the gallery, and one thread for linear algebra.

Threads of OpenBLAS wait for one another by spinning: on a machine that also does something else
that makes small systems many times slower, and timings useless.
"""

import os

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # before anything imports numpy

import pytest


def pytest_addoption(parser):
    parser.addoption("--remake", action="store_true", help="write the gallery anew")


@pytest.fixture
def remake(request):
    """Whether the gallery is to be written anew."""
    return request.config.getoption("--remake")
