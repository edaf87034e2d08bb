"""A pattern text and one change give a new text; whatever the change is not about stays as it is."""
