"""Figures for tests/published/test_pooling.cpp, by general-purpose libraries (numpy, scipy, statsmodels).

    python3 tests/oracle/pooling.py

1. One figure a study: 13 trials of a vaccine, log risk ratios (Colditz et al. 1994; counts from memory). DerSimonian
   and Laird's estimate by statsmodels.stats.meta_analysis.combine_effects; restricted maximum likelihood by scipy.
2. Four figures a painting with full, unequal covariances: restricted maximum likelihood of two scatters by scipy.
"""
import numpy as np
from scipy.optimize import minimize, minimize_scalar
from statsmodels.stats.meta_analysis import combine_effects

tables = np.array([
    [4, 119, 11, 128], [6, 300, 29, 274], [3, 228, 11, 209], [62, 13536, 248, 12619], [33, 5036, 47, 5761],
    [180, 1361, 372, 1079], [8, 2537, 10, 619], [505, 87886, 499, 87892], [29, 7470, 45, 7232], [17, 1699, 65, 1600],
    [186, 50448, 141, 27197], [5, 2493, 3, 2338], [27, 16886, 29, 17825]], float)
a, b, c, d = tables.T
y = np.log(a / (a + b)) - np.log(c / (c + d))
v = 1 / a - 1 / (a + b) + 1 / c - 1 / (c + d)
print("y =", ", ".join(f"{one:.6f}" for one in y))
print("v =", ", ".join(f"{one:.6f}" for one in v))
laird = combine_effects(y, v, method_re="chi2")
print(f"DerSimonian-Laird: tau2 {laird.tau2:.6f} mean {laird.mean_effect_re:.6f} se {laird.sd_eff_w_re:.6f}")


def restricted(tau2):
    w = 1 / (v + tau2)
    mean = (w * y).sum() / w.sum()
    return 0.5 * (np.log(v + tau2).sum() + np.log(w.sum()) + (w * (y - mean) ** 2).sum())


best = minimize_scalar(restricted, bounds=(0, 2), method="bounded", options={"xatol": 1e-12})
w = 1 / (v + best.x)
print(f"REML: tau2 {best.x:.6f} mean {(w * y).sum() / w.sum():.6f} se {w.sum() ** -0.5:.6f}")

# Four figures: a small table without any generator, so that the test can hold it.
points = np.array([[1.0, 2.0, -1.0, 1.5], [3.0, -1.0, 0.5, 4.5], [-2.0, 1.5, 2.0, -1.5], [0.5, 4.0, 1.0, 0.0],
                   [2.5, 0.0, -3.0, 3.0], [-1.0, -2.0, 0.0, -4.5]])
roots = [np.array([[1.0, 0, 0, 0], [0.3 * k, 0.8, 0, 0], [-0.2, 0.1 * k, 1.2, 0], [0.4, -0.3, 0.2 * k, 0.9]])
         for k in range(1, 7)]
within = [root @ root.T * (0.4 + 0.2 * k) for k, root in enumerate(roots)]


def gaussian(log_scatter):
    centre, R0 = np.exp(log_scatter)
    between = np.diag([centre, centre, centre, R0])
    weights = [np.linalg.inv(one + between) for one in within]
    total = sum(weights)
    mean = np.linalg.solve(total, sum(one @ point for one, point in zip(weights, points)))
    value = 0.5 * np.linalg.slogdet(total)[1]
    for one, point in zip(weights, points):
        value += -0.5 * np.linalg.slogdet(one)[1] + 0.5 * (point - mean) @ one @ (point - mean)
    return value, mean, np.linalg.inv(total)


best = minimize(lambda x: gaussian(x)[0], [0.0, -1.0], method="Nelder-Mead",
                options={"xatol": 1e-10, "fatol": 1e-13, "maxiter": 4000})
_, mean, covariance = gaussian(best.x)
print("four figures: scatter", np.exp(best.x), "mean", mean, "sd", np.sqrt(np.diag(covariance)))
