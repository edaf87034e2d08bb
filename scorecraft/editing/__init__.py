"""A pattern text and one change give a new text; what the change is not about stays as it is."""
