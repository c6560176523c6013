#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Starts and latest starts of activities with unlimited resources, by networkx.

Usage: levelling_check.py WORKLOADS.json ANSWERS.json
A day is one slot. Every figure is a longest path that networkx finds between "begin" and "end"; the
lengths of the links are those that the head of core/plan/levelling.h gives: work, and waiting less
the day on which the work was done.
"""
import json
import sys

import networkx as nx


def answer(activities):
    graph = nx.DiGraph()
    for index, activity in enumerate(activities):
        work, wait = activity["work"], activity["wait"]
        graph.add_edge("begin", index, slots=activity["release"])
        graph.add_edge(index, "end", slots=work + wait)
        for after, other in enumerate(activities):
            if index in other["after"]:
                graph.add_edge(index, after, slots=work + max(0, wait - 1))

    def longest(nodes):
        return nx.dag_longest_path_length(graph.subgraph(nodes), weight="slots")

    length = longest(graph.nodes)
    return {
        "end": length,
        "start": [longest({"begin", i} | nx.ancestors(graph, i)) for i in range(len(activities))],
        "latest": [length - longest({i, "end"} | nx.descendants(graph, i))
                   for i in range(len(activities))],
    }


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        workloads = json.load(file)
    with open(sys.argv[2], "w", encoding="utf-8") as file:
        json.dump([answer(activities) for activities in workloads], file)


main()
