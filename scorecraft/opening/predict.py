"""A layout's cuts through the model: its loaf's growth, its skin, and panels that suit it."""

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.loaf.bake import Growth
from scorecraft.loaf.skin import Skin
from scorecraft.opening.bulge import Bed
from scorecraft.opening.held import OPENING_PRECISE
from scorecraft.opening.ligament import springs
from scorecraft.opening.lip import slant_of
from scorecraft.opening.load import Field, stored
from scorecraft.opening.panel_size import panel_for
from scorecraft.opening.result import Opening
from scorecraft.opening.solve import opened
from scorecraft.opening.system import System, system


@dataclass(frozen=True, slots=True, eq=False)
class Sheet:
    """The sheet the model opens: its mismatch strain, thickness (mm) and area (mm2).

    `inside` is the modulus of the dough under it over its own, `curve` (per mm) that of the dome.
    """

    strain: Field
    skin_mm: float
    inside: float
    area_mm2: float
    curve: float

    @property
    def bed(self) -> Bed:
        """What it lies on."""
        return Bed(self.curve, self.skin_mm, self.inside)


def sheet_of(layout: Layout, skin: Skin) -> Sheet:
    """Give the sheet of a layout's loaf, grown by its bake; its area is that on the dome.

    The cuts open while the skin is soft; the work they are measured by is that of all the growth.
    """
    grown = Growth(layout.loaf, layout.bake)
    soft = skin.growth * layout.bake.soft

    def at(points: Floats) -> Floats:
        """Mismatch strain (N, 3) at sheet points (N, 2) when the skin sets."""
        return soft * grown.at(points)

    points, areas = grown.patches
    field = Field(at, stored(skin.growth * grown.at(points), areas))
    return Sheet(field, skin.thickness_mm, skin.inside, float(areas.sum()), layout.loaf.curve)


@dataclass(frozen=True, slots=True, eq=False)
class Model:
    """A layout's cuts in its sheet, set up to be opened in any skin, at any times their depths."""

    equations: System
    sheet: Sheet
    depth_mm: Floats
    slant: Floats

    def opened(
        self,
        *,
        deeper: float = 1.0,
        near: Opening | None = None,
        precise: float = OPENING_PRECISE,
    ) -> Opening:
        """Open all cuts, so many times as deep; an opening `near` the answer is started from.

        Jumps are as precise as in `Held.solve`.
        """
        return opened(
            self.equations,
            deeper * self.depth_mm,
            skin_mm=self.sheet.skin_mm,
            area_mm2=self.sheet.area_mm2,
            inside=self.sheet.inside,
            slant=self.slant,
            near=near,
            precise=precise,
        )


def model_of(layout: Layout, skin: Skin, panel_mm: float | None = None) -> Model:
    """Set up a layout's cuts; without a `panel_mm` the panels are as long as suits the lines."""
    sheet = sheet_of(layout, skin)
    lines = [cut.line for cut in layout.cuts]
    depth = layout.depths_mm
    held = springs(depth, sheet.skin_mm, sheet.inside).normal
    equations = system(lines, panel_mm or panel_for(lines), held, sheet.strain, sheet.bed)
    slant = np.array([slant_of(cut) for cut in layout.cuts])
    return Model(equations, sheet, depth, slant)


def predict(layout: Layout, skin: Skin, *, panel_mm: float | None = None) -> Opening:
    """Predict how the cuts of a layout open."""
    return model_of(layout, skin, panel_mm).opened()
