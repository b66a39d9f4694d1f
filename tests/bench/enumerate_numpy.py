#!/usr/bin/env python3
"""The work of one search in NumPy: every three-part mixture at 5 % of 100 liquids, three tables looked up, frontier kept.

usage: enumerate_numpy.py [LIQUIDS] [linear|cubic]
Tables are of the size that the bench uses; their values do not change the time. "cubic" is the look-up that the search
does (64 nodes), "linear" the cheapest that could be called the same (8 nodes). Prints mixtures, seconds and rate.
"""
import itertools
import sys
import time

import numpy as np

liquids = int(sys.argv[1]) if len(sys.argv) > 1 else 100
kind = sys.argv[2] if len(sys.argv) > 2 else "cubic"
steps = 20
nodes = (26, 36, 50)
rng = np.random.default_rng(3)
places = rng.random((liquids, 3)) * (np.array(nodes) - 4) + 1
grid = np.stack(np.meshgrid(*[np.linspace(0, 1, n) for n in nodes], indexing="ij"))
tables = [np.clip(1 / (1 + np.exp(8 * (((grid - c[:, None, None, None]) ** 2).sum(0) - 0.2))), 0, 1).ravel()
          for c in rng.random((3, 3))]


def weights(t):
    if kind == "linear":
        return (1 - t, t)
    return (t * (1 - t) * (t - 2) / 6, (1 - t * t) * (2 - t) / 2, t * (1 + t) * (2 - t) / 2, t * (t * t - 1) / 6)


def look_up(points):
    cell = np.floor(points).astype(np.int64)
    frac = points - cell
    first = cell if kind == "linear" else cell - 1
    base = (first[:, 0] * nodes[1] + first[:, 1]) * nodes[2] + first[:, 2]
    w = [weights(frac[:, axis]) for axis in range(3)]
    size = len(w[0])
    sums = [np.zeros(len(points)) for _ in tables]
    for i, j, k in itertools.product(range(size), repeat=3):
        weight = w[0][i] * w[1][j] * w[2][k]
        at = base + (i * nodes[1] + j) * nodes[2] + k
        for total, table in zip(sums, tables):
            total += weight * table[at]
    return [np.clip(s, 0, 1) for s in sums]


def frontier(effect, risk):
    order = np.lexsort((-effect, risk))
    effect, risk = effect[order], risk[order]
    best = np.maximum.accumulate(effect)
    keep = np.ones(len(effect), bool)
    keep[1:] = effect[1:] > best[:-1]
    return effect[keep], risk[keep]


shares = np.array([(a, b, steps - a - b) for a in range(1, steps) for b in range(1, steps - a)]) / steps
triples = np.array(list(itertools.combinations(range(liquids), 3)))
start = time.perf_counter()
best = (np.empty(0), np.empty(0))
count = 0
for chunk in np.array_split(triples, max(1, len(triples) // 500)):
    points = np.einsum("sp,tpx->tsx", shares, places[chunk]).reshape(-1, 3)
    effect, risk_a, risk_b = look_up(points)
    effect, risk = np.round(effect, 9), np.round(np.maximum(risk_a, risk_b), 9)
    best = frontier(np.concatenate((best[0], effect)), np.concatenate((best[1], risk)))
    count += len(points)
seconds = time.perf_counter() - start
print(f"{kind}: {count} mixtures in {seconds:.2f} s, {count / seconds / 1e6:.2f} million/s, {len(best[0])} members")
