"""A map of the tension that the cuts leave in the skin of a loaf."""
