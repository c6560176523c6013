# SPDX-License-Identifier: GPL-3.0-or-later
"""Usable energy of a pack at constant power, by scipy's quadrature and root finder.

Reads one case a line as JSON: {"curve": [[s, V], ...], "charge": C, "inner": ohm, "power": W,
"floor": V, "highest": s, "lowest": s}; writes "energy ends" a line.
"""

import json
import sys

import numpy as np
from scipy.integrate import quad
from scipy.optimize import brentq


def solve(case):
    places, volts = np.array(case["curve"]).T
    r, p = case["inner"], case["power"]

    def loaded(s):
        """The voltage under load, as the higher root of v·(V − v)/r = p; below zero if none."""
        v = np.interp(s, places, volts)
        root = v * v - 4 * r * p
        return (v + np.sqrt(root)) / 2 if root >= 0 else root - case["floor"]

    end, top = case["lowest"], case["highest"]
    # a load that sits exactly on its power limit is caught by the sign of the root
    over = lambda s: loaded(s) - case["floor"]
    if over(top) < 0:
        return 0.0, top
    if over(end) < 0:
        end = brentq(over, end, top, xtol=1e-15, rtol=1e-14)
    inside = [s for s in places if end < s < top]
    edges = sorted({end, top, *inside})
    energy = sum(
        quad(loaded, a, b, epsabs=0, epsrel=1e-11, limit=200)[0] for a, b in zip(edges, edges[1:])
    )
    return energy * case["charge"], end


for line in sys.stdin:
    print("%.17g %.17g" % solve(json.loads(line)))
