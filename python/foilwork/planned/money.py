"""Cost and price in a plan, written from the JSON Schema of a plan by ``make stubs``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foilwork._native.money import Money
from foilwork._record import Record

if TYPE_CHECKING:
    from foilwork._words import _Basis, _CostKind, _LeftOutCost, _Rounding, _ServiceClass, _Toward

__all__ = [
    "Booking",
    "CostLineWithShare",
    "CostRange",
    "CostTable",
    "LeftOut",
    "MoneyPlan",
    "PriceAt",
    "PriceRange",
    "PricedBy",
    "SetPrice",
    "TaxedPrice",
]


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
class Booking(Record):
    """What to book the service as, and what the price list says for it."""

    __slots__ = {
        "book_min": "How long to book, in whole quarters of an hour; absent where no day with a finish is laid out.",
        "by_cost": (
            "What the guest would pay by the costs of this service and the terms of the shop; absent without a price "
            "target."
        ),
        "card_fee": "What the card terminal keeps of the price; absent where that is nothing.",
        "extra": "Of that, what time in the chair beyond the one included costs.",
        "in_chair_min": (
            "How long the guest is in the chair: bowls, looks and basin with it where the day could be laid out, else "
            "as planned."
        ),
        "net": "The price without tax; absent where no tax is stated.",
        "price": (
            "What the guest pays by the price list, tax included; absent where the list says nothing for the class."
        ),
        "price_why_not": "Why there is no price.",
        "service_class": "The class of the service.",
        "tax_percent": "The rate of that tax.",
    }
    book_min: float | None
    by_cost: Money | None
    card_fee: Money | None
    extra: Money | None
    in_chair_min: float
    net: Money | None
    price: Money | None
    price_why_not: str | None
    service_class: _ServiceClass
    tax_percent: str | None


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
class CostRange(Record):
    """A cost as the hair may take less or more mixture than is planned, whatever is asked for it."""

    __slots__ = {
        "least": "Where bowls that are not needed are not mixed.",
        "most": "Where the hair takes as much as the estimate goes up to.",
    }
    least: Money
    most: Money


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
class PriceAt(Record):
    """Cost and price of one case."""

    __slots__ = {
        "cost": "What it costs.",
        "gross": "The price with its tax; the same where none is stated.",
        "net": "The price before tax.",
    }
    cost: Money
    gross: Money
    net: Money


@dataclass(frozen=True)
class PriceRange(Record):
    """A price as the hair may take less or more mixture than is planned. It covers one visit and the times as planned,
    and nothing that the cost leaves out.
    """

    __slots__ = {
        "least": "Where bowls that are not needed are not mixed; a bowl that is begun is paid for.",
        "most": "Where the hair takes as much as the estimate goes up to, all of it mixed fresh.",
    }
    least: PriceAt
    most: PriceAt


@dataclass(frozen=True)
class PricedBy(Record):
    """By what a price is found: what it must achieve, what is taken from it, and which prices the list allows."""

    __slots__ = {
        "card_fee": "Both together, of this price.",
        "card_fixed": "What it keeps of each payment besides.",
        "card_percent": "What the card terminal keeps of the payment.",
        "margin_percent": "The margin asked for.",
        "markup_percent": "The mark-up asked for.",
        "moved": "Whether the list moved the price, with its tax, to one of its own.",
        "per_chair_h": "What an hour in the chair has to bring over the cost.",
        "price_ending": "The least of them.",
        "price_ending_toward": "Which neighbour is taken.",
        "price_step": "The prices that the list allows lie so far apart.",
        "target_net": "Net price that meets what is asked for, before the list moves it.",
        "tax_percent": "The tax on top.",
    }
    card_fee: Money
    card_fixed: Money | None
    card_percent: str | None
    margin_percent: str | None
    markup_percent: str | None
    moved: bool
    per_chair_h: Money | None
    price_ending: Money | None
    price_ending_toward: _Toward | None
    price_step: Money | None
    target_net: Money
    tax_percent: str | None


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
        "cost_range": "The cost as the hair may take less or more mixture; absent where that moves nothing.",
        "left_out": "What the cost leaves out because the file does not say.",
        "price": "The net price with margin and mark-up, where one of them is given.",
        "priced_by": "By what the price was found.",
        "range": "The price as the hair may take less or more mixture; absent where that moves nothing.",
        "rounding": "How amounts are rounded.",
        "taxed": "The same price with its tax, where a rate is given.",
    }
    cost: CostTable
    cost_range: CostRange | None
    left_out: tuple[LeftOut, ...]
    price: SetPrice | None
    priced_by: PricedBy | None
    range: PriceRange | None
    rounding: _Rounding
    taxed: TaxedPrice | None
