"""Finite elements of the plane section of a skin welded on a soft inside and cut from above.

Run by hand with scikit-fem 12 on the path: prints, for each stiffness of the inside over the
skin's, how far the lips part (the mean over the skin's thickness h) over T h / E' under tension T
of the skin, for depths of the cut over h. The tests hold the law of `scorecraft.opening.hold` to
the numbers at 1.0. Plane strain, nu = 0.49, six-node triangles, 80 h wide and deep.
"""

import numpy as np
from scipy.sparse.linalg import splu
from skfem import (
    Basis,
    BilinearForm,
    ElementTriP2,
    ElementVector,
    FacetBasis,
    LinearForm,
    MeshTri,
    asm,
)
from skfem.element import DiscreteField
from skfem.helpers import ddot, sym_grad, trace

FAR, FINE, GROW, NU = 80.0, 0.015, 0.22, 0.49


def steps(stops):
    """Coordinates from 0 to `FAR`, fine at the stops."""
    at = [0.0]
    while at[-1] < FAR:
        step = FINE + GROW * min(abs(at[-1] - stop) for stop in stops)
        ends = [stop for stop in stops if at[-1] < stop - 1e-9 and at[-1] + 1.4 * step > stop]
        at.append(min(ends, default=at[-1] + step))
    return np.array(at)


@BilinearForm
def _matrix(u, v, p):
    one, two = sym_grad(u), sym_grad(v)
    return p["lame"] * trace(one) * trace(two) + 2 * p["shear"] * ddot(one, two)


@LinearForm
def _pull(v, _):
    return v.value[0]


def opening(depth, inside):
    """Mean opening over T h / E' of a cut of a depth (in h)."""
    across, down = steps([0.0]), steps(sorted({1.0, depth}))
    grid, element = MeshTri.init_tensor(across, down), ElementVector(ElementTriP2())
    basis = Basis(grid, element, intorder=4)
    middle = grid.p[:, grid.t].mean(axis=1)[1]
    stiff = np.where(middle < 1.0, 1.0, inside) * (1 - NU**2)
    stiff = np.repeat(stiff[:, None], basis.dx.shape[1], axis=1)
    lame, shear = stiff * NU / ((1 + NU) * (1 - 2 * NU)), stiff / (2 * (1 + NU))
    matrix = asm(_matrix, basis, lame=DiscreteField(lame), shear=DiscreteField(shear)).tocsc()
    skin = min(depth, 1.0)
    face = grid.facets_satisfying(lambda at: (np.abs(at[0]) < 1e-9) & (at[1] < skin))
    force = asm(_pull, FacetBasis(grid, element, facets=face))
    x, z = basis.doflocs
    level = np.zeros(basis.N, bool)
    level[basis.split_indices()[0]] = True
    fixed = (np.abs(z - down[-1]) < 1e-9) | (level & (np.abs(x - across[-1]) < 1e-9))
    fixed |= level & (np.abs(x) < 1e-9) & (z > depth - 1e-9)
    free = np.flatnonzero(~fixed)
    return 2 * float(force[free] @ splu(matrix[free][:, free]).solve(force[free]))


if __name__ == "__main__":
    for inside in (1.0, 0.3, 0.1, 0.05, 0.03):
        print(inside, [(d, round(opening(d, inside), 2)) for d in (0.25, 0.5, 0.75, 0.9, 1.0)])
