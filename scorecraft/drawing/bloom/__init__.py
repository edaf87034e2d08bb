"""The baked loaf as a picture."""
