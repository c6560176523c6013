# SPDX-License-Identifier: GPL-3.0-or-later
# Second opinion on splitting into equal groups and on cross-flow radiators, by scipy.
# Reads a JSON list of questions, writes a JSON list of answers; status 3 without scipy.
import json
import sys

try:
    import numpy as np
    from scipy.integrate import quad
    from scipy.optimize import Bounds, LinearConstraint, milp
    from scipy.special import ive
except ImportError as missing:
    print(missing, file=sys.stderr)
    sys.exit(3)


def grouping(q):
    """The least spread, as an integer program: x[i, g] tells item i into group g."""
    first = np.array(q["first"])
    second = np.array(q["second"])
    size, weight = q["size"], q["weight"]
    items = len(first)
    groups = items // size
    first = first * weight * groups / first.sum()
    second = second * (1 - weight) * groups / second.sum()
    ints = items * groups
    count = ints + 4  # and the least and most of either sum
    rows, low, high = [], [], []

    def add(row, least, most):
        rows.append(row)
        low.append(least)
        high.append(most)

    for i in range(items):
        row = np.zeros(count)
        row[i * groups : (i + 1) * groups] = 1
        add(row, 1, 1)
    for g in range(groups):
        row = np.zeros(count)
        row[g:ints:groups] = 1
        add(row, size, size)
        for values, at in ((first, ints), (second, ints + 2)):
            row = np.zeros(count)
            row[g:ints:groups] = values
            row[at] = -1
            add(row, 0, np.inf)
            row = row.copy()
            row[at] = 0
            row[at + 1] = -1
            add(row, -np.inf, 0)
    cost = np.zeros(count)
    cost[ints:] = [-1, 1, -1, 1]
    upper = np.concatenate([np.ones(ints), np.full(4, np.inf)])
    found = milp(
        cost,
        constraints=LinearConstraint(np.array(rows), low, high),
        bounds=Bounds(np.zeros(count), upper),
        integrality=np.concatenate([np.ones(ints), np.zeros(4)]),
        options={"mip_rel_gap": 0},
    )
    return found.fun


def crossflow(q):
    """Nusselt's solution, both sides unmixed, integrated over the outlet of the smaller stream.

    What that stream has given off at y along the other one:
    integral of exp(-u - y) * I0(2 * sqrt(u * y)) du, u from 0 to n.
    """
    n, r = q["n"], q["r"]

    def leaving(y):
        kernel = lambda u: np.exp(-(np.sqrt(u) - np.sqrt(y)) ** 2) * ive(0, 2 * np.sqrt(u * y))
        return quad(kernel, 0, n, epsabs=1e-10)[0]

    return quad(leaving, 0, r * n, epsabs=1e-9)[0] / (r * n)


with open(sys.argv[1], encoding="utf-8") as file:
    questions = json.load(file)
answers = [{"grouping": grouping, "crossflow": crossflow}[q["kind"]](q) for q in questions]
with open(sys.argv[2], "w", encoding="utf-8") as file:
    json.dump(answers, file)
