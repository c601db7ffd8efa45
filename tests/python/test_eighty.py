"""Of every model that gives bounds "of 80 of 100", the bounds hold 75 to 85 of 100 simulated guests or salons.

Lift has the same trial in Rust (``tests/properties/lift.rs``). Here the people are drawn by NumPy from the published
spreads between them, and what a salon writes down from distributions of our own choosing; the truth of each is known,
so what is counted is how often the bounds hold it.
"""

import datetime
import json
import math
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray

from foilwork import Bounds
from foilwork.hair import HairFacts, calibrated, fibre_density
from foilwork.head import hair_by_use, take_up
from foilwork.history import lessons

# The 90 % quantile of the normal distribution, from a handbook's table.
QUANTILE = 1.2815515655446004

Column = NDArray[np.float64]


def spread(rng: np.random.Generator, bounds: tuple[float, float, float] | Bounds[float], count: int) -> Column:
    """Log-normal on either side of the middle, with 10 of 100 beyond each bound."""
    low, best, high = bounds
    z = rng.standard_normal(count)
    sides = np.where(z > 0, math.log(high / best), math.log(best / low)) / QUANTILE
    return best * np.exp(z * sides)


def people(rng: np.random.Generator, count: int) -> Column:
    """Mass of all the hair by its length in g/cm, of people drawn from the published spreads.

    Hairs on a square centimetre vary by 0.26 between people around 211 ("density-of-people"), the cut through a hair by
    0.22 around 4216 um2 ("section-of-people"); 500 to 775 cm2 bear hair, 580 in the middle ("scalp-area").
    """

    def varying(middle: float, variation: float) -> Column:
        return middle * np.exp(rng.standard_normal(count) * math.sqrt(math.log1p(variation**2)))

    scalp, keratin = spread(rng, (500, 580, 775), count), spread(rng, fibre_density(), count)
    return scalp * varying(211, 0.26) * varying(4216, 0.22) * keratin * 1e-8


def held(truth: Column, bounds: list[tuple[float, float]]) -> float:
    low, high = np.transpose(bounds)
    return 100 * float(np.mean((low <= truth) & (truth <= high)))


def test_hair_of_people_nothing_is_known_of() -> None:
    rng = np.random.default_rng(21)
    truth = people(rng, 20_000)
    low, _, high = HairFacts().head().mass_per_length_g_per_cm
    assert 75 <= held(truth, [(low, high)] * len(truth)) <= 85


def after(narrowed: Callable[[float], HairFacts | None], truth: Column, seen: Column) -> float:
    """How often the bounds hold the hair, once something was seen of it."""
    bounds = []
    for one in seen:
        facts = narrowed(float(one))
        assert facts is not None
        low, _, high = facts.head().mass_per_length_g_per_cm
        bounds.append((low, high))
    return held(truth, bounds)


def test_hair_of_people_whose_ponytail_was_measured() -> None:
    """Of a tight ponytail 0.55 to 0.85 is hair (assumed, as the room says); its girth follows from that hair."""
    rng = np.random.default_rng(22)
    truth = people(rng, 2_000)
    packed = spread(rng, (0.55, 0.70, 0.85), len(truth)) * fibre_density().best
    girth = np.sqrt(truth / packed * 4 * math.pi)
    assert 75 <= after(lambda cm: HairFacts(ponytail_girth_cm=cm), truth, girth) <= 85


def test_hair_of_people_with_an_earlier_use() -> None:
    """What was used is the hair that carried it times its take-up, and repeats within a factor of 1.2 (assumed)."""
    rng = np.random.default_rng(23)
    truth = people(rng, 2_000)
    through = 18.0
    takes = spread(rng, take_up("block", lightens=False), len(truth))
    used = truth * through * takes * spread(rng, (1 / 1.2, 1, 1.2), len(truth))

    def known(used_g: float) -> HairFacts | None:
        by_use = hair_by_use(used_g, "block", through, share_percent=100)
        return None if by_use is None else HairFacts(by_use_g_per_cm=by_use)

    assert 75 <= after(known, truth, used) <= 85


def test_an_amount_after_one_use() -> None:
    rng = np.random.default_rng(24)
    truth = spread(rng, (60, 100, 150), 4_000)
    used = truth * spread(rng, (1 / 1.2, 1, 1.2), len(truth))
    bounds = [(b.low, b.high) for b in (calibrated((60, 100, 150), float(u)) for u in used)]
    assert 75 <= held(truth, bounds) <= 85


def written(**section: Any) -> str:
    on = section.pop("on", "2026-11-25")
    return json.dumps({"format": 1, "on": on, "title": "foils", "section": [{"name": "nape", **section}]})


@pytest.mark.parametrize("services", [3, 12])
def test_minutes_for_a_foil_of_many_colourists(services: int) -> None:
    """Each has a pace of her own and a spread around it; both the pace and the next service are to lie within."""
    rng = np.random.default_rng(25 + services)
    paces, bounds, following, ahead = rng.uniform(0.8, 2.5, 500), [], [], []
    for pace in paces:
        *minutes, coming = pace * np.exp(0.25 * rng.standard_normal(services + 1))
        learned = lessons("\n".join(written(foils=10, apply_min=10 * m) for m in minutes)).foils[0].min_per_foil
        assert learned.mean_low and learned.mean_high and learned.next_low and learned.next_high
        bounds.append((learned.mean_low, learned.mean_high))
        following.append((learned.next_low, learned.next_high))
        ahead.append(coming)
    assert 75 <= held(paces, bounds) <= 85
    assert 75 <= held(np.array(ahead), following) <= 85


def test_the_trend_of_waste_of_many_salons() -> None:
    """Waste moves by up to two points a month, and by three points from service to service."""
    rng = np.random.default_rng(27)
    trends, bounds = rng.uniform(-2, 2, 500), []
    start = datetime.date(2026, 1, 5)
    for trend in trends:
        days = np.sort(rng.choice(300, size=12, replace=False))
        shares = 30 + trend * (days - 150) / 30 + 3 * rng.standard_normal(len(days))
        rows = [
            written(on=(start + datetime.timedelta(days=int(day))).isoformat(), weighed_g=50, left_over_g=share / 2)
            for day, share in zip(days, shares, strict=True)
        ]
        waste = lessons("\n".join(rows)).waste
        assert waste and waste.change_low_percent_points is not None and waste.change_high_percent_points is not None
        bounds.append((waste.change_low_percent_points, waste.change_high_percent_points))
    assert 75 <= held(trends, bounds) <= 85
