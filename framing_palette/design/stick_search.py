"""One-dimensional cutting in whole numbers: which pieces share a stick.

Sizes are whole steps of any common unit, kerf included. Groups are lists of positions.
"""

from collections.abc import Sequence
from functools import cache
from typing import Final

Groups = list[list[int]]
# Search effort for one stick of a large batch, in pieces tried.
MOST_TRIES: Final = 50_000


def shortest_that_holds(needed: int, stock: Sequence[int]) -> int | None:
    """Return the shortest stick of ascending ``stock`` that holds a length; None if none does."""
    return next((stick for stick in stock if stick >= needed), None)


def best_groups(sizes: Sequence[int], stock: Sequence[int]) -> Groups:
    """Return the best partition by trying every one; each size must fit the longest stick.

    Best is least length bought, then fewest sticks, then the longest single offcut. The effort
    grows with 3 to the power of the number of sizes.
    """
    sums = [0] * (1 << len(sizes))
    for mask in range(1, len(sums)):
        lowest = (mask & -mask).bit_length() - 1
        sums[mask] = sums[mask & (mask - 1)] + sizes[lowest]
    sticks = [shortest_that_holds(needed, stock) for needed in sums]

    @cache
    def best(mask: int) -> tuple[tuple[int, int, int], tuple[int, ...]]:
        if not mask:
            return (0, 0, 0), ()
        first = mask & -mask
        others = subset = mask ^ first
        plans = []
        while True:
            group = subset | first
            stick = sticks[group]
            if stick is not None:
                (bought, count, offcut), groups = best(mask ^ group)
                # An offcut counts negatively: the longer the better.
                cost = (bought + stick, count + 1, min(offcut, sums[group] - stick))
                plans.append((cost, (group, *groups)))
            if not subset:
                return min(plans)
            subset = (subset - 1) & others

    masks = best(len(sums) - 1)[1]
    return [[place for place in range(len(sizes)) if mask >> place & 1] for mask in masks]


def filled_groups(sizes: Sequence[int], stock: Sequence[int]) -> Groups:
    """Return a good partition of many pieces; ``sizes`` must descend.

    The better, by least length bought and then fewest sticks, of two ways: filling one stick after
    another as closely as can be found, and laying each piece into the first stick with room.
    """

    def cost(groups: Groups) -> tuple[int, int]:
        needed = [sum(sizes[place] for place in group) for group in groups]
        return sum(shortest_that_holds(size, stock) or 0 for size in needed), len(groups)

    return min(_closest_groups(sizes, stock), _first_fit_groups(sizes, max(stock)), key=cost)


def _first_fit_groups(sizes: Sequence[int], stick: int) -> Groups:
    groups: Groups = []
    rooms: list[int] = []
    for place, size in enumerate(sizes):
        at = next((at for at, room in enumerate(rooms) if room >= size), None)
        if at is None:
            groups.append([place])
            rooms.append(stick - size)
        else:
            groups[at].append(place)
            rooms[at] -= size
    return groups


def _closest_groups(sizes: Sequence[int], stock: Sequence[int]) -> Groups:
    """Fill one stick after another as closely as a bounded search finds.

    Each stick is led by the longest piece that is left, and is of the length that leaves the
    smallest share over.
    """
    left = list(range(len(sizes)))
    groups = []
    while left:
        lead, rest = left[0], left[1:]
        fills = [
            (stick, [lead, *_closest_fill(stick - sizes[lead], rest, sizes)])
            for stick in stock
            if sizes[lead] <= stick
        ]
        _, group = max(fills, key=lambda fill: sum(sizes[place] for place in fill[1]) / fill[0])
        groups.append(group)
        left = [place for place in left if place not in group]
    return groups


def _closest_fill(room: int, places: Sequence[int], sizes: Sequence[int]) -> list[int]:
    """Return the pieces that leave least of the room, trying a bounded number of them."""
    best: list[int] = []
    best_room = room
    tries = 0

    def search(start: int, room: int, chosen: list[int]) -> None:
        nonlocal best, best_room, tries
        if room < best_room:
            best, best_room = list(chosen), room
        tried = -1
        for index in range(start, len(places)):
            if tries >= MOST_TRIES or not best_room:
                return
            size = sizes[places[index]]
            # A piece as long as one just tried in this position leads to the same fills.
            if size > room or size == tried:
                continue
            tried = size
            tries += 1
            search(index + 1, room - size, [*chosen, places[index]])

    search(0, room, [])
    return best
