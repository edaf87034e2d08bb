from dataclasses import replace

import numpy as np
import pytest

from scorecraft import design
from scorecraft.drawing.bloom.mouths import predicted
from scorecraft.drawing.bloom.showing import Look, picture
from scorecraft.drawing.pdf import pdf
from scorecraft.drawing.svg import svg
from scorecraft.errors import UsageError
from scorecraft.opening import solve


@pytest.mark.parametrize(
    ("wanted", "css"),
    [
        (Look(), "bloom"),
        (Look(before=True, view="front"), "bloom"),
        (Look(proofed=True, view="side"), "bloom"),
        (Look(tension=True), "tension"),
    ],
)
def test_what_is_wanted_is_drawn(long_layout, wanted, css):
    made = picture(long_layout, replace(wanted, pixels=240), width_mm=80.0)
    assert made.css == css
    assert made.width_mm == pytest.approx(80.0)


@pytest.mark.parametrize("two", [("before", "tension"), ("proofed", "tension")])
def test_pictures_that_exclude_one_another_are_refused(two):
    with pytest.raises(UsageError, match="different pictures"):
        Look(**dict.fromkeys(two, True))


def test_tension_has_no_views():
    with pytest.raises(UsageError, match="from the top only"):
        Look(tension=True, view="side")


def test_a_known_opening_is_drawn_as_it_is(long_layout):
    lines = [each.line for each in long_layout.cuts]
    known = solve(lines, [3.0] * len(lines), strain=(0.02, 0.02, 0.0))
    made = picture(long_layout, Look(pixels=200), opening=known)
    assert f"the widest to {known.widest_mm.max():.0f} mm" in made.desc
    assert made.desc != picture(long_layout, Look(pixels=200)).desc


@pytest.mark.parametrize("wanted", [Look(before=True), Look(tension=True)])
def test_last_digits_of_the_model_do_not_change_the_picture(wanted):
    """They hang on how many threads solved for them, and on the machine."""
    layout = design("leaf-crown").layout
    made = predicted(layout)
    near = np.random.default_rng(1).uniform(1 - 1e-12, 1 + 1e-12, (3, len(made.mouth_mm)))
    other = replace(
        made,
        gap_mm=made.gap_mm * near[0],
        slide_mm=made.slide_mm * near[1],
        mouth_mm=made.mouth_mm * near[2],
    )
    assert not np.array_equal(other.mouth_mm, made.mouth_mm)
    drawn, again = (
        svg(picture(layout, replace(wanted, pixels=400), opening=each)) for each in (made, other)
    )
    assert drawn == again


def test_files_of_a_heavy_pattern_stay_small():
    """The photograph is a JPEG in them, its outlines lie above it as lines."""
    made = design("sea-and-sun").bloom()
    drawing = svg(made)
    assert 'data-layer="openings"' in drawing and "data:image/jpeg" in drawing
    assert 100_000 < len(drawing) < 600_000
    assert 100_000 < len(pdf([made], "x")) < 600_000
