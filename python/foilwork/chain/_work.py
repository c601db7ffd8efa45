"""What each bowl comes to: strength on the hair, limit, use, waste, cost and margin, by the kernels of foilwork."""

from __future__ import annotations

import warnings
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import TYPE_CHECKING, Any

from foilwork import limits, money, peroxide
from foilwork._native import FoilworkError, OutOfRangeWarning
from foilwork.chain._record import KEYS, RECORD, arrow, as_record

if TYPE_CHECKING:
    from numpy import bool_, float64, int64
    from numpy.typing import NDArray

# How far the weighed ratio may be from the one of the recipe before the bowl counts as off, in percent of it.
OFF_RATIO_PERCENT = 5.0

# What is found of a bowl, in this order, and its type.
FOUND = (
    ("week", "day"),
    ("strength_ww_percent", "number"),
    ("on_hair_ww_percent", "number"),
    ("used_mg", "whole"),
    ("wasted_mg", "whole"),
    ("off_ratio", "whole"),
    ("exceeded", "whole"),
    ("not_judged", "whole"),
    ("consumables_unknown", "whole"),
    ("cost_minor", "whole"),
    ("net_minor", "whole"),
    ("margin_minor", "whole"),
    ("refused", "text"),
)


class _Bad:
    """The rows that are kept apart, each with the first reason that was found."""

    def __init__(self, rows: int) -> None:
        import numpy

        self.good: NDArray[bool_] = numpy.ones(rows, bool)
        self.reasons: dict[int, str] = {}

    def add(self, which: NDArray[bool_], reason: Callable[[int], str]) -> None:
        """Keeps rows apart that were good so far."""
        import numpy

        for row in numpy.flatnonzero(which & self.good).tolist():
            self.reasons[row] = reason(row)
        self.good &= ~which


def check_terms(terms: Mapping[str, Any]) -> None:
    """Says what is wrong with the terms, whatever the rows are."""
    money.cost_columns([], [], [], [], [], [], [], terms)


def work_out(rows: Any, terms: Mapping[str, Any]) -> Any:
    """What is found of each bowl of a batch.

    Args:
        rows: a ``pyarrow.RecordBatch`` or ``pyarrow.Table`` with the columns of ``RECORD``; others are ignored.
        terms: the terms of the chain, as in ``foilwork.business.price_services``.

    Returns:
        A ``pyarrow.RecordBatch`` of as many rows with the columns of ``FOUND``. Where ``refused`` has a reason, the
        row is bad and everything else of it is null.

    Raises:
        FoilworkError: a column is missing or of another kind; the terms are wrong.
    """
    import numpy

    pyarrow = arrow()
    check_terms(terms)
    record = as_record(rows)
    bad = _Bad(len(rows))
    numbers = {
        field.name: _numbers(record[field.name], field.kind) for field in RECORD if field.kind in ("number", "whole")
    }
    for field in RECORD:
        if field.needed:
            missing = record[field.name].is_null(nan_is_null=True).to_numpy(zero_copy_only=False)
            bad.add(missing, lambda row, name=field.name: f"{name} is missing")  # type: ignore[misc]
    _check_currency(record, str(terms["currency"]), bad)
    strength = _strength(record, numbers["developer_label"], bad)
    on_hair, used_mg, wasted_mg = _bowl(numbers, strength, bad)
    cost = _cost(numbers, terms, bad)
    week = record["day"].cast(pyarrow.int32()).fill_null(0).to_numpy(zero_copy_only=False)
    parts = numbers["developer_parts"] * numbers["product_g"]
    with numpy.errstate(invalid="ignore"):
        off = numpy.abs(numbers["developer_g"] - parts) > OFF_RATIO_PERCENT / 100 * parts
    exceeded, not_judged = _limits(record, on_hair)
    net = numbers["net_minor"]
    found: dict[str, NDArray[Any]] = {
        # The first day of 1970 was a Thursday.
        "week": week - (week + 3) % 7,
        "strength_ww_percent": strength,
        "on_hair_ww_percent": on_hair,
        "used_mg": used_mg,
        "wasted_mg": wasted_mg,
        "off_ratio": off.astype(numpy.int64),
        "exceeded": exceeded.astype(numpy.int64),
        "not_judged": not_judged.astype(numpy.int64),
        "consumables_unknown": record["consumables_minor"].is_null().to_numpy(zero_copy_only=False).astype(numpy.int64),
        "cost_minor": cost,
        "net_minor": net,
        "margin_minor": net - cost,
    }
    apart = ~bad.good if bad.reasons else None
    made = []
    for name, kind in FOUND[:-1]:
        column = found[name].astype(numpy.int32, copy=False) if kind == "day" else found[name]
        array = pyarrow.array(column, mask=apart)
        made.append(array.cast(pyarrow.date32()) if kind == "day" else array)
    reasons = pyarrow.nulls(len(rows), pyarrow.string())
    if bad.reasons:
        reasons = pyarrow.array([bad.reasons.get(row) for row in range(len(rows))], pyarrow.string())
    return pyarrow.RecordBatch.from_arrays([*made, reasons], schema=found_schema())


def found_schema() -> Any:
    """The columns of ``FOUND`` as a schema of pyarrow."""
    pyarrow = arrow()
    types = {
        "text": pyarrow.string(),
        "number": pyarrow.float64(),
        "whole": pyarrow.int64(),
        "day": pyarrow.date32(),
    }
    return pyarrow.schema([(name, types[kind]) for name, kind in FOUND])


def worked_batches(batches: Iterable[Any], terms: Mapping[str, Any]) -> Iterator[Any]:
    """Batches of records with what is found of them: salon, colourist and product, then the columns of ``FOUND``.

    It is what ``mapInArrow`` of Spark and ``map_batches`` of others ask for. Each batch stands for itself, so that a
    part that failed can be worked out again.
    """
    pyarrow = arrow()
    check_terms(terms)
    for batch in batches:
        record, found = as_record(batch), work_out(batch, terms)
        keys = [record[name] for name in KEYS]
        yield pyarrow.RecordBatch.from_arrays([*keys, *found.columns], names=[*KEYS, *found.schema.names])


def _numbers(column: Any, kind: str) -> Any:
    """As NumPy's: a missing number is NaN, a missing amount 0."""
    if kind == "whole":
        return column.fill_null(0).to_numpy(zero_copy_only=False)
    return column.fill_null(float("nan")).to_numpy(zero_copy_only=False)


def _distinct(column: Any) -> tuple[list[str], Any]:
    """The texts of a column, and for each row the place of its own among them; -1 where there is none."""
    encoded = column.dictionary_encode()
    return encoded.dictionary.to_pylist(), encoded.indices.fill_null(-1).to_numpy(zero_copy_only=False)


def _check_currency(record: dict[str, Any], currency: str, bad: _Bad) -> None:
    words, place = _distinct(record["currency"])
    for at, word in enumerate(words):
        if word != currency:
            text = f"the amounts are in {word}, the terms in {currency}"
            bad.add(place == at, lambda row, text=text: text)  # type: ignore[misc]


def _strength(record: dict[str, Any], label: NDArray[float64], bad: _Bad) -> NDArray[float64]:
    """Of the developer in % w/w; each unit by its kernel."""
    import numpy

    found = numpy.full(len(label), numpy.nan)
    units, place = _distinct(record["developer_unit"])
    for at, unit in enumerate(units):
        chosen = (place == at) & bad.good
        try:
            with warnings.catch_warnings():
                warnings.simplefilter("ignore", OutOfRangeWarning)
                found[chosen] = peroxide.convert(label[chosen], unit, "% w/w", errors="nan")  # type: ignore[call-overload]
        except FoilworkError as error:
            text = str(error)
            bad.add(chosen, lambda row, text=text: text)  # type: ignore[misc]
            continue
        cannot = chosen & numpy.isnan(found)
        bad.add(cannot, lambda row, unit=unit: _why(peroxide.convert, float(label[row]), unit, "% w/w"))  # type: ignore[misc]
    return found


def _bowl(
    numbers: dict[str, Any], strength: NDArray[float64], bad: _Bad
) -> tuple[NDArray[float64], NDArray[int64], NDArray[int64]]:
    """Strength on the hair in % w/w, what was used and what was thrown away in whole mg."""
    import numpy

    product, developer, left = numbers["product_g"], numbers["developer_g"], numbers["left_g"]
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", OutOfRangeWarning)
        on_hair = peroxide.mix_two(0.0, product, strength, developer, errors="nan")

    def why(row: int) -> str:
        return _why(peroxide.mix_two, 0.0, float(product[row]), float(strength[row]), float(developer[row]))

    bad.add(numpy.isnan(on_hair), why)
    # Beyond what a bowl holds, whole milligrams would not fit; those rows have been refused.
    mixed_mg, left_mg = (numpy.rint(numpy.where(bad.good, grams, 0.0) * 1000) for grams in (product + developer, left))
    ratio = numbers["developer_parts"]
    bad.add(~(ratio >= 0), lambda row: f"developer_parts is {ratio[row]:g}: give 0 or more")
    bad.add(~(left_mg >= 0), lambda row: f"left_g is {left[row]:g}: give 0 or more")
    bad.add(
        left_mg > mixed_mg,
        lambda row: f"left_g is {left[row]:g}, more than the {product[row] + developer[row]:g} g that were mixed",
    )
    wasted = numpy.where(bad.good, left_mg, 0.0).astype(numpy.int64)
    return on_hair, mixed_mg.astype(numpy.int64) - wasted, wasted


def _cost(numbers: dict[str, Any], terms: Mapping[str, Any], bad: _Bad) -> NDArray[int64]:
    """Of product, developer, consumables, labour and overhead, each to the minor unit."""
    import numpy

    good = bad.good
    none, whole_none = numpy.zeros(len(good)), numpy.zeros(len(good), numpy.int64)

    def of(part: str, consumables: Any, hands_on: Any, chair: Any) -> Any:
        return money.cost_columns(
            numpy.where(good, numbers[f"{part}_pack_price_minor"], 0),
            numpy.where(good, numbers[f"{part}_pack_g"], 1.0),
            numpy.where(good, numbers[f"{part}_g"], 0.0),
            none,
            consumables,
            numpy.where(good, hands_on, 0.0),
            numpy.where(good, chair, 0.0),
            terms,
            errors="apart",
        )

    product = of("product", numbers["consumables_minor"], numbers["hands_on_min"], numbers["chair_min"])
    developer = of("developer", whole_none, none, none)
    for costs, what in ((product, "product"), (developer, "developer")):
        reasons = dict(costs.refused)
        wrong = numpy.zeros(len(good), bool)
        wrong[list(reasons)] = True
        bad.add(wrong, lambda row, reasons=reasons, what=what: f"cost of the {what}: {reasons[row]}")  # type: ignore[misc]
    return product.cost_minor + developer.cost_minor  # type: ignore[no-any-return]


def _limits(record: dict[str, Any], on_hair: NDArray[float64]) -> tuple[NDArray[bool_], NDArray[bool_]]:
    """Which bowls exceed a limit of their table, and which no table judges."""
    import numpy

    whose, whose_place = _distinct(record["jurisdiction"])
    uses, use_place = _distinct(record["use"])
    exceeded, not_judged = numpy.zeros(len(on_hair), bool), numpy.zeros(len(on_hair), bool)
    for at, jurisdiction in enumerate(whose):
        for purpose_at, use in enumerate(uses):
            chosen = (whose_place == at) & (use_place == purpose_at)
            if not chosen.any():
                continue
            ceiling = limit_ww_percent(jurisdiction, use)
            if ceiling is None:
                not_judged |= chosen
            else:
                # With the allowance that the check makes for the last digits of a sum.
                exceeded |= chosen & (on_hair > ceiling * (1.0 + 1e-9))
    return exceeded, not_judged


def limit_ww_percent(jurisdiction: str, use: str) -> float | None:
    """The most peroxide on the hair that the table allows professionals, in % w/w; None where it says none.

    Args:
        jurisdiction: as in ``foilwork.limits.check_peroxide``.
        use: as its purpose.

    Examples:
        >>> from foilwork.chain import limit_ww_percent
        >>> limit_ww_percent("EU", "lightening"), limit_ww_percent("CA", "lightening")
        (12.0, None)
    """
    try:
        # The strongest there is: every limit is exceeded.
        report = limits.check_peroxide(jurisdiction, 100.0, use)  # type: ignore[arg-type]
    except FoilworkError:
        return None
    judged = [judgement.limit for judgement in report.judgements if judgement.standing == "exceeded"]
    ceilings = [limit.concentration_ww_percent for limit in judged if limit is not None]
    return min((ceiling for ceiling in ceilings if ceiling is not None), default=None)


def _why(function: Callable[..., Any], *arguments: Any) -> str:
    """What the scalar function says against a row."""
    try:
        function(*arguments)
    except FoilworkError as error:
        return str(error)
    return "cannot be worked out"
