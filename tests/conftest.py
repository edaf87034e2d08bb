"""What all tests share: the flag that remakes the gallery."""

import pytest


def pytest_addoption(parser):
    parser.addoption("--remake", action="store_true", help="write the gallery anew")


@pytest.fixture
def remake(request):
    """Whether the gallery is to be written anew."""
    return request.config.getoption("--remake")
