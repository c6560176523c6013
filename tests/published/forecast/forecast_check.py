#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Answers what the forecast answers, where it can be had without playing the plan through.

Usage: forecast_check.py QUESTIONS.json ANSWERS.json
- quantiles: of the beta distribution that PERT uses, by scipy's own inverse.
- maxima: mean and quantiles of the later of two independent waits, by numerical integration.
- networks: total float of each node and length, by longest paths of networkx.
"""
import json
import sys

import networkx as nx
from scipy import integrate, optimize, stats


def pert(least, likely, most):
    mode = (likely - least) / (most - least)
    return stats.beta(1 + 4 * mode, 5 - 4 * mode, loc=least, scale=most - least)


def maximum(question):
    a, b = (pert(*estimate) for estimate in question["estimates"])
    low = max(a.ppf(0), b.ppf(0))
    high = max(a.ppf(1), b.ppf(1))
    # the mean from the distribution function of the maximum, F(x) G(x)
    below, _ = integrate.quad(lambda x: 1 - a.cdf(x) * b.cdf(x), low, high, limit=200)
    mean = low + below
    second, _ = integrate.quad(lambda x: 2 * x * (1 - a.cdf(x) * b.cdf(x)), low, high, limit=200)
    deviation = (low * low + second - mean * mean) ** 0.5
    at = [optimize.brentq(lambda x, q=q: a.cdf(x) * b.cdf(x) - q, low, high)
          for q in question["quantiles"]]
    # the first is the later one with the chance that it is above the second
    first, _ = integrate.quad(lambda x: a.pdf(x) * b.cdf(x), a.ppf(0), a.ppf(1), limit=200)
    return {"mean": mean, "deviation": deviation, "quantiles": at, "first": first}


def floats(question):
    graph = nx.DiGraph()
    days = question["days"]
    graph.add_nodes_from(range(len(days)))
    for node, before in enumerate(question["after"]):
        graph.add_edges_from((other, node) for other in before)
    order = list(nx.topological_sort(graph))
    early = {}
    for node in order:
        early[node] = max((early[b] + days[b] for b in graph.predecessors(node)), default=0)
    length = max(early[n] + days[n] for n in order)
    tail = {}
    for node in reversed(order):
        tail[node] = days[node] + max((tail[a] for a in graph.successors(node)), default=0)
    assert length == nx.dag_longest_path_length(
        nx.DiGraph((b, a, {"weight": days[b]}) for b, a in
                   list(graph.edges) + [(n, "end") for n in order]), weight="weight")
    return {"length": length, "float": [length - tail[n] - early[n] for n in range(len(days))]}


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        questions = json.load(file)
    answers = {
        "quantiles": [[pert(*q["estimate"]).ppf(u) for u in q["at"]]
                      for q in questions["quantiles"]],
        "maxima": [maximum(q) for q in questions["maxima"]],
        "networks": [floats(q) for q in questions["networks"]],
    }
    with open(sys.argv[2], "w", encoding="utf-8") as file:
        json.dump(answers, file)


if __name__ == "__main__":
    main()
