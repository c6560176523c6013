#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Answers what core/plan answers, from the definitions in core/plan/network.h alone, by networkx.

Usage: networkx_check.py NETWORKS.json ANSWERS.json
The networks are what networkx_test.cpp writes; it compares the answers with its own. Every length
is a longest path that networkx finds, every reach its ancestors or descendants: slow, and made of
other parts than the program.
"""
import datetime
import json
import sys

import networkx as nx

KINDS = ["do", "order", "chase", "find out", "pay", "test", "ask"]


def waits_graph(tasks):
    """An edge from each task to each one it waits on."""
    graph = nx.DiGraph()
    graph.add_nodes_from(range(len(tasks)))
    for index, task in enumerate(tasks):
        graph.add_edges_from((index, before) for before in task["after"])
    return graph


def shortest_loop(waits, first, lasts):
    """The shortest, then lowest, of the ways first -> one of lasts -> ... -> first, told backwards:
    first, then each task that waits on the one before it."""
    ways = []
    for last in lasts:
        if last == first:
            ways.append([first])
        elif nx.has_path(waits, last, first):
            ways.extend([first] + path[:-1] for path in nx.all_shortest_paths(waits, last, first))
    if not ways:
        return []
    way = min(ways, key=lambda way: (len(way), way))
    return [first] + way[:0:-1]


def loop_answer(waits):
    on_a_loop = [node for component in nx.strongly_connected_components(waits)
                 for node in component if len(component) > 1 or waits.has_edge(node, node)]
    if not on_a_loop:
        return []
    first = min(on_a_loop)
    return shortest_loop(waits, first, list(waits.successors(first)))


def passes(tasks, deadline):
    """Early and late times of the tasks not done, each a longest path from start or to end."""
    graph = nx.DiGraph()
    graph.add_nodes_from(["start", "end"])
    undone = [i for i, task in enumerate(tasks) if not task["done"]]
    for i in undone:
        graph.add_edge("start", i, days=0)
        graph.add_edge(i, "end", days=tasks[i]["elapsedDays"])
        for before in tasks[i]["after"]:
            if not tasks[before]["done"]:
                graph.add_edge(before, i, days=tasks[before]["elapsedDays"])

    def longest(nodes):
        return nx.dag_longest_path_length(graph.subgraph(nodes), weight="days")

    length = longest(graph.nodes)
    result = {"length": length, "earlyStart": [0] * len(tasks), "earlyFinish": [0] * len(tasks),
              "lateStart": [0] * len(tasks), "lateFinish": [0] * len(tasks)}
    end = length if deadline is None else deadline
    for i in undone:
        days = tasks[i]["elapsedDays"]
        early = longest(nx.ancestors(graph, i) | {i})
        late = end - longest(nx.descendants(graph, i) | {i})
        result["earlyStart"][i] = early
        result["earlyFinish"][i] = early + days
        result["lateStart"][i] = late
        result["lateFinish"][i] = late + days
    return result


def hold_ups(tasks, milestone):
    if tasks[milestone]["done"]:
        return {"chain": [], "chainDays": 0, "driving": [], "moves": []}
    open_links = nx.DiGraph()
    for i, task in enumerate(tasks):
        if not task["done"]:
            open_links.add_node(i)
            open_links.add_edges_from((b, i) for b in task["after"] if not tasks[b]["done"])
    chain = open_links.subgraph(nx.ancestors(open_links, milestone) | {milestone})

    def tail(task):
        """From the start of the task to the end of the milestone."""
        rest = nx.DiGraph()
        rest.add_node(task)
        below = chain.subgraph(nx.descendants(chain, task) | {task})
        rest.add_weighted_edges_from((a, b, tasks[a]["elapsedDays"]) for a, b in below.edges)
        return nx.dag_longest_path_length(rest) + tasks[milestone]["elapsedDays"]

    tails = {task: tail(task) for task in chain}
    groups = {}
    for task in sorted(chain):
        unmet = [need for need in tasks[task]["needs"] if not need["met"]]
        for need in unmet:
            groups.setdefault((need["move"], need["subject"]), []).append((task, need))
        if not unmet and all(tasks[before]["done"] for before in tasks[task]["after"]):
            groups[("do", tasks[task]["key"])] = [(task, None)]

    moves = []
    days_of_task = {}
    for (kind, subject), members in groups.items():
        owners = {task for task, _ in members}
        frees = set().union(*(nx.descendants(chain, task) for task in owners))
        if kind == "do":
            task = members[0][0]
            title = tasks[task]["title"] or tasks[task]["key"]
            why = "under way" if tasks[task]["started"] else "can start now"
            needs = []
        else:
            frees |= owners
            # max gives the first of equals
            slowest = max((need for _, need in members), key=lambda need: need["daysToMeet"])
            title = slowest["subjectName"] or subject
            why = slowest["reason"]
            needs = [need["key"] for _, need in members]
        for task, need in members:
            days = (need["daysToMeet"] if need else 0) + tails[task]
            days_of_task[task] = max(days, days_of_task.get(task, 0))
        days = max((need["daysToMeet"] if need else 0) + tails[task] for task, need in members)
        date = tasks[milestone]["date"]
        latest = None
        if date is not None:
            latest = (datetime.date.fromisoformat(date) - datetime.timedelta(days)).isoformat()
        moves.append({"kind": kind, "subject": subject, "title": title, "why": why, "needs": needs,
                      "for": sorted(owners), "frees": sorted(frees), "chainDays": days,
                      "latestStart": latest})
    moves.sort(key=lambda move: (-move["chainDays"], -len(move["frees"]),
                                 move["subject"].encode("utf-16-be"), KINDS.index(move["kind"])))

    chain_days = max(days_of_task.values())
    driving = [min(task for task, days in days_of_task.items() if days == chain_days)]
    while driving[-1] != milestone:
        after = sorted(chain.successors(driving[-1]))
        longest = max(tails[task] for task in after)
        driving.append(next(task for task in after if tails[task] == longest))
    return {"chain": sorted(chain), "chainDays": chain_days, "driving": driving, "moves": moves}


def answer(asked):
    tasks = asked["tasks"]
    waits = waits_graph(tasks)
    acyclic = nx.is_directed_acyclic_graph(waits)
    result = {
        "acyclic": acyclic,
        "loop": loop_answer(waits),
        "loopsIfLinked": [shortest_loop(waits, task, [before])
                          for before, task in asked["links"]],
    }
    if acyclic:
        result["order"] = list(nx.lexicographical_topological_sort(waits.reverse()))
        result["pass"] = passes(tasks, None)
        result["passToDeadline"] = passes(tasks, asked["deadline"])
        result["holdUps"] = hold_ups(tasks, asked["milestone"])
    return result


def main():
    with open(sys.argv[1], encoding="utf-8") as networks:
        answers = [answer(asked) for asked in json.load(networks)]
    with open(sys.argv[2], "w", encoding="utf-8") as out:
        json.dump(answers, out)


if __name__ == "__main__":
    main()
