"""How cuts open in the oven: the slit-opening model.

The skin of the loaf is a thin sheet on a soft inside. In the oven the loaf grows and the skin does
not follow all the way: the strain it lacks, the *mismatch strain* e, puts it in tension, and cuts
open under that tension. Cuts and openings live on the dough sheet, the skin laid flat. Young's
modulus cancels: every stress is in units of that of the skin.

- **Growth** (`loaf.bake`). The skin slides over the dough and evens itself out along the rays: a
  point keeps its share of the reach L, so e_ray = left (L1/L0 - 1) and e_around =
  left (rho1/rho0 - 1), rho the distance from the loaf's axis: alike at the crown, less around the
  rim.
- **Stretch** (`stretch`, `load`). The uncut skin is stretched finitely, U = I + e, under the
  tension (U - U^-1 / det^2 U) / 3 of a thin incompressible neo-Hookean sheet; what the cuts add is
  small beside it: dP = (grad u + 2 s tr(grad u) I + s grad u^T) / 3, s = (1 + e)^-6 with e the mean
  over the cuts. From a half plane opened in a wave follows that such a sheet is as stiff against a
  straight cut as the unstretched one times (1 + s)(2 + 7s - 3s^2) / 3(1 + 3s), and that the part of
  the kernel that hangs on directions weighs 3s(1 + s) / (2 + 7s - 3s^2). As e goes to 0 both go to
  1, and all is the handbook's plane stress with nu = 0.5.
- **Panels** (`noding`, `panels`, `panel_size`). Cuts become straight panels with a constant
  displacement jump, noded wherever cuts turn, cross, touch or end on one another. A free tip is
  drawn in by about a quarter of a panel, less where springs hold it, which takes the error from
  1/N to 1/N^2. How long the panels of a pattern are, and how good its figures then, `panel_size`
  tells.
- **Stiffness** (`kernel`). A panel is a pair of edge dislocations (Crouch's displacement
  discontinuity). Tractions are balanced over panels, not in their middles, so the matrix is the
  second derivative of an energy: symmetric and positive. That is what lets contact have one
  answer and pieces cut out all around stay finite. The ends of panels have a core, narrower at
  sharp corners, chosen once so that few panels do.
- **Hold** (`ligament`, `hold`). Two springs side by side hold a cut of depth d in a skin of
  thickness h. The skin left: T = gap / (2 h alpha(d/h)), the line spring of Rice & Levy without
  moment (against sliding the exact antiplane one), none from d = h on. The inside, m times as stiff
  as the skin: T = gap exp(1 - (d/h)^2.2) / h (0.74 + 3.19 / sqrt(m)), at d = h the plane section of
  a skin welded on a soft half space. So openings rise smoothly with depth; with m = 0 a cut as deep
  as the skin is free. The eye sees the gap and the mouth of the notch, w = gap + 5.82 T d with T
  what the skin left carries.
- **Blade** (`lip`). A depth is that of the bottom of the cut below the surface, as a
  baker means it who cuts a flap a quarter of an inch thick; at an angle a the blade is then
  d / sin a in the dough. What holds the lips is the dough below that bottom, so a slanted cut is
  held as an upright one as deep. Its lip, c = d / tan a wide, hangs on one side only and turns
  about the tip of the cut by atan(w sin^2 a / d), and the mouth is measured from its raised edge:
  of two cuts as deep the slanted one opens wider, by a fifth at 30 to 45 degrees.
- **Load** (`load`, `solve`). With the area of the skin given, its mean growth is given and the
  mean tension left is (S + C)^-1 (S t - c): t the uncut tension, S the compliance of the sheet, C
  and c what the cuts add. A skin tied at its rim is pulled back from there by other than its mean:
  `Stretch.tied`, exact for a slit in the middle of a round one.
- **Bulge** (`bulge`). On a dome of radius R the skin rises along a cut, held by its bending, its
  tension t and the bed of the inside: of the tension that cuts take from a flat sheet they take, at
  wave number k, 1 / (1 + h E' / (R^2 (h^3 k^4 / 9 + 2 m k / 3 + h t k^2))). Nothing is fitted; with
  m = 0 the skin is taken to lie on a former, which keeps it flat.
- **Contact** (`contact`). No gap is negative: an active set of closed panels, no friction.
- **Solving** (`elastic`, `held`). The matrix is never written down. Ends that are near act pair by
  pair (`near`), all others through a grid and its Fourier transform (`far`), since from afar only
  their distance counts; conjugate gradients, with windows of panels solved by themselves, need ten
  to twenty products with it. That costs about as much for every panel, however many there are.
- **Results** (`result`, `tension`, `tightest`, `room`, `ranges`, `depth`, `wishes`): widths along
  every cut, tension anywhere; room by work, 1/2 sum (tension given up x jump x length) over
  1/2 int t : e dA, and the verdict; how far all that may be off; depths for wished openings, never
  deeper than the loaf takes. `predict` takes a layout through it all.

How near it is. Handbook slits to 0.3 % at 100 panels a slit and second order (corners 0.05 %, and
nearer the first). Free cuts on a dome, against finite elements of a sliding neo-Hookean skin:
widths -8 to +0 %, room within 0.03 near the crown; a pair of cuts 60 mm above the rim opens 14 %
too far. A skin welded on a solid inside, at small strain, cut to its bottom: +5 % (m = 0.1) and
+1 % (0.03), to 5/3 of it: +11 and -11 %; flat it was up to 38 % too narrow, as the solid's crown
rose 10 mm uncut and 20 to 33 mm cut. A dome half as large again, held back: +27 and +1 % (to 5/3;
flat +13 and -23 %). At the strains of a loaf it is less sure. What holds the bulge most is then the
tension of the skin, taken as uncut; the lips have lost theirs. The solid under all of its uncut
tension opens 0.8 times as far, where ours is within 17 %, but cut to its bottom 0.6 times (m =
0.03), where ours, whose hold knows no tension, is half too wide; a solid under what is left of it
must lie between. That the inside grows on where a cut gives way, which adds 2 to 8 %, is left out.

Honest limits. Flat but for growth, area and bulge, and that is a sphere's, curved as the crown is
on average; the tension told between cuts is a flat sheet's; the stretch even; the rim a circle. A
loaf grows as much in length as in width, where a tube of skin under pressure would grow in girth
alone: cuts along a baguette, 8 to 10 mm wide at 6 mm deep, would open a fifth to a third further
so, and beyond what bakers see at 10 mm, unless the hold were less steep too. The fall of the hold
below the skin is a choice, and the skin's thickness and the inside are set on what bakers tell and
on published crumb, not measured. Moment-free springs are a choice: were the skin kept from bending
at a cut, light cuts would open a quarter less. Dough is not elastic, dries, flows and tears on:
cuts do not grow here. So the figures compare designs; a baker's own loaves set the scale.

What it is held to: tests/published (slits, rows, stacks, arcs, crosses and stars, polygons cut all
around, springs, softening, stretched discs, the dome, each with its source).
"""

from scorecraft.opening.result import Opening as Opening
from scorecraft.opening.solve import solve as solve
