"""The order of the day against a mixed-integer program of SciPy, which knows nothing of how foilwork searches."""

import itertools
import random

import numpy as np
import pytest
from scipy.optimize import Bounds, LinearConstraint, milp

from foilwork import FoilworkError, plan_file
from foilwork.day import Before, Floor, SectionWork, arrange, in_this_order, share_floor

FAR = 1_000.0


def optimum(work: list[SectionWork], before: list[Before], floor: Floor) -> float:
    """The earliest finish of one pair of hands, without looks.

    Steps are put on and rinsed by turns; which step stands at which place is binary. A step that puts on begins when
    the one before it ends; a rinse may wait.
    """
    count = len(work)
    places = 2 * count
    size = places * places + places + 2 * count + 1
    begin, goes, water, end = places * places, places * places + places, places * places + places + count, size - 1
    rows: list[np.ndarray] = []
    lows: list[float] = []
    highs: list[float] = []

    def is_at(step: int, place: int) -> int:
        return step * places + place

    def add(terms: list[tuple[int, float]], low: float, high: float = np.inf) -> None:
        row = np.zeros(size)
        for place, factor in terms:
            row[place] += factor
        rows.append(row)
        lows.append(low)
        highs.append(high)

    blocks = [floor.mix_min + one.apply_min for one in work]
    takes = [*blocks, *[floor.rinse_min] * count]

    def rinse_at(place: int, factor: float) -> list[tuple[int, float]]:
        return [(is_at(count + i, place), factor) for i in range(count)]

    for i in range(places):
        add([(is_at(i, place), 1) for place in range(places)], 1, 1)
        add([(is_at(step, i), 1) for step in range(places)], 1, 1)
    add([(begin, 1)], 0, 0)
    for place in range(1, places):
        last = [(begin + place - 1, -1.0)] + [(is_at(step, place - 1), -takes[step]) for step in range(places)]
        mine = [(begin + place, 1.0), *last]
        add(mine, 0)
        # A walk to the basin where the step before was no rinse.
        add([*mine, *rinse_at(place, -floor.walk_min), *rinse_at(place - 1, floor.walk_min)], 0)
        add([*mine, *rinse_at(place, -FAR)], -np.inf, 0)
    for i, one in enumerate(work):
        for place in range(places):
            for step, when in ((i, goes + i), (count + i, water + i)):
                add([(when, 1), (begin + place, -1), (is_at(step, place), -FAR)], -FAR)
                add([(when, 1), (begin + place, -1), (is_at(step, place), FAR)], -np.inf, FAR)
        add([(water + i, 1), (goes + i, -1)], blocks[i] + one.develop_min, floor.mix_min + one.longest_min)
        add([(end, 1), (water + i, -1)], floor.rinse_min)
    for rule in before:
        if rule.until == "rinsed":
            add([(goes + rule.then, 1), (water + rule.first, -1)], floor.rinse_min)
        else:
            add([(goes + rule.then, 1), (goes + rule.first, -1)], blocks[rule.first])
    cost = np.zeros(size)
    cost[end] = 1
    whole = np.zeros(size)
    whole[:begin] = 1
    upper = np.full(size, FAR)
    upper[:begin] = 1
    found = milp(
        cost, constraints=LinearConstraint(np.array(rows), lows, highs), integrality=whole, bounds=Bounds(0, upper)
    )
    assert found.success
    return float(found.fun)


@pytest.mark.parametrize("seed", range(20))
def test_the_best_order_is_that_of_the_program(seed: int) -> None:
    chance = random.Random(seed)
    count = chance.randint(1, 3) if seed < 16 else 4
    work = []
    for i in range(count):
        apply, develop = chance.randint(2, 14), chance.randint(4, 30)
        longest = apply + develop + chance.randint(3, 25)
        work.append(SectionWork(f"s{i}", apply_min=apply, develop_min=develop, longest_min=longest))
    pairs = [pair for pair in itertools.combinations(range(count), 2) if chance.random() < 0.25]
    before = [Before(a, b, until=chance.choice(["applied", "rinsed"])) for a, b in pairs]
    floor = Floor(look_min=0, mix_min=chance.randint(0, 4), rinse_min=chance.randint(0, 5))
    day = arrange(work, before, floor)
    want = optimum(work, before, floor)
    assert day.finish_min == pytest.approx(want, abs=1e-4)
    assert day.proven


def test_a_plan_knows_its_day() -> None:
    plan = plan_file("examples/soft-gradient.toml")
    day = plan.day
    assert day is not None
    assert day.proposed is not None
    assert day.as_planned is not None
    assert day.proposed.finish_min <= day.as_planned.finish_min
    assert plan.chair.clock == "day"
    assert day.finish_min is not None
    assert plan.chair.sections_min + plan.chair.after_rinse_min == pytest.approx(day.finish_min, abs=1e-6)
    assert plan.booking.book_min is not None
    assert plan.booking.book_min % 15 == 0
    assert 0 <= plan.booking.book_min - plan.chair.total_min < 15


def test_what_python_hands_over_is_checked() -> None:
    with pytest.raises(FoilworkError, match="rule of order"):
        Before(0, 1, rule="whim")
    with pytest.raises(FoilworkError, match="no section: give at least one"):
        arrange([])
    nape = SectionWork("nape", apply_min=10, develop_min=20, longest_min=40)
    with pytest.raises(FoilworkError, match="the order must name each of 1 sections once"):
        in_this_order([nape], [3])
    with pytest.raises(FoilworkError, match="the floor has no basin"):
        share_floor([arrange([nape])], Floor(basins=0))


def test_the_day_of_a_plan_lies_on_a_floor_as_an_arranged_one_does() -> None:
    day = plan_file("examples/soft-gradient.toml").day
    assert day is not None and day.proposed is not None
    shared = share_floor([day.proposed, day.proposed], Floor(people=2))
    # One basin: the second guest is begun later by one rinse of 3 min.
    assert shared.finish_min == day.proposed.finish_min + 3
    alone = arrange([SectionWork("nape", apply_min=15, develop_min=35, longest_min=60)])
    assert share_floor([alone]).in_turn_min == alone.finish_min
    for wrong in (None, 3):
        with pytest.raises(TypeError, match=r"plan\.day\.proposed"):
            share_floor([wrong])  # type: ignore[list-item]
