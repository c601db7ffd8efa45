"""Cost and price in a plan, written from the JSON Schema of a plan by ``make stubs``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foilwork._native.money import Money
from foilwork._record import Record

if TYPE_CHECKING:
    from foilwork._words import _Basis, _CostKind, _LeftOutCost, _Rounding

__all__ = ["CostLineWithShare", "CostTable", "LeftOut", "MoneyPlan", "SetPrice", "TaxedPrice"]


@dataclass(frozen=True)
class LeftOut(Record):
    """Something that the cost leaves out."""

    __slots__ = {
        "of": "The product or section, where it is one of several.",
        "what": "What.",
    }
    of: str | None
    what: _LeftOutCost


@dataclass(frozen=True)
class CostLineWithShare(Record):
    """A line, with its share of the total."""

    __slots__ = {
        "amount": "The amount, whole in minor units.",
        "basis": "Where the quantity comes from: planned (derived), weighed (measured), stated.",
        "bowl": "The bowl it belongs to, where there is one.",
        "kind": "The kind of cost.",
        "section": "The section of the head it belongs to, where there is one.",
        "share_percent": "Share of the total in percent, to one decimal; left out when the total is zero.",
        "what": "What it is, in the user's words.",
    }
    amount: Money
    basis: _Basis
    bowl: str | None
    kind: _CostKind
    section: str | None
    share_percent: str | None
    what: str


@dataclass(frozen=True)
class CostTable(Record):
    """What a service costs, line by line."""

    __slots__ = {
        "lines": "The lines.",
        "total": "The sum of the lines.",
    }
    lines: tuple[CostLineWithShare, ...]
    total: Money


@dataclass(frozen=True)
class SetPrice(Record):
    """A net price set from a cost, with both percentages, so that neither is taken for the other."""

    __slots__ = {
        "cost": "What the service costs.",
        "margin": "Profit as a part of the price.",
        "markup": "Profit as a part of the cost.",
        "price": "The net price.",
        "profit": "Price less cost.",
    }
    cost: Money
    margin: str
    markup: str
    price: Money
    profit: Money


@dataclass(frozen=True)
class TaxedPrice(Record):
    """A price with its tax: `net + tax = gross`, always."""

    __slots__ = {
        "gross": "With the tax: what the guest pays.",
        "net": "Without the tax.",
        "tax": "The tax.",
    }
    gross: Money
    net: Money
    tax: Money


@dataclass(frozen=True)
class MoneyPlan(Record):
    """What it costs and what to charge. Amounts are exact decimal text."""

    __slots__ = {
        "cost": "The cost, line by line.",
        "left_out": "What the cost leaves out because the file does not say.",
        "price": "The net price with margin and mark-up, where one of them is given.",
        "rounding": "How amounts are rounded.",
        "taxed": "The same price with its tax, where a rate is given.",
    }
    cost: CostTable
    left_out: tuple[LeftOut, ...]
    price: SetPrice | None
    rounding: _Rounding
    taxed: TaxedPrice | None
