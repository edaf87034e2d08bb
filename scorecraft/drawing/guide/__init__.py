"""The guide: the loaf from above at full size, its cuts numbered."""
