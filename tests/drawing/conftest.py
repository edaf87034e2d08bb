import pytest
from support.drawing_layouts import cut, make_layout, petals, turned

from scorecraft.loaf.dome import make_loaf


@pytest.fixture(scope="session")
def petal_layout():
    """A 220 mm round loaf with 8 petals, hatching in the middle and string lines."""
    hatch = [cut([[x, -8], [x + 4, 8]], "hatch", figure=99, family=1, depth=2) for x in (-9, -3, 3)]
    marks = [turned([[0, 0], [0, 95]], 45 * k + 22.5) for k in range(8)]
    return make_layout(petals() + hatch, marks=marks)


@pytest.fixture(scope="session")
def small_layout():
    """A 180 mm round loaf: the largest round one whose guide fits on A4."""
    return make_layout(petals(7, 18, 40), make_loaf("round", 180.0, None, 80.0))


@pytest.fixture(scope="session")
def long_layout():
    """A long loaf with one ear and short side cuts."""
    ear = cut([[10, -120], [10, 120]], "ear", family=0, depth=10, blade=35, kind="expansion")
    side = [
        cut([[-30, y], [-12, y + 14]], "side cut", figure=1 + k, family=1, depth=3)
        for k, y in enumerate(range(-90, 91, 20))
    ]
    return make_layout([ear, *side], make_loaf("long", 130.0, 320.0, 85.0), "One ear", ())
