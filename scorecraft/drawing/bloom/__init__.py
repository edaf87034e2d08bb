"""The baked loaf as a picture, and the map of the tension that is left."""
