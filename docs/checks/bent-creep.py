"""What protection from creep that bends any rule can reach: the table of docs/creep.md, 'The best any rule can do'.

A line is off by L * zeta * u where the creep bends by zeta standard deviations of what can be seen of it. All that the
residuals say of the bend is z, normal about zeta with variance 1 and independent of the error of the line from scatter.
A rule flags, or multiplies u by m(z) >= 1, by chance where it likes. The largest protection of the worst zeta, with the
flags and the coverage of straight traces bounded, is a linear programme in the probabilities of (z, m).

Needs numpy and scipy: python3 docs/checks/bent-creep.py
"""

import numpy as np
import scipy.sparse as sparse
from scipy.optimize import linprog
from scipy.stats import norm

STEP = 0.1
FLAG = np.inf
NEARLY_ALL = 50
Z = np.arange(0, 11 + STEP / 2, STEP)
M = np.r_[np.arange(1, 4, STEP), 5, 6, 8, FLAG]
ZETA = np.arange(0, 6.01, 0.25)


def weight(zeta):
    """Probability of |z| on the grid."""
    density = norm.pdf(Z - zeta) + norm.pdf(Z + zeta)
    density[0] /= 2
    return density * STEP


def best(lever, flagged=0.03, covered=0.97):
    """The largest protection of the worst zeta."""
    widths = np.where(np.isinf(M), NEARLY_ALL, M)
    flags = np.isinf(M)
    variables = len(Z) * len(M) + 1
    rows, limits = [], []

    def limit(of_z, of_m, last, most):
        row = np.zeros(variables)
        row[:-1] = (of_z[:, None] * of_m).ravel()
        row[-1] = last
        rows.append(row)
        limits.append(most)

    straight = weight(0)
    limit(straight, flags, 0, flagged)
    covers = np.where(flags, 0, 2 * norm.cdf(1.96 * widths) - 1)
    limit(straight, covers - covered * ~flags, 0, 0)
    for zeta in ZETA:
        safe = norm.cdf(2 * widths - lever * zeta) - norm.cdf(-2 * widths - lever * zeta)
        limit(-weight(zeta), safe, 1, 0)
    whole = sparse.hstack([sparse.kron(sparse.eye(len(Z)), np.ones((1, len(M)))), sparse.csr_matrix((len(Z), 1))])
    goal = np.zeros(variables)
    goal[-1] = -1
    found = linprog(
        goal,
        A_ub=np.array(rows),
        b_ub=limits,
        A_eq=whole,
        b_eq=np.ones(len(Z)),
        bounds=[(0, 1)] * variables,
        method="highs",
    )
    return found.x[-1]


if __name__ == "__main__":
    root = np.sqrt(5) / 2
    print("L, worst protection at best (3 % flagged, 97 % covered)")
    for lever in (0.5, 0.8, 1, root, 1.3, 1.5, 2):
        print(f"{lever:.2f}  {100 * best(lever):.1f} %")
    print("L = sqrt(5)/2: flagged, covered, worst protection at best")
    for flagged, covered in ((0.005, 0.97), (0.03, 0.97), (0.03, 0.98), (0.03, 0.99)):
        print(f"{100 * flagged:.1f} %  {100 * covered:.0f} %  {100 * best(root, flagged, covered):.1f} %")
