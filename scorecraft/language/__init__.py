"""The pattern language: text to tree and back, and the one table of its words."""
