"""The solid of `make_solid` when the tension of its uncut skin counts: small openings on a stretch.

Run by hand with scikit-fem 12 on the path (some minutes a line): prints, for the stiffness of the
inside over the skin's, the strain of the uncut skin and how far the lips part in the middle (the
mean over the skin, mm), at small strain and on the stretched solid. Nearly incompressible
neo-Hookean, nu = 0.49; the uncut solid grown to the end in four steps, then cut once. A mesh of
3.2 opens up to 5 % less than that of `make_solid`; with a cut 12 mm deep in an inside of 0.1 it
cannot be grown so far, its bricks turn over.
"""

import sys

import make_solid
import numpy as np
from make_solid import NU, Solid
from scipy.sparse.linalg import splu
from skfem import BilinearForm, LinearForm, asm
from skfem.element import DiscreteField

GROWTH, STEPS, NEAR_MM = 0.103, 4, 0.02
make_solid.COARSE = 3.2


@BilinearForm
def _tangent(u, v, p):
    """Second derivative of the energy: `f` is F, `t` its inverse turned over, `j` its volume."""
    du, dv, turned = u.grad, v.grad, p["t"]
    (one, two), (own, other) = (
        [np.einsum("ij...,ij...->...", by, grad) for grad in (du, dv)] for by in (turned, p["f"])
    )
    back = [np.einsum("kj...,ki...->ij...", turned, grad) for grad in (du, dv)]
    cross = np.einsum("ij...,ji...->...", *back)
    shape = np.einsum("ij...,ij...->...", du, dv) - 2 / 3 * (one * other + own * two)
    shape += 2 / 9 * p["trace"] * one * two + p["trace"] / 3 * cross
    volume = (2 * p["j"] - 1) * p["j"] * one * two - (p["j"] - 1) * p["j"] * cross
    return p["g"] * (p["shear"] * shape + p["bulk"] * volume)


@LinearForm
def _force(v, p):
    return np.einsum("ij...,ij...->...", p["stress"], v.grad)


def assembled(solid, moved, growth, inside):
    """Stiffness and forces of a solid moved so, its inside grown."""
    g = np.asarray(solid.everywhere(np.where(solid.skin, 1.0, 1 + growth)))
    young = np.asarray(solid.everywhere(np.where(solid.skin, 1.0, inside)))
    bulk = young / (3 * (1 - 2 * NU))
    f = (solid.basis.interpolate(moved).grad + np.eye(3)[:, :, None, None]) / g
    last = np.moveaxis(f, (0, 1), (-2, -1))
    j, t = np.linalg.det(last), np.moveaxis(np.linalg.inv(last), (-2, -1), (1, 0))
    assert j.min() > 0
    shear, trace = young / (2 * (1 + NU)) * j ** (-2 / 3), (f**2).sum(axis=(0, 1))
    stress = g**2 * (shear * (f - trace / 3 * t) + bulk * (j - 1) * j * t)
    parts = {"f": f, "t": t, "j": j, "trace": trace, "shear": shear, "bulk": bulk, "g": g}
    fields = {name: DiscreteField(part) for name, part in parts.items()}
    force = asm(_force, solid.basis, stress=DiscreteField(stress))
    return asm(_tangent, solid.basis, **fields).tocsc(), force


def step(solid, moved, growth, inside, cut):
    """Move a solid by one step of Newton's method."""
    free = solid.free(cut)
    matrix, force = assembled(solid, moved, growth, inside)
    after = moved.copy()
    after[free] -= splu(matrix[free][:, free]).solve(force[free])
    return after


if __name__ == "__main__":
    solid = Solid(float(sys.argv[1]))
    for inside in map(float, sys.argv[2:]):
        still, grown = np.zeros(solid.basis.N), np.zeros(solid.basis.N)
        small = solid.gap(step(solid, still, 1e-5, inside, cut=True)) * GROWTH / 1e-5
        for count in range(1, 20):
            before, growth = grown, GROWTH * min(1, count / STEPS)
            grown = step(solid, before, growth, inside, cut=False)
            if growth == GROWTH and np.abs(grown - before).max() < NEAR_MM:
                break
        large = solid.gap(step(solid, grown, GROWTH, inside, cut=True))
        print(inside, *np.round([solid.strain(grown), small, large], 3))
