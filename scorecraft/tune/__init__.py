"""Learning from the bake: fit the model to measured openings, and keep a log of bakes."""
