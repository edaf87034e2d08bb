"""Rims with a drawing of their own: one function a file, of the name of the form.

Each gives the corners (N, 2) of a closed line, y away from the baker, in any size: the loaf's
width and length scale it.
"""
