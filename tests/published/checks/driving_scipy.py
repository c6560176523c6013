# SPDX-License-Identifier: GPL-3.0-or-later
# A second opinion on driving_scipy_test.cpp's integrals and roots, by scipy and numpy. Reads the
# questions named first, writes the answers named second. Exit code 3: a module is missing.
import json
import sys

try:
    import numpy
    from scipy import integrate, optimize
except ImportError as missing:
    print(missing, file=sys.stderr)
    sys.exit(3)

G = 9.80665


def steady(q, v):
    return q["mass"] * G * q["rolling"] + 0.5 * 1.2 * q["dragArea"] * v * v


def effort(q, v):
    best = 0.0
    for ratio in q["ratios"]:
        turning = v / q["radius"] * ratio
        if turning <= q["highest"] * (1 + 1e-9):
            torque = min(q["torque"], q["power"] / turning) if turning > 0 else q["torque"]
            best = max(best, torque * ratio * q["efficiency"] / q["radius"])
    return best


def kinks(q, to):
    # where a gear leaves level torque, ends, or another takes over
    places = [q["power"] / q["torque"] * q["radius"] / r for r in q["ratios"]]
    places += [q["highest"] * q["radius"] / r for r in q["ratios"]]
    for a in q["ratios"]:
        for b in q["ratios"]:
            places.append(q["power"] * q["radius"] / (q["torque"] * b) if a > b else 0)
    return sorted({p for p in places if 0 < p < to})


def sprint(q):
    to = q["to"]
    inner = lambda v: q["mass"] * q["rotating"] / (effort(q, v) - steady(q, v))
    edges = [0.0] + kinks(q, to) + [to]
    return sum(integrate.quad(inner, a, b, epsrel=1e-10)[0] for a, b in zip(edges, edges[1:]))


def top(q):
    fastest = max(q["highest"] * q["radius"] / r for r in q["ratios"])
    net = lambda v: effort(q, v) - steady(q, v)
    if net(fastest) >= 0:
        return fastest
    grid = numpy.linspace(1e-3, fastest, 20001)
    first = next(i for i, v in enumerate(grid) if net(v) < 0)
    return optimize.brentq(net, grid[first - 1], grid[first], xtol=1e-9)


def start(q):
    force = q["torque"] * max(q["ratios"]) * q["efficiency"] / q["radius"]
    short = lambda t: q["mass"] * G * (numpy.sin(t) + q["rolling"] * numpy.cos(t)) - force
    steepest = numpy.pi / 4
    return 1.0 if short(steepest) <= 0 else float(numpy.tan(optimize.brentq(short, 0, steepest)))


def cycle(q, points):
    # numpy in one sweep, tenths of a second
    times, speeds = numpy.array(points).T
    at = numpy.arange(0, round(times[-1] * 10) + 1) / 10.0
    v = numpy.interp(at, times, speeds)
    mean, change = (v[1:] + v[:-1]) / 2, (v[1:] - v[:-1]) * 10
    force = numpy.where(mean > 0, q["mass"] * G * q["rolling"], 0)
    force = force + 0.5 * 1.2 * q["dragArea"] * mean**2 + q["mass"] * q["rotating"] * change
    power = force * mean
    back = numpy.minimum(numpy.maximum(-power, 0) * 0.6 * numpy.minimum(1, mean / 5.0), 15e3)
    return [float(numpy.maximum(power, 0).sum() / 10), float(power.sum() / 10),
            float(back.sum() / 10)]


with open(sys.argv[1], encoding="utf-8") as file:
    asked = json.load(file)
answers = []
for q in asked["vehicles"]:
    answers.append({"sprint": sprint(q), "top": top(q), "start": start(q),
                    "cycles": [cycle(q, points) for points in asked["cycles"]]})
with open(sys.argv[2], "w", encoding="utf-8") as file:
    json.dump(answers, file)
