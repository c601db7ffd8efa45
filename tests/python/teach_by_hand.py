"""Answers of worksheet problems, worked from what is given by fractions and decimals, without foilwork."""

from collections.abc import Callable, Mapping
from datetime import datetime, timedelta
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from math import ceil

Given = Mapping[str, str]
Worked = Fraction | str

# The painter's wheel in twelve steps, and the trade's list of exposed pigment (common practice).
WHEEL = [
    "red",
    "red-orange",
    "orange",
    "yellow-orange",
    "yellow",
    "yellow-green",
    "green",
    "blue-green",
    "blue",
    "blue-violet",
    "violet",
    "red-violet",
]
SHOWS = {
    2: ("very dark red-brown", "red"),
    3: ("dark red (red-brown)", "red"),
    4: ("red", "red"),
    5: ("red-orange", "red-orange"),
    6: ("orange", "orange"),
    7: ("yellow-orange", "yellow-orange"),
    8: ("yellow", "yellow"),
    9: ("pale yellow", "yellow"),
    10: ("very pale yellow", "yellow"),
}


def opposite(hue: str) -> str:
    return WHEEL[(WHEEL.index(hue) + 6) % 12]


def cents(amount: Fraction) -> Fraction:
    """To the nearest hundredth, a half away from zero."""
    exact = Decimal(amount.numerator) / Decimal(amount.denominator)
    return Fraction(exact.quantize(Decimal("0.01"), rounding=ROUND_HALF_UP))


def multiple(value: Fraction, step: Fraction) -> Fraction:
    """The nearest multiple; no problem lies in the middle between two."""
    return Fraction(int(value / step + Fraction(1, 2))) * step


def later(start: str, minutes: Fraction) -> str:
    at = datetime.strptime(start, "%H:%M") + timedelta(minutes=int(minutes))
    return f"{at.hour}:{at.minute:02}"


def between(start: str, end: str) -> Fraction:
    first, last = (datetime.strptime(at, "%H:%M") for at in (start, end))
    return Fraction(int((last - first).total_seconds()), 60)


class Numbers:
    """What is given, as fractions by attribute."""

    def __init__(self, given: Given) -> None:
        self.given = given

    def __getattr__(self, name: str) -> Fraction:
        value = self.__dict__[name] = Fraction(self.given[name])
        return value


def strong_share(n: Numbers) -> Fraction:
    return (n.target_ww_percent - n.weak_ww_percent) / (n.strong_ww_percent - n.weak_ww_percent)


def on_hair(n: Numbers) -> Fraction:
    return n.developer_ww_percent * n.developer_g / (n.product_g + n.developer_g)


def an_hour(n: Numbers) -> Fraction:
    return n.wage_per_h * (100 + n.on_costs_percent) / 100


def rounding_error(n: Numbers) -> Fraction:
    return abs(multiple(n.wanted_g, n.division_g) - n.wanted_g) / n.wanted_g * 100


def after_discount(n: Numbers) -> Fraction:
    before = n.price - n.variable_cost
    after = n.price * (100 - n.discount_percent) / 100 - n.variable_cost
    return Fraction(ceil(n.sold * before / after))


def first_look(n: Numbers) -> Fraction:
    """The first of the looks at which the line that is read stands high enough."""
    levels = {minutes: getattr(n, f"level_after_{minutes}_min") for minutes in (10, 20, 30, 40)}
    return Fraction(min(minutes for minutes, level in levels.items() if level >= n.target_level))


WORKED: dict[str, Callable[[Numbers], Worked]] = {
    "label-to-percent": lambda n: n.label_vol * 3 / 10,
    "peroxide-in-bottle": lambda n: n.developer_g * n.strength_ww_percent / 100,
    "part-of-peroxide": lambda n: n.peroxide_g / n.strength_ww_percent * 100,
    "ww-to-wv": lambda n: n.strength_ww_percent * n.density_g_per_ml,
    "wv-to-ww": lambda n: n.strength_wv_percent / n.density_g_per_ml,
    "volumes-to-g-per-l": lambda n: 2 * n.strength_volumes / n.molar_volume_l_per_mol * n.molar_mass_g_per_mol,
    "dilute-to-total": lambda n: n.total_g * n.target_ww_percent / n.stock_ww_percent,
    "water-for-total": lambda n: n.total_g * (1 - n.target_ww_percent / n.stock_ww_percent),
    "water-to-add": lambda n: n.stock_g * (n.stock_ww_percent / n.target_ww_percent - 1),
    "strength-of-blend": lambda n: (
        (n.first_ww_percent * n.first_g + n.second_ww_percent * n.second_g) / (n.first_g + n.second_g)
    ),
    "alligation": lambda n: n.total_g * strong_share(n),
    "add-strong-to-weak": lambda n: n.weak_g * strong_share(n) / (1 - strong_share(n)),
    "strength-after-water": lambda n: n.stock_ww_percent * n.stock_g / (n.stock_g + n.water_g),
    "developer-for-colour": lambda n: n.colour_g * n.developer_parts,
    "colour-for-developer": lambda n: n.developer_g / n.developer_parts,
    "split-total": lambda n: n.total_g / (1 + n.developer_parts),
    "share-of-bowl": lambda n: n.lightener_parts / (n.lightener_parts + n.developer_parts) * 100,
    "three-shades": lambda n: n.total_g * n.first_parts / (n.first_parts + n.second_parts + n.third_parts),
    "total-from-one-shade": lambda n: n.second_g / n.second_parts * (n.first_parts + n.second_parts + n.third_parts),
    "round-to-scale": lambda n: multiple(n.wanted_g, n.division_g),
    "running-total": lambda n: n.first_g + n.second_g + n.third_g,
    "rounding-error": rounding_error,
    "smallest-mass": lambda n: n.division_g / 2 / n.tolerance_percent * 100,
    "strength-on-hair": on_hair,
    "room-to-limit": lambda n: n.limit_ww_percent - on_hair(n),
    "strongest-developer": lambda n: n.limit_ww_percent * (n.product_g + n.developer_g) / n.developer_g,
    "levels-of-lift": lambda n: n.target_level - n.natural_level,
    "formula-level": lambda n: 2 * n.target_level - n.natural_level,
    "result-level": lambda n: (n.natural_level + n.shade_level) / 2,
    "blended-level": lambda n: (n.first_level * n.first_g + n.second_level * n.second_g) / (n.first_g + n.second_g),
    "exposed-pigment": lambda n: SHOWS[int(n.level)][0],
    "complement": lambda n: opposite(n.given["hue"]),
    "neutralising-hue": lambda n: opposite(SHOWS[int(n.level)][1]),
    "hue-after-lift": lambda n: opposite(SHOWS[int(n.natural_level + n.lift_levels)][1]),
    "mix-for-hair": lambda n: n.hair_g * n.take_up_g_per_g,
    "foils-of-panel": lambda n: Fraction(int((n.panel_mm + n.left_mm) / (n.slice_mm + n.left_mm))),
    "mix-per-foil": lambda n: n.mix_g * (100 + n.spare_percent) / 100 / n.foils,
    "share-in-weave": lambda n: n.picks * n.pick_mm / n.width_mm * 100,
    "regrowth": lambda n: n.rate_cm_per_month * n.weeks * 7 / n.days_per_month,
    "rinse-at": lambda n: later(n.given["start"], n.apply_min + n.develop_min),
    "first-strand": lambda n: between(n.given["start"], n.given["rinsed"]),
    "time-left-for-development": lambda n: n.limit_min - n.foils * n.foil_min,
    "cost-of-grams": lambda n: cents(n.pack_price * n.used_g / n.pack_g),
    "packs-to-buy": lambda n: Fraction(ceil(n.need_g / n.pack_g)),
    "cost-of-minutes": lambda n: cents(an_hour(n) * n.worked_min / 60),
    "cost-of-service": lambda n: (
        n.product_cost + cents(n.wage_per_h * n.worked_min / 60) + cents(n.chair_per_h * n.chair_min / 60)
    ),
    "price-from-markup": lambda n: cents(n.cost * (100 + n.markup_percent) / 100),
    "price-from-margin": lambda n: cents(n.cost * 100 / (100 - n.margin_percent)),
    "margin-of-price": lambda n: (n.price - n.cost) / n.price * 100,
    "markup-to-margin": lambda n: n.markup_percent / (100 + n.markup_percent) * 100,
    "add-tax": lambda n: n.net + cents(n.net * n.tax_percent / 100),
    "net-of-gross": lambda n: cents(n.gross * 100 / (100 + n.tax_percent)),
    "tax-in-gross": lambda n: cents(n.gross * n.tax_percent / (100 + n.tax_percent)),
    "contribution": lambda n: n.price - n.variable_cost,
    "services-to-break-even": lambda n: Fraction(ceil(n.fixed / (n.price - n.variable_cost))),
    "services-for-profit": lambda n: Fraction(ceil((n.fixed + n.profit) / (n.price - n.variable_cost))),
    "services-after-discount": after_discount,
    "read-dilution-grid": lambda n: n.wanted_g * n.target_ww_percent / n.stock_ww_percent,
    "read-pigment-chart": lambda n: opposite(SHOWS[int(n.level)][1]),
    "read-lift-curve": first_look,
    "read-timeline": lambda n: n.rinse_min - n.start_min,
    # Counted one by one.
    "read-head-map": lambda n: Fraction(len(range(int(n.first_foil), int(n.last_foil) + 1))),
    "read-cost-shares": lambda n: n.labour_cost * n.rise_percent / (n.product_cost + n.labour_cost + n.overhead_cost),
}


def worked(kind: str, given: Given | Numbers) -> Worked:
    """The answer to a problem, not rounded but for money."""
    return WORKED[kind](given if isinstance(given, Numbers) else Numbers(given))
