"""The bench card: the order of cuts, a step a row."""
