"""Design scoring patterns for bread: from a few lines of text to a true-scale guide."""

__version__ = "0.1.0"
