"""The live page: a small server for one baker's own browser, and the page it serves."""
