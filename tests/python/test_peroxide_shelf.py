"""Blends from a shelf against SciPy's solvers (HiGHS): linear programmes, and integer ones for counted bottles."""

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np
import pytest
from numpy import float64
from numpy.typing import NDArray
from scipy.optimize import Bounds, LinearConstraint, linprog, milp

from foilwork import FoilworkError
from foilwork.peroxide import Portion, Stock, blend_shelf

Array = NDArray[float64]


class Case(NamedTuple):
    """A shelf as the solvers see it."""

    strengths: Array
    prices: Array
    in_hand: list[float | None]
    target: float
    total: float

    @property
    def caps(self) -> Array:
        return np.array([self.total if mass is None else min(mass, self.total) for mass in self.in_hand])

    @property
    def equations(self) -> tuple[Array, Array]:
        rows = np.vstack([np.ones_like(self.strengths), self.strengths - self.target])
        return rows, np.array([self.total, 0.0])

    def stocks(self) -> list[Stock]:
        parts = zip(self.strengths, self.prices, self.in_hand, strict=True)
        return [Stock(str(i), w, price_per_kg=p, in_hand_g=m) for i, (w, p, m) in enumerate(parts)]

    def masses(self, portions: list[Portion]) -> Array:
        masses = np.zeros_like(self.strengths)
        for portion in portions:
            masses[int(portion.stock.name)] = portion.mass_g
        return masses


def cases(seed: int, count: int, most: int) -> Iterator[Case]:
    """Shelves with ties: whole percents half of the time, equal prices now and then, targets on a bottle's strength."""
    rng = np.random.default_rng(seed)
    for _ in range(count):
        n = int(rng.integers(1, most + 1))
        strengths = rng.uniform(0, 40, n) if rng.random() < 0.5 else rng.integers(0, 13, n).astype(float)
        prices = rng.uniform(1, 20, n) if rng.random() < 0.7 else rng.integers(1, 4, n).astype(float)
        in_hand = [None if rng.random() < 0.4 else float(rng.uniform(1, 80)) for _ in range(n)]
        low, high = strengths.min(), strengths.max()
        target = float(rng.choice(strengths)) if rng.random() < 0.1 else float(rng.uniform(low, high))
        yield Case(strengths, prices, in_hand, target, float(rng.uniform(5, 100)))


def check_feasible(case: Case, masses: Array) -> None:
    assert masses.sum() == pytest.approx(case.total, rel=1e-9)
    assert abs((case.strengths - case.target) @ masses) < 1e-7 * case.total
    assert np.all(masses >= 0) and np.all(masses <= case.caps * (1 + 1e-9))


def test_least_cost_is_that_of_linprog() -> None:
    """Source: scipy.optimize.linprog on 4000 random shelves; cost to 1e-7, the feasibility tolerance of HiGHS."""
    feasible = 0
    for case in cases(1, 4000, 8):
        rows, right = case.equations
        limits = np.column_stack([np.zeros_like(case.caps), case.caps])
        reference = linprog(case.prices / 1000, A_eq=rows, b_eq=right, bounds=limits, method="highs")
        if reference.status == 2:
            with pytest.raises(FoilworkError):
                blend_shelf(case.stocks(), case.target, case.total)
            continue
        assert reference.status == 0
        feasible += 1
        blend = blend_shelf(case.stocks(), case.target, case.total)
        check_feasible(case, case.masses(blend.portions))
        assert blend.cost == pytest.approx(reference.fun, rel=1e-7, abs=1e-9)
    assert 1500 < feasible < 3900


def solve_counted(case: Case, cost: Array, extra: list[LinearConstraint]) -> float | None:
    """Minimises over masses and bottles opened (0 or 1), side by side; None when nothing is feasible."""
    n = len(case.strengths)
    rows, right = case.equations
    link = np.hstack([np.eye(n), -np.diag(case.caps)])
    constraints = [
        LinearConstraint(np.hstack([rows, np.zeros_like(rows)]), right, right),
        LinearConstraint(link, -np.inf, 0.0),
        *extra,
    ]
    whole = np.concatenate([np.zeros(n), np.ones(n)])
    limits = Bounds(np.zeros(2 * n), np.concatenate([case.caps, np.ones(n)]))
    found = milp(cost, constraints=constraints, integrality=whole, bounds=limits)
    return float(found.fun) if found.status == 0 else None


def test_fewest_bottles_are_those_of_milp() -> None:
    """Source: scipy.optimize.milp on random shelves: the count, then the cost at that count."""
    compared = 0
    for case in cases(2, 300, 6):
        n = len(case.strengths)
        count_bottles = np.concatenate([np.zeros(n), np.ones(n)])
        count = solve_counted(case, count_bottles, [])
        if count is None:
            with pytest.raises(FoilworkError):
                blend_shelf(case.stocks(), case.target, case.total, objective="fewest-bottles")
            continue
        blend = blend_shelf(case.stocks(), case.target, case.total, objective="fewest-bottles")
        check_feasible(case, case.masses(blend.portions))
        assert len(blend.portions) == round(count)
        at_most = LinearConstraint(count_bottles[np.newaxis, :], 0, round(count) + 0.5)
        cost = solve_counted(case, np.concatenate([case.prices / 1000, np.zeros(n)]), [at_most])
        assert blend.cost == pytest.approx(cost, rel=1e-5)
        compared += 1
    assert compared > 100


def test_least_leftover_is_that_of_milp() -> None:
    """Source: scipy.optimize.milp: least (amount opened less amount used), where an amount in hand is known."""
    compared = 0
    for case in cases(3, 300, 6):
        counts = np.array([mass is not None for mass in case.in_hand], dtype=float)
        amounts = np.array([mass or 0.0 for mass in case.in_hand])
        left = solve_counted(case, np.concatenate([-counts, amounts]), [])
        if left is None:
            continue
        blend = blend_shelf(case.stocks(), case.target, case.total, objective="least-leftover")
        check_feasible(case, case.masses(blend.portions))
        assert blend.leftover_g == pytest.approx(left, abs=1e-4)
        compared += 1
    assert compared > 100


def test_what_cannot_be_made_says_what_can() -> None:
    shelf = [Stock("strong", 12, in_hand_g=5), Stock("water", 0)]
    with pytest.raises(
        FoilworkError, match=r"60 g can be anything from 0.00 % w/w to 1.00 % w/w, and at most 10.0 g of"
    ):
        blend_shelf(shelf, 6, 60)
    with pytest.raises(FoilworkError, match="the strongest stock is 12 % w/w"):
        blend_shelf(shelf, 20, 60)
    with pytest.raises(FoilworkError, match="the shelf is empty"):
        blend_shelf([], 6, 60)
    with pytest.raises(FoilworkError, match='two stocks are called "strong"'):
        blend_shelf([shelf[0], shelf[0]], 6, 60)
    with pytest.raises(FoilworkError, match="16"):
        blend_shelf([Stock(str(i), i) for i in range(17)], 6, 60, objective="fewest-bottles")
    with pytest.raises(FoilworkError, match="unknown objective"):
        blend_shelf(shelf, 6, 60, objective="best")  # type: ignore[arg-type]


def test_rounded_to_a_scale() -> None:
    shelf = [Stock("strong", 9, in_hand_g=500, price_per_kg=8), Stock("water", 0)]
    blend = blend_shelf(shelf, 4, 50)
    rounded = blend.round_to_scale(1)
    assert [portion.stock for portion in blend.portions] == shelf
    assert rounded.masses_g == [22.0, 28.0]
    assert rounded.total_g == 50.0
    assert rounded.strength_ww_percent.best == pytest.approx(9 * 22 / 50)
    assert blend.leftover_g == pytest.approx(500 - 50 * 4 / 9)


def test_bounds_of_the_bottles_reach_the_blend() -> None:
    """By hand: 20 g of 11 to 13 % with 40 g of 3 % are (20 x 11 + 120) / 60 to (20 x 13 + 120) / 60."""
    shelf = [Stock("strong", (11, 12, 13)), Stock("weak", 3)]
    blend = blend_shelf(shelf, 6, 60)
    assert tuple(blend.strength_ww_percent) == pytest.approx((17 / 3, 6, 19 / 3))
    assert tuple(blend.round_to_scale(1).strength_ww_percent) == pytest.approx((17 / 3, 6, 19 / 3))
