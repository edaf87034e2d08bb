"""Limits of this program that several rooms share; the others stand where they are used."""

MOST_BYTES = 1_000_000
"""The largest pattern file that is read."""
MOST_NESTING = 40
"""The deepest nesting of blocks and rules."""
MOST_PROBLEMS = 100
"""The most problems that are told in one run."""
SMALLEST_LOAF_MM = 20.0
"""The least width or length of a loaf."""
LEAST_HEIGHT_MM = 8.0
"""The least height of a loaf: flat breads are no higher."""
LARGEST_LOAF_MM = 1500.0
"""The greatest width, length or height of a loaf."""
LEAST_PROFILE = 1.0
"""The least power of a dome's profile: a cone."""
MOST_PROFILE = 12.0
"""The greatest power of a dome's profile: almost a box."""
LEAST_DOUGH_G = 20.0
"""The least dough that is shaped into a loaf."""
MOST_DOUGH_G = 20_000.0
"""The most dough that is shaped into a loaf."""
MOST_PROOF = 5.0
"""The greatest growth of the dough before it is cut (3.55 in a laboratory loaf)."""
MOST_SPRING = 3.0
"""The greatest oven spring that is believed."""
MOST_LOAVES = 500
"""The most loaves that are scored in a row."""
CROWN_ZONE = 1 / 3
"""The crown zone ends at this share of the reach."""
RIM_ZONE = 2 / 3
"""The rim zone begins at this share of the reach."""
WIDEST_MEASURED_MM = 150.0
"""No cut opens wider than this."""
MOST_MEASURED = 500
"""The most measured openings of a bake."""
GRID_MARGIN_MM = 15.0
"""A grid with no region of its own stays this far in."""
CRUMB_MM = 4.0
"""Scraps of clipped cuts shorter than this are dropped."""
MOST_SLOT_MM = 40.0
"""The widest slot that is believed."""
PLATE_EDGE_MM = 16.0
"""The plate reaches so far beyond the loaf's rim."""
