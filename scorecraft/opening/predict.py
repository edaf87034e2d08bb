"""A layout's cuts through the model: its loaf's growth, its skin, and panels that suit it."""

from dataclasses import dataclass

from scorecraft.arrays import Floats
from scorecraft.cuts import Layout
from scorecraft.loaf.bake import growth
from scorecraft.loaf.skin import Skin
from scorecraft.opening.lip import slant_of
from scorecraft.opening.load import Field, stored
from scorecraft.opening.panel_size import panel_for
from scorecraft.opening.result import Opening
from scorecraft.opening.solve import solve


@dataclass(frozen=True, slots=True)
class Sheet:
    """The sheet the model opens: its mismatch strain, thickness (mm) and area (mm2).

    `inside` is the modulus of the dough under it over its own.
    """

    strain: Field
    skin_mm: float
    inside: float
    area_mm2: float


def sheet_of(layout: Layout, skin: Skin) -> Sheet:
    """Give the sheet of a layout's loaf, grown by its bake; its area is that on the dome.

    The cuts open while the skin is soft; the work they are measured by is that of all the growth.
    """
    grown = growth(layout.loaf, layout.bake)
    soft = skin.growth * layout.bake.soft

    def at(points: Floats) -> Floats:
        """Mismatch strain (N, 3) at sheet points (N, 2) when the skin sets."""
        return soft * grown.at(points)

    points, areas = grown.patches
    field = Field(at, stored(skin.growth * grown.at(points), areas))
    return Sheet(field, skin.thickness_mm, skin.inside, float(areas.sum()))


def predict(layout: Layout, skin: Skin, *, panel_mm: float | None = None) -> Opening:
    """Predict how the cuts of a layout open.

    Without a `panel_mm` the panels are as long as suits the lines.
    """
    return _opened(layout, skin, panel_mm, 1.0)


def deepened(layout: Layout, skin: Skin, times: float) -> Opening:
    """Predict how the cuts of a layout would open if all were so many times as deep."""
    return _opened(layout, skin, None, times)


def _opened(layout: Layout, skin: Skin, panel_mm: float | None, deeper: float) -> Opening:
    sheet = sheet_of(layout, skin)
    lines = [cut.line for cut in layout.cuts]
    return solve(
        lines,
        [deeper * cut.depth_mm for cut in layout.cuts],
        strain=sheet.strain,
        skin_mm=sheet.skin_mm,
        inside=sheet.inside,
        slant=[slant_of(cut) for cut in layout.cuts],
        area_mm2=sheet.area_mm2,
        panel_mm=panel_mm or panel_for(lines),
    )
