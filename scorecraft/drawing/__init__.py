"""Drawings for paper and page: pictures in mm, and the files they are written to."""
