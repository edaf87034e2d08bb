"""How cuts open in the oven: the slit-opening model.

The model on one page. The skin of the loaf is a thin elastic sheet (plane stress, Poisson's ratio
0.5). In the oven the loaf grows and the skin does not follow all the way: the strain it lacks,
the *mismatch strain*, puts it in tension, and cuts open under that tension. Cuts and openings live
on the dough sheet, the skin laid flat.

- **Panels** (`noding`, `panels`, `panel_size`). Cuts become straight panels with a constant
  displacement jump, noded wherever cuts turn, cross, touch or end on one another. A free tip is
  drawn in by about a quarter of a panel, less where springs hold it, which takes the error from
  1/N to 1/N^2. How long the panels of a pattern are, and how good its figures then, `panel_size`
  tells.
- **Stiffness** (`kernel`). A panel is a pair of edge dislocations (Crouch's displacement
  discontinuity). Tractions are balanced over panels, not in their middles, so the matrix is the
  second derivative of an energy: symmetric and positive. That is what lets contact have one
  answer and pieces cut out all around stay finite. The ends of panels have a core, narrower at
  sharp corners, chosen once so that few panels do. Young's modulus cancels: every stress is in
  units of E, and E appears nowhere.
- **Ligament** (`ligament`). A cut of depth d in a skin of thickness h that is not through is held
  by springs, T = gap E' / (2 h alpha(d/h)): the line spring of Rice & Levy without moment; against
  sliding by the exact antiplane spring. The eye sees the gap and the mouth of the notch below it,
  w = gap + 5.82 T d / E': right for a cut that is through and for a scratch, an interpolation
  between (short cuts pass the through-cut value before full depth, one of 20 mm by 6 %).
- **Load** (`load`, `solve`). With the area of the sheet given, its mean growth is given and the
  mean tension left is (S + C)^-1 e; without, the remote tension is (the case of the handbooks).
- **Solving** (`elastic`, `held`). The matrix is never written down. Ends that are near act pair by
  pair (`near`), all others through a grid and its Fourier transform (`far`), since from afar only
  their distance counts; conjugate gradients, with clusters of panels solved by themselves, need ten
  to twenty products with it. That costs about as much for every panel, however many there are.
- **Contact** (`contact`). No gap is negative: an active set of closed panels, no friction.
- **Results** (`result`, `tension`, `room`, `depth`): widths along every cut, tension anywhere,
  room by direction and the verdict, depths for wished openings.

Honest limits. Thin and flat: the dome's curvature acts only through the growth. Small strain:
openings are linear in growth, though 10 % and more is not small. Endless beyond the rim: the area
only shares out the growth, so a cut near the rim opens too little. Dough is not elastic, dries,
flows and tears on: cuts do not grow here. Moment-free springs are a choice: were the skin kept
from bending at a cut, they would be some 100 times stiffer at d/h = 0.3. E' is that of the sheet
everywhere; with the plane-strain modulus in the ligament, part-deep gaps would be a quarter less.
So the figures compare designs; a baker's own loaves set the scale, by the skin's thickness.

What it is held to: tests/published (slits, rows, stacks, arcs, crosses and stars, polygons cut all
around, springs, softening, each with its source), 0.3 % at 100 panels a slit and second order
(corners: 0.05 %, and nearer the first).
"""

from scorecraft.opening.result import Opening as Opening
from scorecraft.opening.solve import solve as solve
