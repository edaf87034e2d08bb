"""Finite elements of a solid dome whose skin is welded on a softer, growing inside, with a slit.

Run by hand with scikit-fem 12 on the path (a quarter of an hour): prints, for depths of a 120 mm
cut and for the stiffness of the inside over the skin's, the strain of the uncut skin over the
growth, how far the lips part in the middle (the mean over the skin, mm), and how far the crown
rises uncut and cut; `scorecraft.opening` tells what follows. Small strain, nu = 0.49, half an
ellipsoid 220 x 95 mm on a slippery table, 12 mm of skin, bricks of 20 nodes with 2 x 2 x 2 points
over a quarter, of 2.5 mm and more. The growth is the same for both insides: it strains the skin by
0.77 of 0.101 on an inside of 0.1. On a `former` the outside may slide, but rises as if uncut.
"""

from itertools import pairwise

import numpy as np
from scipy.integrate import cumulative_trapezoid
from scipy.sparse.linalg import splu
from skfem import (
    Basis,
    BilinearForm,
    ElementHexS2,
    ElementVector,
    FacetBasis,
    LinearForm,
    MeshHex,
    asm,
)
from skfem.element import DiscreteField
from skfem.helpers import ddot, div, dot, sym_grad, trace

AXES, SKIN, HALF, NU, STIFF_FORMER = np.array([110.0, 110.0, 95.0]), 12.0, 60.0, 0.49, 20.0
COARSE, CORE, DEEP, INNER = 2.0, 0.38, 36.0, 3


def graded(stops, end, fine, most):
    """Coordinates from 0 to an end, fine at the stops."""
    ends, out = sorted({0.0, end, *stops}), [0.0]
    for one, other in pairwise(ends):
        x = np.linspace(one, other, 2001)
        size = np.minimum(most, fine + 0.3 * np.min([np.abs(x - stop) for stop in stops], axis=0))
        steps = np.concatenate([[0], cumulative_trapezoid(1 / size, x)])
        count = max(1, int(np.ceil(steps[-1] - 0.1)))
        out += list(np.interp(np.arange(1, count + 1) * steps[-1] / count, steps, x))
    return np.array(out)


def mesh(depth):
    """A quarter of the dome; of each corner its way p along the slit and its depth; p at the tip.

    Three blocks of rays around a block in the middle.
    """
    turn = np.linspace(0, 1.2, 20_001)
    way = cumulative_trapezoid(np.hypot(AXES[0] * np.cos(turn), AXES[2] * np.sin(turn)), turn)
    tip = float(np.tan(np.interp(HALF, way, turn[1:])))
    p = graded([tip], 1.0, 0.025 * COARSE, 0.11 * COARSE)
    q = graded([0.0], 1.0, 0.015 * COARSE, 0.14 * COARSE)
    r = graded([1.0], 1.0, 0.14 * COARSE, 0.2 * COARSE)
    deep = graded(sorted({SKIN, depth}), DEEP, 1.5 * COARSE, 9 * COARSE)
    rays = np.arange(len(deep) + INNER, dtype=float)
    points, bricks, along, below, count = [], [], [], [], 0
    faces = [(p, q, (0, 1, 2)), (q, r, (2, 0, 1)), (p, r, (0, 2, 1))]
    for u, v, order in faces:
        block = MeshHex.init_tensor(np.arange(len(u)) * 1.0, np.arange(len(v)) * 1.0, rays)
        i, j, k = np.round(block.p).astype(int)
        to = np.stack([u[i], v[j], np.ones(len(i))])[list(order)]
        outside = to / np.linalg.norm(to, axis=0) * AXES[:, None]
        normal = outside / AXES[:, None] ** 2
        normal /= np.linalg.norm(normal, axis=0)
        shell = outside - normal * deep[np.minimum(k, len(deep) - 1)]
        inner = np.clip((k - len(deep) + 1) / INNER, 0, 1)
        points.append(shell * (1 - inner) + CORE * to * AXES[:, None] * inner)
        bricks.append(block.t + count)
        along.append(p[i] if order == (0, 1, 2) else np.full(len(i), 9.0))
        below.append(np.where(k < len(deep), deep[np.minimum(k, len(deep) - 1)], 99.0))
        count += len(i)
    block = MeshHex.init_tensor(p, q, r)
    points.append(CORE * block.p * AXES[:, None])
    bricks.append(block.t + count)
    along.append(np.full(block.p.shape[1], 9.0))
    below.append(np.full(block.p.shape[1], 99.0))
    whole = np.hstack(points)
    _, first, same = np.unique(np.round(whole.T, 6), axis=0, return_index=True, return_inverse=True)
    grid = MeshHex(whole[:, first].copy(), same.ravel()[np.hstack(bricks)].copy())
    return grid, np.hstack(along)[first], np.hstack(below)[first], tip


@BilinearForm
def _matrix(u, v, p):
    one, two = sym_grad(u), sym_grad(v)
    return p["lame"] * trace(one) * trace(two) + 2 * p["shear"] * ddot(one, two)


@BilinearForm
def _former(u, v, p):
    return STIFF_FORMER * dot(u.value, p.n) * dot(v.value, p.n)


@LinearForm
def _growth(v, p):
    return p["push"] * div(v)


class Solid:
    """The dome with a slit of a depth on a mesh of its own."""

    def __init__(self, depth):
        self.grid, along, below, tip = mesh(depth)
        self.element = ElementVector(ElementHexS2())
        self.basis = Basis(self.grid, self.element, intorder=3)
        self.skin = below[self.grid.t].mean(axis=0) < SKIN
        edge = self.grid.boundary_facets()
        corners = self.grid.facets[:, edge]
        middle = self.grid.p[:, corners].mean(axis=1)
        slit = (along[corners].mean(axis=0) < tip) & (below[corners].mean(axis=0) < depth)
        across = np.abs(middle[1]) < 1e-9
        self.slit, self.tied = edge[across & slit], edge[across & ~slit]
        self.ends, self.table = (edge[np.abs(middle[k]) < 1e-9] for k in (0, 2))
        self.outside = edge[below[corners].max(axis=0) < 1e-9]

    def everywhere(self, values):
        """Values of bricks as a field."""
        return DiscreteField(np.repeat(values[:, None], self.basis.dx.shape[1], axis=1))

    def free(self, cut):
        """Find the displacements that are free."""
        across = self.tied if cut else np.concatenate([self.tied, self.slit])
        fixed = [
            self.basis.get_dofs(facets=facets).all(f"u^{k}")
            for k, facets in enumerate((self.ends, across, self.table), start=1)
        ]
        return np.setdiff1d(np.arange(self.basis.N), np.concatenate(fixed))

    def grown(self, inside, cut=True, former=None):
        """Displacements for a growth of 1, on a former that is moved so if it is given."""
        young = np.where(self.skin, 1.0, inside)
        lame, shear = young * NU / ((1 + NU) * (1 - 2 * NU)), young / (2 * (1 + NU))
        push = np.where(self.skin, 0.0, young / (1 - 2 * NU))
        fields = [self.everywhere(each) for each in (lame, shear, push)]
        matrix = asm(_matrix, self.basis, lame=fields[0], shear=fields[1])
        force = asm(_growth, self.basis, push=fields[2])
        if former is not None:
            facets = FacetBasis(self.grid, self.element, facets=self.outside, intorder=3)
            bed = asm(_former, facets)
            matrix, force = matrix + bed, force + bed @ former
        free = self.free(cut)
        moved = np.zeros(self.basis.N)
        moved[free] = splu(matrix.tocsc()[free][:, free]).solve(force[free])
        return moved

    def strain(self, moved):
        """Mean strain of the skin along its surface."""
        strain = sym_grad(self.basis.interpolate(moved))
        normal = self.basis.global_coordinates().value / AXES[:, None, None] ** 2
        normal /= np.linalg.norm(normal, axis=0)
        through = np.einsum("i...,ij...,j...->...", normal, strain, normal)
        dx = self.basis.dx[self.skin]
        return float(((trace(strain) - through)[self.skin] / 2 * dx).sum() / dx.sum())

    def gap(self, moved):
        """Gap in the middle of the slit, the mean over the skin."""
        lips = self.basis.get_dofs(facets=self.slit).all("u^2")
        lips = lips[np.abs(self.basis.doflocs[0, lips]) < 1e-6]
        down = AXES[2] - self.basis.doflocs[2, lips]
        order = np.argsort(down)[: int((down < SKIN + 1e-6).sum())]
        return float(np.trapezoid(2 * moved[lips[order]], down[order]) / SKIN)

    def lift(self, moved):
        """Rise of the crown."""
        up = self.basis.split_indices()[2]
        crown = np.abs(self.basis.doflocs[:, up] - [[0], [0], [AXES[2]]]).sum(axis=0).argmin()
        return float(moved[up[crown]])


if __name__ == "__main__":
    for depth in (12.0, 20.0):
        solid, growth = Solid(depth), 0.0
        for inside in (0.1, 0.03):
            whole = solid.grown(inside, cut=False)
            strain = solid.strain(whole)
            growth = growth or 0.77 * 0.101 / strain
            cut, kept = solid.grown(inside), solid.grown(inside, former=whole)
            told = [solid.gap(cut), solid.gap(kept), solid.lift(whole), solid.lift(cut)]
            print(depth, inside, round(strain, 3), *np.round(growth * np.array(told), 1))
