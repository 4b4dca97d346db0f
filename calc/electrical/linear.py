"""Node voltages of a network of conductances, by taking out one node after another.

Our own few lines: numpy is not shipped to the page, and a van's network has some tens of nodes.
Not a matrix with pivoting either. Taking out a node puts a conductance between each two of its
neighbours (the star-mesh transformation), which is Gauss's elimination written in branches. So long
as the branches are positive nothing is ever subtracted, and a joint of a microohm beside a resistor
of a megohm keeps all its digits. A node with few neighbours leaves few branches behind: taking the
least connected first, a network that is nearly a tree costs little more than its own size.
"""

Rows = list[dict[int, float]]
"""For each node, the conductance [S] to each other node; each stands in both rows."""


def elimination_order(neighbours: list[set[int]]) -> list[int]:
    """Return the nodes so that the least connected is always taken out next.

    `neighbours` holds, for each node, the others that it has a branch to, ground left out.
    """
    left = {node: set(others) for node, others in enumerate(neighbours)}
    degree = [len(others) for others in neighbours]
    order = []
    while left:
        node = min(left, key=degree.__getitem__)
        others = left.pop(node)
        for other in others:
            row = left[other]
            row |= others
            row -= {node, other}
            degree[other] = len(row)
        order.append(node)
    return order


def node_voltages(
    order: list[int], rows: Rows, grounded: list[float], pushed: list[float]
) -> list[float] | None:
    """Return the voltage [V] of each node against ground when currents are pushed into the nodes.

    `order` is from `elimination_order`; `rows` are the branches between nodes; `grounded` [S] is
    what each node has to ground; `pushed` [A] is the current into each. The last three are used up.

    Conductances may be negative, as the slope of a constant-power load is. None where a node is
    left with no positive sum: then, and only then, the network is not positive definite.
    """
    sums = []
    for node in order:
        row = rows[node]
        push, ground = pushed[node], grounded[node]
        total = sum(row.values()) + ground
        if not total > 0:
            return None
        sums.append(total)
        for one, conductance in row.items():
            share = conductance / total
            pushed[one] += share * push
            grounded[one] += share * ground
            others = rows[one]
            del others[node]
            for two, other in row.items():
                if two != one:
                    others[two] = others.get(two, 0.0) + share * other
    voltages = [0.0] * len(order)
    for node, total in zip(reversed(order), reversed(sums), strict=True):
        above = pushed[node]
        for one, conductance in rows[node].items():
            above += conductance * voltages[one]
        voltages[node] = above / total
    return voltages
