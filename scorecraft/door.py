"""The door for Python: a design that draws itself."""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from scorecraft.designing import Design as Plain
from scorecraft.designing import Turned, make

if TYPE_CHECKING:
    from scorecraft.drawing.bloom.showing import Wanted
    from scorecraft.drawing.picture import Picture


@dataclass(frozen=True)
class Design(Plain):
    """A pattern on a loaf, checked, that can be printed and shown in a notebook."""

    @cached_property
    def picture(self) -> Picture:
        """The loaf with its cuts, seen from above."""
        from scorecraft.drawing.loafview import loaf_picture

        return loaf_picture(self.layout, width_mm=120.0)

    def guide(self, path: str | Path, *, paper: str | None = None) -> Path:
        """Write the full-size guide as SVG, PDF or PNG, by the file's suffix; give its path.

        A loaf too large for the paper is spread over the pages of a PDF, the first of which tells
        how to join the others; SVG and PNG without a paper are one sheet as large as it takes.
        """
        from scorecraft.drawing.write import encoded
        from scorecraft.writing import write_whole

        target = Path(path)
        one_sheet = target.suffix.lower() != ".pdf"
        pages = self.guide_pages(paper=paper, one_sheet=one_sheet)
        write_whole(target, encoded(pages, target.suffix))
        return target

    def guide_pages(
        self, *, paper: str | None = None, tiled: bool = False, one_sheet: bool = False
    ) -> tuple[Picture, ...]:
        """Draw the full-size guide, with the predicted openings and the verdict on its room.

        More than one page where no sheet of the paper holds the loaf, or on the home paper if
        `tiled`; without a paper `one_sheet` makes one as large as it takes.
        """
        from scorecraft.drawing.guide.guide import guide_pages
        from scorecraft.drawing.paper.sheet import home_paper
        from scorecraft.report import room_words

        return guide_pages(
            self.layout,
            paper=paper,
            home=home_paper(os.environ),
            tiled=tiled,
            one_sheet=one_sheet,
            findings=self.findings,
            opening_mm=self.foreseen.widest_mm.tolist() if self.foreseen else None,
            verdict=room_words(self) if self.foreseen else None,
            made=self.plan,
        )

    def bloom(self, wanted: Wanted | None = None, *, width_mm: float | None = None) -> Picture:
        """Draw the loaf as it will be after baking, its cuts opened as the model predicts."""
        from scorecraft.drawing.bloom.showing import Wanted, picture

        wanted = wanted or Wanted()
        opening = None if wanted.proofed else self.opening
        return picture(self.layout, wanted, opening=opening, width_mm=width_mm)

    def _repr_svg_(self) -> str:
        from scorecraft.drawing.svg import svg

        return svg(self.picture)


def design(
    pattern: str | Path,
    *,
    loaf: str | None = None,
    bake: str | None = None,
    knobs: Mapping[str, Turned] | None = None,
    baker: str | Path | None = None,
) -> Design:
    """Design a pattern on a loaf: see `scorecraft.design`."""
    made = make(pattern, loaf=loaf, bake=bake, knobs=knobs, baker=baker, standing=Path.cwd())
    return Design(made.source, made.tree, made.layout, made.skin, made.unmet)
