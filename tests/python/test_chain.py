"""The history of a chain: against plain SQL to the minor unit, against the scalar functions, and when something
fails."""

import datetime
import doctest
import importlib
import json
import subprocess
import sys
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path
from typing import Any

import chain_of_salons
import duckdb
import pyarrow as pa
import pytest
from chain_of_salons import TERMS
from pyarrow import parquet

from foilwork import FoilworkError
from foilwork.chain import RECORD, Progress, limit_ww_percent, run, work_out, worked_batches
from foilwork.chain import _engines as engines
from foilwork.limits import check_peroxide
from foilwork.money import Money, labour_cost, overhead_cost, supply_cost
from foilwork.peroxide import convert, mix_strengths

ROWS, SALONS = 100_000, 40


@pytest.fixture(scope="module")
def records(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("chain") / "records"
    chain_of_salons.generate(folder, ROWS, salons=SALONS)
    return folder


@pytest.fixture
def few(tmp_path: Path) -> Iterator[Path]:
    """Four thousand rows in four files of four years."""
    folder = tmp_path / "few"
    chain_of_salons.generate(folder, 4000, seed=3, salons=5, years=4, rows_a_file=1000)
    yield folder


# Nothing of foilwork: the sums as they are stated, in whole numbers. Grams are tenths and minutes whole, so that every
# quotient is exact before it is rounded, a half upwards. 17.40 an hour x 1.25 x 38 / 24 / 60 min = 8 265 000 / 144 000
# cents a minute; 48 000.00 / (4 x 1200 h) / 60 min = 4 800 000 / 288 000. The limit of the peroxide on the hair: 12 %
# in the EU and Great Britain, 6 % in Japan (Annex III entry 12 of Regulation 1223/2009; the approval standard of Japan,
# from memory). 40 volumes are 40 x 2 / 22.414 mol/L x 34.014 g/mol = 121.4 g/L, at a density of 1.040 to 1.041 g/mL; so
# the strength of those is given 0.02 % either way. Strengths are ten-thousandths of a percent.
PLAIN_SQL = """
    WITH clean AS (
        SELECT *,
            CASE developer_unit WHEN 'volumes' THEN developer_label * 2918 ELSE developer_label * 10000 END AS ww,
            CASE developer_unit WHEN 'volumes' THEN 200 ELSE 0 END AS either_way
        FROM read_parquet('{folder}/*/*.parquet', union_by_name = true)
        WHERE developer_unit IN ('% w/w', 'volumes') AND currency = 'EUR' AND product_pack_g > 0 AND day IS NOT NULL
            AND left_g <= product_g + developer_g
    ), each AS (
        SELECT *,
            round(product_g * 10)::HUGEINT AS p, round(developer_g * 10)::HUGEINT AS d, round(left_g * 10)::HUGEINT AS
            l, (product_pack_g * 10)::HUGEINT AS pp, (developer_pack_g * 10)::HUGEINT AS dp,
            CASE jurisdiction WHEN 'JP' THEN 60000 WHEN 'CA' THEN 10000000 ELSE 120000 END AS most
        FROM clean
    )
    SELECT {key} AS key, count(*) AS bowls, sum((p + d - l) * 100)::BIGINT AS used_mg, sum(l * 100)::BIGINT AS
        wasted_mg, count(*) FILTER ((round(ww)::HUGEINT - either_way) * d > most * (p + d)) AS exceeded_at_least,
        count(*) FILTER ((round(ww)::HUGEINT + either_way) * d > most * (p + d)) AS exceeded_at_most,
        count(*) FILTER (jurisdiction = 'CA') AS not_judged,
        count(*) FILTER (consumables_minor IS NULL) AS consumables_unknown,
        sum(net_minor)::BIGINT AS net_minor,
        sum((2 * product_pack_price_minor * p + pp) // (2 * pp) + (2 * developer_pack_price_minor * d + dp) // (2 * dp)
            + (2 * hands_on_min::HUGEINT * 8265000 + 144000) // 288000
            + (2 * chair_min::HUGEINT * 4800000 + 288000) // 576000
            + coalesce(consumables_minor, 0))::BIGINT AS cost_minor
    FROM each GROUP BY ALL ORDER BY key
"""


@pytest.mark.parametrize("engine", ["arrow", "duckdb", "polars"])
def test_totals_are_those_of_plain_sql_to_the_minor_unit(records: Path, tmp_path: Path, engine: Any) -> None:
    report = run(records, tmp_path / "to", TERMS, engine=engine)
    assert report.complete and report.rows == ROWS and not report.failed
    lines = report.totals.to_pylist()
    keys = {
        "all": "NULL",
        "salon": "salon",
        "colourist": "colourist",
        "product": "product",
        "week": "date_trunc('week', day)::DATE",
    }
    names = [
        "bowls",
        "used_mg",
        "wasted_mg",
        "not_judged",
        "consumables_unknown",
        "net_minor",
        "cost_minor",
    ]
    for by, key in keys.items():
        plain = duckdb.execute(PLAIN_SQL.format(folder=records, key=key))
        columns = [column[0] for column in plain.description or []]
        want = [dict(zip(columns, row, strict=True)) for row in plain.fetchall()]
        found = [line for line in lines if line["by"] == by]
        assert [line["bowls"] for line in found] == [line["bowls"] for line in want]
        for line, other in zip(found, want, strict=True):
            assert [line.get(by)] + [line[name] for name in names] == [other["key"]] + [other[name] for name in names]
            assert other["exceeded_at_least"] <= line["exceeded"] <= other["exceeded_at_most"]
            assert line["margin_minor"] == line["net_minor"] - line["cost_minor"]
    assert report.refused == ROWS - lines[0]["bowls"] > 0
    assert lines == parquet.read_table(tmp_path / "to" / "totals.parquet").to_pylist()


def test_a_bowl_is_what_the_scalar_functions_say(few: Path) -> None:
    table = parquet.read_table(few / "year=2019", partitioning=None).slice(0, 300)
    found = work_out(table, TERMS).to_pylist()
    assert any(row["refused"] for row in found) and any(row["exceeded"] for row in found)

    def euros(minor: int) -> Money:
        return Money.from_minor(minor, "EUR")

    for bowl, row in zip(table.to_pylist(), found, strict=True):
        if row["refused"]:
            continue
        ww = convert(bowl["developer_label"], bowl["developer_unit"], "% w/w")
        on_hair = mix_strengths([0, ww], [bowl["product_g"], bowl["developer_g"]]).strength_ww_percent.best
        product = supply_cost(
            euros(bowl["product_pack_price_minor"]), bowl["product_pack_g"], bowl["product_g"], unit="g"
        )
        developer = supply_cost(
            euros(bowl["developer_pack_price_minor"]), bowl["developer_pack_g"], bowl["developer_g"], unit="g"
        )
        labour = labour_cost(bowl["hands_on_min"], Money(TERMS["wage_per_h"], "EUR"), TERMS["on_costs_percent"], 38, 24)
        overhead = overhead_cost(bowl["chair_min"], Money(TERMS["overhead"], "EUR"), 4, 1200)
        extra = bowl["consumables_minor"]
        assert (row["strength_ww_percent"], row["on_hair_ww_percent"]) == (ww, on_hair)
        assert row["cost_minor"] == (product + developer + labour + overhead).minor + extra
        report = check_peroxide(bowl["jurisdiction"], on_hair, bowl["use"])
        assert row["exceeded"] == report.is_exceeded
        assert row["week"] == bowl["day"] - datetime.timedelta(days=bowl["day"].weekday())
        grams = Decimal(str(bowl["product_g"])) + Decimal(str(bowl["developer_g"])) - Decimal(str(bowl["left_g"]))
        assert row["used_mg"] == grams * 1000 and row["wasted_mg"] == Decimal(str(bowl["left_g"])) * 1000


@pytest.mark.parametrize("jurisdiction", ["EU", "GB", "CN", "JP", "ASEAN", "CA", "AU"])
@pytest.mark.parametrize("use", ["lightening", "oxidative-colour"])
def test_the_limit_is_where_the_scalar_check_begins_to_refuse(jurisdiction: Any, use: Any) -> None:
    ceiling = limit_ww_percent(jurisdiction, use)
    if ceiling is None:
        assert not check_peroxide(jurisdiction, 100, use).is_exceeded
    else:
        assert not check_peroxide(jurisdiction, ceiling, use).is_exceeded
        # The check allows for the last digits of a sum of masses; the column does as well.
        for above, exceeds in ((1 + 0.5e-9, False), (1 + 2e-9, True)):
            assert check_peroxide(jurisdiction, ceiling * above, use).is_exceeded == exceeds
            strength = 14.0
            product_g = 100 * (strength - ceiling * above)
            bowl = {**GOOD, "developer_label": strength, "product_g": product_g, "developer_g": 100 * ceiling * above}
            found = work_out(pa.Table.from_pylist([{**bowl, "jurisdiction": jurisdiction, "use": use}]), TERMS)
            assert found.to_pylist()[0]["exceeded"] == exceeds
    assert limit_ww_percent("XX", use) is None


GOOD: dict[str, Any] = {
    "salon": "JT-0001", "colourist": "JT-0001-2", "day": datetime.date(2024, 3, 6), "product": "Tide gloss",
    "jurisdiction": "EU", "use": "oxidative-colour", "developer_label": 6.0, "developer_unit": "% w/w",
    "developer_parts": 2.0, "product_g": 20.0, "developer_g": 40.0, "left_g": 6.0, "product_pack_price_minor": 1490,
    "product_pack_g": 250.0, "developer_pack_price_minor": 790, "developer_pack_g": 1000.0, "hands_on_min": 30.0,
    "chair_min": 60.0, "net_minor": 6500, "currency": "EUR", "consumables_minor": 100,
}  # fmt: skip

BAD: dict[str, dict[str, Any]] = {
    "day is missing": {"day": None},
    "left_g is missing": {"left_g": None},
    "product_g is missing": {"product_g": float("nan")},
    "net_minor is missing": {"net_minor": None},
    "the amounts are in GBP, the terms in EUR": {"currency": "GBP"},
    "hides its basis": {"developer_unit": "percent"},
    "must be from 0 to 100": {"developer_label": 120.0},
    "invalid mass": {"developer_g": -1.0},
    "the total is zero": {"product_g": 0.0, "developer_g": 0.0, "left_g": 0.0},
    "more than the 60 g that were mixed": {"left_g": 60.5},
    "left_g is -1": {"left_g": -1.0},
    "developer_parts is -2": {"developer_parts": -2.0},
    "cost of the product": {"product_pack_g": 0.0},
    "cost of the developer": {"developer_pack_price_minor": -5},
}


@pytest.mark.parametrize("engine", ["arrow", "duckdb", "polars"])
def test_bad_rows_are_counted_listed_and_kept_apart(tmp_path: Path, engine: Any) -> None:
    rows = [GOOD, *({**GOOD, **wrong} for wrong in BAD.values()), GOOD]
    (tmp_path / "records").mkdir()
    parquet.write_table(pa.Table.from_pylist(rows), tmp_path / "records" / "bowls.parquet", row_group_size=5)
    report = run(tmp_path / "records", tmp_path / "to", TERMS, engine=engine, by=["salon", ("week", "salon")])
    apart = parquet.read_table(tmp_path / "to" / "apart" / "bowls.parquet").to_pylist()
    assert (report.rows, report.refused) == (len(rows), len(BAD)) and report.complete
    assert [row["row"] for row in apart] == list(range(1, len(BAD) + 1))
    for (reason, wrong), row in zip(BAD.items(), apart, strict=True):
        assert reason in row["refused"], row["refused"]
        assert row["file"] == "bowls.parquet"
        for name, value in wrong.items():
            assert row[name] == value or (value != value and row[name] != row[name])
    both = [line for line in report.totals.to_pylist() if line["by"] == "salon+week"]
    assert [(line["week"], line["bowls"]) for line in both] == [(datetime.date(2024, 3, 4), 2)]


def test_a_column_that_came_later_and_types_that_changed(tmp_path: Path) -> None:
    older = {name: value for name, value in GOOD.items() if name != "consumables_minor"}
    newer = pa.Table.from_pylist([{**GOOD, "mood": "calm"}])
    place = newer.schema.get_field_index("salon")
    newer = newer.set_column(place, "salon", newer.column("salon").dictionary_encode())
    place = newer.schema.get_field_index("hands_on_min")
    newer = newer.set_column(place, "hands_on_min", newer.column("hands_on_min").cast(pa.int16()))
    (tmp_path / "records").mkdir()
    parquet.write_table(pa.Table.from_pylist([older]), tmp_path / "records" / "older.parquet")
    parquet.write_table(newer, tmp_path / "records" / "newer.parquet")
    every: list[Any] = ["arrow", "duckdb", "polars"]
    for engine in every:
        everything = run(tmp_path / "records", tmp_path / engine, TERMS, engine=engine).totals.to_pylist()[0]
        assert (everything["bowls"], everything["consumables_unknown"]) == (2, 1)
        # 1490 x 20 / 250, 790 x 40 / 1000, 30 min x 57.39583, 60 min x 16.66667 cents: each to the cent.
        assert everything["cost_minor"] == 2 * (119 + 32 + 1722 + 1000) + 100
    without = {name: value for name, value in GOOD.items() if name != "left_g"}
    parquet.write_table(pa.Table.from_pylist([without]), tmp_path / "records" / "short.parquet")
    report = run(tmp_path / "records", tmp_path / "arrow", TERMS)
    assert (report.done, report.kept) == (2, 2) and "no column 'left_g'" in report.failed["short.parquet"]
    assert not report.complete
    with pytest.raises(FoilworkError, match=r"column 'left_g' .* cannot be read"):
        work_out(pa.Table.from_pylist([{**GOOD, "left_g": "some"}]), TERMS)


@pytest.mark.parametrize("engine", ["arrow", "duckdb", "polars"])
def test_a_part_that_fails_is_tried_again_and_counts_once(
    few: Path, tmp_path: Path, engine: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    want = run(few, tmp_path / "want", TERMS, engine=engine)
    monkeypatch.setattr(engines, "BATCH", 300)
    calls = 0
    true_work_out = work_out

    def work_out_with_a_bad_disk(rows: Any, terms: Any) -> Any:
        nonlocal calls
        calls += 1
        if calls in (2, 9):
            raise OSError("the disk is gone for a moment")
        return true_work_out(rows, terms)

    monkeypatch.setattr(engines, "work_out", work_out_with_a_bad_disk)
    report = run(few, tmp_path / "to", TERMS, engine=engine)
    assert calls >= 5 and report.complete and report.totals.equals(want.totals)


def test_a_file_that_stays_broken_is_named_and_the_next_run_takes_it_up(few: Path, tmp_path: Path) -> None:
    want = run(few, tmp_path / "want", TERMS)
    broken = sorted(few.rglob("*.parquet"))[2]
    whole = broken.read_bytes()
    broken.write_bytes(whole[: len(whole) // 2])
    report = run(few, tmp_path / "to", TERMS)
    assert list(report.failed) == [broken.relative_to(few).as_posix()] and report.done == 3
    broken.write_bytes(whole)
    again = run(few, tmp_path / "to", TERMS)
    assert again.complete and again.kept == 3 and again.totals.equals(want.totals)
    # A file that was written anew is worked out anew, once.
    parquet.write_table(parquet.ParquetFile(broken).read().slice(0, 10), broken)
    assert run(few, tmp_path / "to", TERMS).rows == 3010


def test_a_file_replaced_while_it_is_worked_is_worked_anew_by_the_next_run(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    records, newer = tmp_path / "bowls.parquet", tmp_path / "newer"
    parquet.write_table(pa.Table.from_pylist([GOOD] * 2), records)
    parquet.write_table(pa.Table.from_pylist([GOOD] * 3), newer)
    true_work_out = work_out

    def work_out_while_it_is_replaced(rows: Any, terms: Any) -> Any:
        if newer.exists():
            newer.replace(records)
        return true_work_out(rows, terms)

    monkeypatch.setattr(engines, "work_out", work_out_while_it_is_replaced)
    assert run(records, tmp_path / "to", TERMS).rows == 2
    again = run(records, tmp_path / "to", TERMS)
    assert (again.rows, again.kept, again.totals.to_pylist()[0]["bowls"]) == (3, 0, 3)
    assert run(records, tmp_path / "to", TERMS).kept == 1


@pytest.mark.parametrize("engine", ["arrow", "duckdb", "polars"])
def test_stopped_between_batches_it_goes_on_where_it_was(few: Path, tmp_path: Path, engine: Any) -> None:
    want = run(few, tmp_path / "want", TERMS, engine=engine)
    seen: list[Progress] = []
    report = run(
        few,
        tmp_path / "to",
        TERMS,
        engine=engine,
        progress=seen.append,
        stop=lambda: bool(seen) and seen[-1].rows > 1500,
    )
    assert report.stopped and 1 <= report.done < 4
    assert [at.rows for at in seen] == sorted(at.rows for at in seen) and seen[0].all_rows == 4000
    assert sum(1 for _ in (tmp_path / "to" / "parts").iterdir()) == report.done
    rest = run(few, tmp_path / "to", TERMS, engine=engine)
    assert rest.kept == report.done and rest.totals.equals(want.totals)


def test_what_cannot_be_asked_is_said(few: Path, tmp_path: Path) -> None:
    run(few, tmp_path / "to", TERMS)
    with pytest.raises(FoilworkError, match="results of other terms"):
        run(few, tmp_path / "to", {**TERMS, "paid_h": 39})
    with pytest.raises(FoilworkError, match="results of other terms, groupings"):
        run(few, tmp_path / "to", TERMS, by=["salon"])
    with pytest.raises(FoilworkError, match="give another folder"):
        run(few, few, TERMS)
    with pytest.raises(FoilworkError, match="no Parquet files"):
        run(tmp_path / "to" / "apart" / "none", tmp_path / "new", TERMS)
    with pytest.raises(FoilworkError, match="unknown engine 'abacus'"):
        run(few, tmp_path / "new", TERMS, engine="abacus")  # type: ignore[arg-type]
    with pytest.raises(FoilworkError, match="no totals by 'guest'"):
        run(few, tmp_path / "new", TERMS, by=["guest"])
    with pytest.raises(FoilworkError, match="wages"):
        run(few, tmp_path / "new", {**TERMS, "wages": 1})


def test_wrong_terms_are_told_whatever_the_rows_are() -> None:
    without = {name: value for name, value in TERMS.items() if name != "currency"}
    rows = pa.Table.from_pylist([GOOD])
    for wrong, told in ((without, "currency"), ({**TERMS, "wages": 1}, "wages")):
        with pytest.raises(FoilworkError, match=told):
            work_out(rows, wrong)
        no_rows: list[Any] = []
        for batches in (rows.to_batches(), no_rows):
            with pytest.raises(FoilworkError, match=told):
                list(worked_batches(batches, wrong))


def test_batches_stand_for_themselves(few: Path) -> None:
    table = parquet.read_table(few / "year=2018", partitioning=None)
    whole = pa.Table.from_batches(worked_batches(table.to_batches(), TERMS))
    small = pa.Table.from_batches(worked_batches(table.to_batches(max_chunksize=77), TERMS))
    assert whole.equals(small.combine_chunks()) or whole.to_pylist() == small.to_pylist()
    assert work_out(table.slice(0, 0), TERMS).num_rows == 0


def test_from_a_terminal(few: Path, tmp_path: Path) -> None:
    terms = tmp_path / "terms.toml"
    terms.write_text("\n".join(f"{name} = {json.dumps(value)}" for name, value in TERMS.items()))
    words = [sys.executable, "-m", "foilwork.chain", str(few), str(tmp_path / "to"), "--terms", str(terms)]
    done = subprocess.run(words, capture_output=True, text=True, check=False)
    assert done.returncode == 0 and not done.stderr, done.stderr
    assert "4,000 rows of 4 of 4 files" in done.stdout and "kg thrown away" in done.stdout
    wrong = subprocess.run([*words, "--by", "guest"], capture_output=True, text=True, check=False)
    assert wrong.returncode == 2 and wrong.stderr.startswith("error: no totals by 'guest'")


def test_the_bench_still_runs(root: Path) -> None:
    bench = [sys.executable, str(root / "benches/python/chain.py"), "--rows", "2000", "--engines", "arrow"]
    done = subprocess.run(bench, capture_output=True, text=True, check=False)
    assert done.returncode == 0 and "2,000  arrow" in done.stdout, done.stderr


def test_the_invented_records_are_the_same_for_a_seed(tmp_path: Path) -> None:
    one, same, other = (chain_of_salons.records(seed, 2, 500, 2021, 9) for seed in (1, 1, 2))
    assert one.equals(same) and not one.equals(other)
    assert {field.name for field in RECORD} == set(one.column_names)


@pytest.mark.parametrize("module", ["foilwork.chain._run", "foilwork.chain._work"])
def test_examples_run(module: str) -> None:
    tried = doctest.testmod(importlib.import_module(module))
    assert tried.attempted > 0 and tried.failed == 0
