"""Money from Python, against Python's own decimal and fractions, and the ISO 4217 table of another package."""

import copy
import decimal
import pickle
import random
import subprocess
import sys
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import iso4217
import numpy as np
import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st

from foilwork import FoilworkError
from foilwork.business import (
    commission_pay,
    price_list,
    price_services,
    price_services_csv,
    price_services_json,
    quote_range,
    reorder,
)
from foilwork.money import (
    CostTable,
    Money,
    PriceRule,
    add_tax,
    allocate,
    apply_discount,
    cost_columns,
    labour_cost,
    margin_and_markup,
    margin_to_markup,
    markup_to_margin,
    overhead_cost,
    price_before_discount,
    price_from_margin,
    price_from_markup,
    supply_cost,
    take_tax_out,
)

# The same seven roundings under the names of Python's decimal.
ROUNDINGS: dict[Any, str] = {
    "midpoint-away-from-zero": decimal.ROUND_HALF_UP,
    "midpoint-nearest-even": decimal.ROUND_HALF_EVEN,
    "midpoint-toward-zero": decimal.ROUND_HALF_DOWN,
    "to-zero": decimal.ROUND_DOWN,
    "away-from-zero": decimal.ROUND_UP,
    "to-negative-infinity": decimal.ROUND_FLOOR,
    "to-positive-infinity": decimal.ROUND_CEILING,
}
CURRENCIES = {"EUR": 2, "JPY": 0, "KWD": 3}
TERMS = {
    "currency": "EUR",
    "wage_per_h": "17.35",
    "on_costs_percent": 21.4,
    "paid_h": 38,
    "productive_h": 23.7,
    "overhead": "48123.45",
    "chairs": 4,
    "productive_h_per_chair": 1170,
    "margin_percent": 25,
    "tax_percent": 19,
    "card_percent": 1.4,
}


def eur(amount: str | int | Decimal) -> Money:
    return Money(amount, "EUR")


def quantized(value: Decimal, exponent: int, rounding: str) -> Decimal:
    return value.quantize(Decimal(1).scaleb(-exponent), rounding=ROUNDINGS[rounding])


def test_supply_cost_equals_decimal_on_100_000_random_cases() -> None:
    """Each of the seven roundings, bit for bit; 60 digits keep every tie a tie, since a denominator has at most 9."""
    chance = random.Random(4217)
    names = list(ROUNDINGS)
    with decimal.localcontext() as context:
        context.prec = 60
        for case in range(100_000):
            rounding, (code, exponent) = names[case % 7], chance.choice(list(CURRENCIES.items()))
            price = Decimal(chance.randrange(10_000_000)).scaleb(-exponent)
            # Round packs, and tenths of a gram now and then, so that exact halves are common.
            pack = Decimal(chance.choice([20, 50, 60, 80, 500, 1000, chance.randrange(1, 999_999)]))
            used = Decimal(chance.randrange(2_000_000)).scaleb(-chance.choice([0, 1, 2, 3]))
            got = supply_cost(Money(price, code), float(pack), float(used), unit="g", rounding=rounding)
            assert got.amount == quantized(price * used / pack, exponent, rounding), (price, used, pack, rounding)
            assert got.amount.as_tuple().exponent == -exponent


def test_a_discounted_price_knows_its_discount_and_what_was_given() -> None:
    """15 % of 33.33 are 5.00, rounded; 72.25 / 0.85 = 85."""
    offer, found = apply_discount(Money("33.33", "EUR"), 15), price_before_discount(Money("72.25", "EUR"), 15)
    assert offer.discount_percent == Decimal(15)
    assert (offer.full_price_found, found.full_price_found) == (False, True)
    assert [one.worked for one in offer.trail()] == ["33.33 x (15 / 100)", "33.33 - 5.00"]
    assert [one.worked for one in found.trail()] == ["72.25 / (1 - (15 / 100))", "85.00 - 72.25"]


def test_taxes_margins_and_discounts_equal_decimal_on_100_000_random_cases() -> None:
    chance = random.Random(1234)
    names = list(ROUNDINGS)
    with decimal.localcontext() as context:
        context.prec = 60
        for case in range(100_000):
            rounding, (code, exponent) = names[case % 7], chance.choice(list(CURRENCIES.items()))
            amount = Decimal(chance.randrange(1, 50_000_000)).scaleb(-exponent)
            money, percent = Money(amount, code), Decimal(chance.randrange(0, 9_900)).scaleb(-2)

            def rounded(value: Decimal, exponent: int = exponent, rounding: str = rounding) -> Decimal:
                return quantized(value, exponent, rounding)

            match case % 6:
                case 0:
                    tax = add_tax(money, percent, rounding=rounding)
                    assert tax.tax.amount == rounded(amount * percent / 100)
                    assert tax.gross.amount == amount + tax.tax.amount
                case 1:
                    tax = take_tax_out(money, percent, rounding=rounding)
                    assert tax.tax.amount == rounded(amount * percent / (100 + percent))
                    assert tax.net.amount == amount - tax.tax.amount
                case 2:
                    price = price_from_margin(money, percent, rounding=rounding).price
                    assert price.amount == rounded(amount * 100 / (100 - percent))
                case 3:
                    price = price_from_markup(money, percent, rounding=rounding).price
                    assert price.amount == rounded(amount * (100 + percent) / 100)
                case 4:
                    off = apply_discount(money, percent, rounding=rounding)
                    assert off.off.amount == rounded(amount * percent / 100)
                case _:
                    pay = commission_pay(money, percent=percent, rounding=rounding)
                    assert pay.commission.amount == rounded(amount * percent / 100)


def test_labour_and_overhead_equal_fractions() -> None:
    """Half up on exact fractions; 11.00 an hour for 300.3 min is 55.055, a tie that a cut-off rate would miss."""
    chance = random.Random(60)

    def half_up(value: Fraction) -> int:
        return (2 * value.numerator + value.denominator) // (2 * value.denominator)

    for _ in range(10_000):
        wage, on_costs = chance.randrange(5_000), Decimal(chance.randrange(500)).scaleb(-1)
        productive = chance.randrange(1, 2_000)
        paid, tenths = productive + chance.randrange(500), chance.randrange(6_000)
        cost = labour_cost(tenths / 10, Money.from_minor(wage, "EUR"), on_costs, paid, productive)
        want = wage * (1 + Fraction(on_costs) / 100) * Fraction(paid, productive) * Fraction(tenths, 600)
        assert cost.minor == half_up(want)
        overhead, chairs = chance.randrange(10_000_000), chance.randrange(1, 9)
        got = overhead_cost(tenths / 10, Money.from_minor(overhead, "EUR"), chairs, productive)
        assert got.minor == half_up(Fraction(overhead, chairs * productive) * Fraction(tenths, 600))
    assert labour_cost(300.3, eur("11.00"), 0, 1, 1) == eur("55.06")


def test_every_currency_has_the_exponent_of_the_iso_table() -> None:
    seen = 0
    for known in iso4217.Currency:
        if known.exponent is None:
            with pytest.raises(FoilworkError, match="no minor unit"):
                Money(1, known.code)
        else:
            assert Money.from_minor(10**known.exponent, known.code).amount == 1, known.code
            assert Money(1, known.code).amount.as_tuple().exponent == -known.exponent, known.code
            seen += 1
    assert seen > 150


@given(st.lists(st.integers(0, 10**6), min_size=1, max_size=50).filter(any), st.integers(-(10**12), 10**12))
def test_shares_always_add_up(weights: list[int], minor: int) -> None:
    shares = allocate(Money.from_minor(minor, "EUR"), weights)
    assert sum(share.minor for share in shares) == minor
    for share, weight in zip(shares, weights, strict=True):
        assert abs(share.minor - Fraction(minor * weight, sum(weights))) < 1


def test_money_is_a_good_value() -> None:
    price = Money("12.50", "EUR")
    assert price == Money(Decimal("12.5"), "EUR") == Money.from_minor(1250, "EUR") != Money("12.50", "USD")
    assert hash(price) == hash(Money("12.5", "EUR"))
    assert pickle.loads(pickle.dumps(price)) == price
    assert (price + price, price - price, 3 * price, -price) == (eur(25), eur(0), eur("37.50"), eur("-12.50"))
    assert str(price) == "12.50 EUR" and f"{price:>12}" == "   12.50 EUR" and repr(price) == "Money('12.50', 'EUR')"
    assert not eur(0) and price and sorted([eur(2), eur(1)]) == [eur(1), eur(2)] and eur(1) < eur(2) >= eur(2)
    assert isinstance(price.amount, Decimal) and str(price.amount) == "12.50"
    assert price != 12.5 and price != "12.50 EUR"


@pytest.mark.parametrize("amount", [12.5, 12.505, float("nan"), "12,50", "", "1e", None, True, [1], Decimal("NaN")])
def test_what_is_no_exact_amount_is_refused(amount: object) -> None:
    with pytest.raises(FoilworkError):
        Money(amount, "EUR")  # type: ignore[arg-type]


def test_errors_are_those_of_the_core() -> None:
    with pytest.raises(FoilworkError, match=r"^cannot put EUR and USD into one sum: convert one of them first"):
        eur(1) + Money(1, "USD")
    with pytest.raises(FoilworkError, match="cannot put EUR and USD"):
        _ = eur(1) < Money(1, "USD")
    with pytest.raises(TypeError):
        _ = eur(1) + 1  # type: ignore[operator]
    with pytest.raises(FoilworkError, match="more than 2 decimals: round it first, and name the rounding"):
        eur("1.005")
    with pytest.raises(FoilworkError, match='unknown rounding "half_up"'):
        Money("1.005", "EUR", "half_up")  # type: ignore[arg-type]
    with pytest.raises(FoilworkError, match="must be below 100 % of the price"):
        price_from_margin(eur(1), 100)
    with pytest.raises(FoilworkError, match="give exactly one of margin_percent"):
        PriceRule(margin_percent=10, markup_percent=10)
    with pytest.raises(FoilworkError, match="whole number"):
        supply_cost(eur(1), 10, 0.5, unit="piece")
    with pytest.raises(FoilworkError, match="invalid mass"):
        supply_cost(eur(1), 100, float("nan"), unit="g")
    with pytest.raises(FoilworkError, match="too large"):
        eur(10**15) * 10**6


def test_margin_is_no_markup() -> None:
    """25 % of the price is 33.33 % of the cost (markup-glossary, selling-price-margin in the sources of money)."""
    assert round(margin_to_markup(25), 2) == Decimal("33.33")
    assert markup_to_margin(25) == 20
    both = margin_and_markup(eur(75), eur(100))
    assert both.margin_percent == 25 and round(both.markup_percent, 2) == Decimal("33.33")
    assert repr(both).startswith("SetPrice(cost=Money('75.00', 'EUR'), price=Money('100.00', 'EUR'), profit=")


def test_a_cost_table_adds_up() -> None:
    table = CostTable("EUR")
    lines: list[tuple[Any, str, str | None]] = [
        ("product", "2.11", "crown"),
        ("product", "1.07", "nape"),
        ("labour", "33.33", None),
    ]
    for part, amount, section in lines:
        table.add(part, "line", eur(amount), section=section)
    assert table.total == eur("36.51")
    assert table.by_section() == [("crown", eur("2.11")), ("nape", eur("1.07"))]
    assert table.by_kind() == [("product", eur("3.18")), ("labour", eur("33.33"))]
    assert sum(line.share_percent or 0 for line in table.lines) == 100
    with pytest.raises(FoilworkError, match='unknown kind of cost "rent": give one of'):
        table.add("rent", "line", eur(1))  # type: ignore[arg-type]


def test_quotes_and_price_lists_keep_their_order() -> None:
    rule = PriceRule(margin_percent=40, tax_percent=20, card_percent="1.5", card_fixed=eur("0.10"))
    part = ("product and time", eur(40), eur(46), eur(55))
    quote = quote_range([part], rule, deposit=eur(10))
    assert quote.low.taxed.gross < quote.best.taxed.gross < quote.high.taxed.gross
    assert quote.deposit + quote.balance == quote.best.taxed.gross
    # N (1 - 0.40 - 0.015 x 1.20) = 40 + 0.10, and 20 % tax on N.
    assert quote.low.target_net == Money(Decimal("40.10") / Decimal("0.582"), "EUR", "midpoint-away-from-zero")
    entry = price_list([("foils", "long", [part]), ("foils", "short", [part], (60, 70, 80))], rule)[0]
    assert (entry.low, entry.usual, entry.high) == tuple(q.taxed.gross for q in (quote.low, quote.best, quote.high))
    with pytest.raises(FoilworkError, match="bounds must enclose"):
        quote_range([("x", eur(2), eur(1), eur(3))], rule)


def test_stock_lasts_and_is_ordered() -> None:
    answer = reorder(420, 60, 500, unit="piece", lead_days=5, cover_days=20, reserve=120)
    assert answer.due and answer.packs == 3 and answer.stock_days == 7
    assert reorder(0, 0, 500, unit="g", lead_days=5, cover_days=20).stock_days is None


SERVICES = [
    {"service": "foils", "product_pack_price": "26.40", "product_pack_g": 500, "product_g": 38.5, "consumables": "2.10",
     "hands_on_min": 70, "chair_min": 120, "price": "139.50", "sold": 31},
    {"service": "toner", "product_pack_price": Decimal("9.80"), "product_pack_g": 60, "product_g": 30,
     "product_waste_g": 3, "hands_on_min": 20, "chair_min": 40, "sold": 48},
]  # fmt: skip


def test_a_list_reads_alike_from_rows_columns_and_frames() -> None:
    rows = price_services(SERVICES, TERMS)
    names = sorted({name for service in SERVICES for name in service})
    columns = {name: [service.get(name) for service in SERVICES] for name in names}
    arrays = {**columns, "hands_on_min": np.array([70, 20]), "chair_min": np.array([120.0, 40.0])}
    frame = pd.DataFrame(SERVICES)
    for other in (columns, arrays, frame, frame.to_dict("records")):
        assert price_services(other, TERMS).lines == rows.lines
    totals = rows.totals
    assert len(rows.lines) == 2
    parts = ("product", "developer", "consumables", "laundry", "labour", "overhead", "card_fee")
    assert sum(getattr(totals, part) for part in parts) == totals.cost
    for name in ("cost", "net", "tax", "gross", "profit"):
        assert getattr(totals, name) == sum(getattr(line, name) * line.sold for line in rows.lines)
    text = "service,hands_on_min,chair_min\ntoner,15,40\n"
    json = '[{"service": "toner", "hands_on_min": 15, "chair_min": 40}]'
    assert price_services_csv(text, TERMS).lines == price_services_json(json, TERMS).lines
    assert rows.csv.splitlines()[-1].startswith("total,,79,")


def test_results_copy_pickle_and_become_plain_data() -> None:
    rows = price_services(SERVICES, TERMS)
    for result in (rows, rows.totals, rows.lines[0], reorder(420, 60, 500, unit="piece", lead_days=5, cover_days=20)):
        assert pickle.loads(pickle.dumps(result)) == result == copy.deepcopy(result)
    frame = pd.DataFrame([line.to_dict() for line in rows.lines])
    assert list(frame["sold"]) == [line.sold for line in rows.lines]
    assert rows.to_dict()["totals"] == rows.totals.to_dict()
    with pytest.raises(AttributeError):
        rows.totals.cost = eur(0)  # type: ignore[misc]


def test_money_adds_up_with_sum() -> None:
    assert sum([eur("1.10"), eur("2.20")]) == eur("3.30")
    assert copy.copy(eur("1.10")) == copy.deepcopy(eur("1.10")) == eur("1.10")
    for start in (1, 0.0, "0"):
        with pytest.raises(TypeError):
            sum([eur("1.10")], start)
    with pytest.raises(FoilworkError, match="cannot put EUR and USD into one sum"):
        sum([eur("1.10"), Money("1", "USD")])


def test_a_list_reports_all_that_is_wrong() -> None:
    with pytest.raises(FoilworkError) as raised:
        price_services([{"service": "a", "hands_on_min": -1, "chair_min": 1}, {"service": "b", "prise": 3}], TERMS)
    lines = str(raised.value).split("\n")
    assert lines[0] == "service[1].hands_on_min: invalid duration (got -1 min): must be from 0 to 1e9 min"
    assert [line.split(":")[0] for line in lines[1:]] == [
        "service[2].prise",
        "service[2].hands_on_min",
        "service[2].chair_min",
    ]
    with pytest.raises(FoilworkError, match=r"^terms\.wages: unknown field"):
        price_services(SERVICES, {**TERMS, "wages": 1})
    with pytest.raises(FoilworkError, match="column b has 1 rows and the first has 2"):
        price_services({"a": [1, 2], "b": [1]}, TERMS)


def columns_of(rows: int, seed: int) -> dict[str, Any]:
    chance = np.random.default_rng(seed)
    return {
        "pack_price_minor": chance.integers(0, 5_000, rows),
        "pack_g": chance.choice([60.0, 100.0, 500.0, 900.0], rows),
        "used_g": chance.integers(0, 1_500, rows) / 10,
        "wasted_g": chance.integers(0, 150, rows) / 10,
        "consumables_minor": chance.integers(0, 500, rows),
        "hands_on_min": chance.integers(0, 180, rows).astype(float),
        "chair_min": chance.integers(0, 600, rows) / 2,
    }


@pytest.mark.parametrize("rounding", ROUNDINGS)
def test_columns_equal_the_scalar_functions_row_by_row(rounding: Any) -> None:
    columns = columns_of(500, seed=7)
    got = cost_columns(**columns, terms=TERMS, rounding=rounding)
    for row in range(500):
        at = {name: column[row].item() for name, column in columns.items()}
        price, used = Money.from_minor(at["pack_price_minor"], "EUR"), at["used_g"] + at["wasted_g"]
        product = supply_cost(price, at["pack_g"], used, unit="g", rounding=rounding)
        labour = labour_cost(at["hands_on_min"], eur("17.35"), "21.4", 38, 23.7, rounding=rounding)
        overhead = overhead_cost(at["chair_min"], eur("48123.45"), 4, 1170, rounding=rounding)
        assert got.product_minor[row] == product.minor
        assert got.labour_minor[row] == labour.minor
        assert got.overhead_minor[row] == overhead.minor
        assert got.cost_minor[row] == (product + labour + overhead).minor + at["consumables_minor"]
    assert got.cost.minor == got.cost_minor.sum()
    assert got.product + got.consumables + got.labour + got.overhead == got.cost


def test_columns_take_any_sequence_and_refuse_what_is_no_amount() -> None:
    lists = {name: column.tolist() for name, column in columns_of(20, seed=8).items()}
    views: dict[str, Any] = {name: np.repeat(column, 2)[::2] for name, column in columns_of(20, seed=8).items()}
    assert np.array_equal(cost_columns(**lists, terms=TERMS).cost_minor, cost_columns(**views, terms=TERMS).cost_minor)
    assert cost_columns([], [], [], [], [], [], [], TERMS).cost == eur(0)
    with pytest.raises(TypeError, match="whole minor units"):
        cost_columns(**{**lists, "pack_price_minor": [1.5] * 20}, terms=TERMS)
    with pytest.raises(TypeError, match="whole minor units"):
        cost_columns(**{**lists, "pack_price_minor": np.full(20, 2**63, "uint64")}, terms=TERMS)
    with pytest.raises(TypeError):
        cost_columns(**{**lists, "used_g": np.ones((4, 5))}, terms=TERMS)
    with pytest.raises(FoilworkError, match=r"^row 3: invalid mass \(got NaN g\).*\(1 of 20 rows"):
        cost_columns(**{**lists, "used_g": [1.0] * 3 + [float("nan")] + [1.0] * 16}, terms=TERMS)
    with pytest.raises(FoilworkError, match="column chair_min has 19 rows"):
        cost_columns(**{**lists, "chair_min": [1.0] * 19}, terms=TERMS)


def test_rows_that_cannot_be_costed_are_listed_and_results_go_where_they_are_told_to() -> None:
    lists = {name: column.tolist() for name, column in columns_of(20, seed=9).items()}
    want = cost_columns(**lists, terms=TERMS)
    wrong = {**lists, "used_g": [*lists["used_g"][:3], float("nan"), *lists["used_g"][4:19], -1.0]}
    found = cost_columns(**wrong, terms=TERMS, errors="apart")
    assert [row for row, _ in found.refused] == [3, 19] and "invalid mass" in found.refused[0][1]
    good = np.array([row not in (3, 19) for row in range(20)])
    assert np.array_equal(found.cost_minor, np.where(good, want.cost_minor, 0))
    assert found.cost.minor == want.cost_minor[good].sum() and want.refused == []
    out = tuple(np.full(20, -1) for _ in range(4))
    into = cost_columns(**lists, terms=TERMS, out=out)  # type: ignore[arg-type]
    assert into.cost_minor is out[3] and np.array_equal(out[0], want.product_minor)
    prices = np.array(lists["pack_price_minor"])
    for bad, error, reason in (
        ((out[0], out[1], out[2], out[2]), FoilworkError, "is one of the columns"),
        ((out[0], out[1], out[2], prices), FoilworkError, "is one of the columns"),
        ((out[0], out[1], out[2], np.empty(40, int)[::2]), FoilworkError, "in one piece"),
        ((out[0], out[1], out[2], np.empty(3, int)), FoilworkError, "out has 3 rows"),
        ((out[0], out[1], out[2], np.empty(20)), TypeError, "int64"),
        (out[0], TypeError, "tuple of four"),
    ):
        with pytest.raises(error, match=reason):
            cost_columns(**{**lists, "pack_price_minor": prices}, terms=TERMS, out=bad)  # type: ignore[arg-type]
    with pytest.raises(FoilworkError, match="'raise' or 'apart'"):
        cost_columns(**lists, terms=TERMS, errors="nan")  # type: ignore[arg-type]


@pytest.mark.parametrize("name", list(columns_of(1, seed=1)))
def test_a_masked_number_costs_nothing(name: str) -> None:
    columns = columns_of(20, seed=9)
    hidden = np.arange(20) == 3
    masked = {**columns, name: np.ma.array(columns[name], mask=hidden)}
    if name.endswith("_minor"):
        with pytest.raises(FoilworkError, match="missing amounts: fill them first"):
            cost_columns(**masked, terms=TERMS, errors="apart")
    else:
        with pytest.raises(FoilworkError, match="row 3"):
            cost_columns(**masked, terms=TERMS)
        found = cost_columns(**masked, terms=TERMS, errors="apart")
        assert [row for row, _ in found.refused] == [3]
        assert found.cost.minor == cost_columns(**columns, terms=TERMS).cost_minor[~hidden].sum()
    unhidden = {**columns, name: np.ma.array(columns[name], mask=False)}
    assert cost_columns(**unhidden, terms=TERMS).cost == cost_columns(**columns, terms=TERMS).cost


def test_the_bench_runs_and_agrees_with_decimal(root: Path) -> None:
    """The quick bench compares every row with pandas columns of ``Decimal`` before it takes a time."""
    bench = [sys.executable, str(root / "benches/python/money.py"), "--quick"]
    said = subprocess.run(bench, check=True, capture_output=True, text=True).stdout
    assert "pandas, Decimal" in said and "100000 rows" in said
