"""Kept records through Python: intervals against SciPy, means against NumPy, days against the calendar."""

import datetime
import itertools
import json
import statistics
from collections import defaultdict
from fractions import Fraction
from pathlib import Path
from typing import Any

import jsonschema
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

import foilwork
from foilwork.history import (
    forget,
    home_care,
    keep,
    lessons,
    read_records,
    read_records_csv,
    rebooking,
    records_csv,
    strand_readings,
    summarise,
)
from foilwork.record import LogEntry

EXAMPLES = Path(__file__).parents[2] / "examples"
RECORDS = (EXAMPLES / "juniper_and_tide_records.jsonl").read_text(encoding="utf-8")
COUNT = itertools.count()
SOFT = foilwork.plan_file(EXAMPLES / "soft-gradient.toml")


def line(on: str = "2026-11-25", guest: str | None = None, **section: Any) -> str:
    # Without a guest only its title tells a service from another of the same figures.
    title = f"foils {next(COUNT)}"
    record: dict[str, Any] = {"format": 1, "on": on, "title": title, "section": [{"name": "nape", **section}]}
    return json.dumps(record | ({"guest": guest} if guest else {})) + "\n"


def by_hand(figures: list[float]) -> tuple[float, float, float, float, float]:
    """Geometric mean, its 80 % interval and that of the next figure, by SciPy."""
    logs = np.log(figures)
    n, mean, sd = len(logs), float(np.mean(logs)), float(np.std(logs, ddof=1))
    off = float(stats.t.ppf(0.9, n - 1)) * sd
    of_mean, of_next = off / np.sqrt(n), off * np.sqrt(1 + 1 / n)
    logs_of = (mean, mean - of_mean, mean + of_mean, mean - of_next, mean + of_next)
    return tuple(float(np.exp(x)) for x in logs_of)  # type: ignore[return-value]


def test_a_margin_is_what_is_left_of_all_prices() -> None:
    """The figures that the book shows: sums of the lines themselves, as fractions, rounded at the end."""
    prices: defaultdict[str, Fraction] = defaultdict(Fraction)
    costs: defaultdict[str, Fraction] = defaultdict(Fraction)
    for record in map(json.loads, RECORDS.splitlines()):
        prices[record["colourist"]] += Fraction(record["price"])
        costs[record["colourist"]] += Fraction(record["cost"])
    found = {one.of: one.money[0].margin_percent for one in summarise(RECORDS, "colourist")}
    assert found == {who: f"{float((paid - costs[who]) / paid * 100):.2f}" for who, paid in prices.items()}


def test_a_service_kept_twice_counts_once() -> None:
    """Eight services, each kept twice: what is summed up is that of eight, and the lines that repeat are counted."""
    once, [twice] = summarise(RECORDS, "all")[0], summarise(RECORDS + RECORDS, "all")
    assert (once.kept_twice, twice.kept_twice, twice.services, twice.weighed_g) == (0, 8, 8, once.weighed_g)
    learned = lessons(RECORDS + RECORDS)
    assert (learned.records, learned.kept_twice) == (8, 8)
    assert learned.demand == lessons(RECORDS).demand
    assert strand_readings(RECORDS + RECORDS) == strand_readings(RECORDS)


@given(st.lists(st.floats(5.0, 60.0), min_size=2, max_size=12))
@settings(max_examples=60, deadline=None)
def test_minutes_for_a_foil_have_the_interval_of_student(minutes: list[float]) -> None:
    found = lessons("".join(line(foils=10, apply_min=m) for m in minutes)).foils[0].min_per_foil
    want = by_hand([m / 10 for m in minutes])
    got = (found.mean, found.mean_low, found.mean_high, found.next_low, found.next_high)
    assert got == pytest.approx(want, rel=1e-9)
    assert found.mean == pytest.approx(statistics.geometric_mean(m / 10 for m in minutes), rel=1e-12)


@pytest.mark.parametrize("count", [2, 3, 4, 5, 8, 30, 31, 121, 400, 401, 402, 600])
def test_few_and_many_figures_have_the_quantile_of_student(count: int) -> None:
    minutes = [14.0 + (i % 2) for i in range(count)]
    found = lessons("".join(line(foils=10, apply_min=m) for m in minutes)).foils[0].min_per_foil
    assert found.mean_low == pytest.approx(by_hand([m / 10 for m in minutes])[1], rel=1e-9)


@given(st.lists(st.tuples(st.floats(20, 90), st.floats(0, 15), st.floats(15, 80)), min_size=2, max_size=8))
@settings(max_examples=40, deadline=None)
def test_demand_is_used_over_expected(rows: list[tuple[float, float, float]]) -> None:
    text = "".join(line(weighed_g=w, left_over_g=left, expected_g=e, technique="weave") for w, left, e in rows)
    whole, weave = lessons(text).demand
    want = by_hand([(w - left) / e for w, left, e in rows])
    assert (whole.technique, weave.technique) == (None, "weave")
    for one in (whole.factor, weave.factor):
        assert (one.mean, one.mean_low, one.mean_high) == pytest.approx(want[:3], rel=1e-9)


@given(st.lists(st.tuples(st.floats(4, 10), st.floats(4, 10)), min_size=2, max_size=8))
@settings(max_examples=40, deadline=None)
def test_levels_off_have_the_interval_of_student(levels: list[tuple[float, float]]) -> None:
    found = lessons("".join(line(target_level=a, result_level=b) for a, b in levels)).level_off
    assert found is not None
    off = [b - a for a, b in levels]
    bound = float(stats.t.ppf(0.9, len(off) - 1)) * float(stats.sem(off))
    want = (float(np.mean(off)), float(np.mean(off)) - bound, float(np.mean(off)) + bound)
    assert found.count == len(levels)
    assert (found.mean, found.mean_low, found.mean_high) == pytest.approx(want, abs=1e-9)


@given(st.lists(st.tuples(st.integers(0, 700), st.floats(0, 20)), min_size=3, max_size=10))
@settings(max_examples=60, deadline=None)
def test_waste_has_the_line_of_least_squares(points: list[tuple[int, float]]) -> None:
    start = datetime.date(2025, 1, 1)
    text = "".join(
        line(on=(start + datetime.timedelta(days=d)).isoformat(), weighed_g=50, left_over_g=w) for d, w in points
    )
    found = lessons(text).waste
    assert found is not None
    days, shares = [d for d, _ in points], [2 * w for _, w in points]
    assert found.waste_percent == pytest.approx(float(np.mean(shares)), abs=1e-9)
    if len(set(days)) == 1:
        assert found.change_percent_points is None
        return
    want = stats.linregress(days, shares)
    # From what is left of each point: SciPy takes the error from 1 - r^2, which cancels where the line fits.
    left = np.array(shares) - (want.slope * np.array(days) + want.intercept)
    stderr = np.sqrt(np.sum(left**2) / (len(points) - 2) / np.sum((np.array(days) - np.mean(days)) ** 2))
    off = stats.t.ppf(0.9, len(points) - 2) * stderr
    assert found.change_percent_points == pytest.approx(30 * want.slope, abs=1e-6)
    assert found.change_low_percent_points == pytest.approx(30 * (want.slope - off), abs=1e-6)
    assert found.change_high_percent_points == pytest.approx(30 * (want.slope + off), abs=1e-6)


@given(st.lists(st.dates(datetime.date(2020, 1, 1), datetime.date(2030, 12, 31)), min_size=2, max_size=8, unique=True))
@settings(max_examples=40, deadline=None)
def test_weeks_between_visits_are_those_of_the_calendar(days: list[datetime.date]) -> None:
    found = lessons("".join(line(on=day.isoformat(), guest="J-1") for day in days)).weeks_between_visits
    assert found is not None
    days = sorted(days)
    weeks = [(b - a).days / 7 for a, b in itertools.pairwise(days)]
    assert found.count == len(weeks)
    assert found.mean == pytest.approx(statistics.geometric_mean(weeks), rel=1e-9)


def test_a_guest_comes_back_by_the_calendar() -> None:
    back = rebooking(SOFT)
    assert back is not None
    start = datetime.date(2026, 11, 25)
    for day, weeks in zip((back.earliest, back.usual, back.latest), back.after_weeks, strict=True):
        days = (datetime.date.fromisoformat(str(day)) - start).days
        assert days == int(np.ceil(weeks * 7 - 1e-6))


def test_records_round_trip_and_keep_to_their_schema() -> None:
    records, problems = read_records(RECORDS)
    assert (len(records), problems) == (8, [])
    schema = json.loads((EXAMPLES / "record.schema.json").read_text(encoding="utf-8"))
    for text in [*RECORDS.splitlines(), keep(SOFT, [])]:
        jsonschema.Draft202012Validator(schema).validate(json.loads(text))
    assert read_records_csv(records_csv(RECORDS)) == (records, [])


def test_sums_are_those_of_the_rows() -> None:
    rows = [json.loads(text) for text in RECORDS.splitlines()]
    for found in summarise(RECORDS, "colourist"):
        own = [row for row in rows if row["colourist"] == found.of]
        weighed = [s for row in own for s in row["section"] if "weighed_g" in s]
        assert found.services == len(own)
        assert found.weighed_g == pytest.approx(sum(s["weighed_g"] for s in weighed))
        assert str(found.money[0].price.amount) == f"{sum(float(row['price']) for row in own):.2f}"
    with pytest.raises(foilwork.FoilworkError, match="grouping"):
        summarise(RECORDS, "mood")  # type: ignore[arg-type]


CODES = st.sampled_from(["J-014", "J-088", "J-0", "", "14"])


@given(st.lists(st.tuples(CODES, st.text(max_size=12), st.sampled_from(["\n", "\r\n"])), max_size=12), CODES)
@settings(max_examples=100, deadline=None)
def test_forgetting_leaves_every_other_line(rows: list[tuple[str, str, str]], guest: str) -> None:
    lines = [(json.dumps({"guest": code, "title": title}) + end).encode() for code, title, end in rows]
    kept, removed, unsure = forget(b"".join(lines), guest)
    others = [text for (code, _, _), text in zip(rows, lines, strict=True) if not guest or code != guest]
    assert kept == b"".join(others)
    assert len(removed) == len(lines) - len(others)
    assert unsure == []


def test_records_teach_the_forecast() -> None:
    readings = strand_readings(RECORDS)
    assert len(readings) == 11
    assert {reading.guest for reading in readings} == {"J-014", "J-102", "J-140"}


def test_care_names_no_product_and_nothing_safe() -> None:
    care = home_care(SOFT, [LogEntry("elasticity", at_min=50, section="nape", elasticity="reduced")])
    said = " ".join(one.text + one.why for one in care.advice)
    assert "safe" not in said
    assert "reduced" in care.condition


def test_minutes_for_each_foil_of_a_plan_come_from_the_records(tmp_path: Path) -> None:
    # The geometric mean of 0.9 and 1.6 min is 1.2; twelve foils of W. take 14.4 min, whatever R. needs.
    def by(colourist: str, minutes: float) -> str:
        return json.dumps(json.loads(line(foils=10, apply_min=minutes)) | {"colourist": colourist}) + "\n"

    (tmp_path / "kept.jsonl").write_text(by("W.", 9) + by("W.", 16) + by("R.", 40) + by("R.", 41))
    text = (EXAMPLES / "soft-gradient.toml").read_text(encoding="utf-8")
    text = text.replace("format = 1", 'format = 1\nrecords = "kept.jsonl"', 1).replace("apply_min = 18\n", "", 1)
    (tmp_path / "service.toml").write_text(text, encoding="utf-8")
    plan = foilwork.plan_file(tmp_path / "service.toml")
    nape = plan.head.sections[0].applying
    assert (nape.by, nape.basis) == ("records", "measured")
    assert nape.apply_min.best == pytest.approx(14.4)
    assert nape.apply_min.low < 14.4 < nape.apply_min.high
    # Without the file that it names the plan says so, and assumes.
    alone = foilwork.plan(text)
    assert alone.head.sections[0].applying.by == "assumed"
    assert any("kept.jsonl was not read" in finding.text for finding in alone.findings)
