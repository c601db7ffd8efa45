"""What each usual error makes of a worksheet problem, worked from what is given and from the error's own words.

Nothing here is foilwork's: the sums are fractions, decimals for what is rounded, and the clock of the standard library.
An error that gives one of the parts, a given number or the answer beside it is said once for all kinds; the others each
stand with the sum they belong to. Where an error can lead to two answers, either may be offered.
"""

from collections.abc import Callable
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from math import ceil, floor

from teach_by_hand import (
    SHOWS,
    WHEEL,
    Numbers,
    Worked,
    after_discount,
    an_hour,
    between,
    cents,
    first_look,
    later,
    multiple,
    on_hair,
    opposite,
    strong_share,
    worked,
)

Wrong = Worked | tuple[Worked, ...]

# Which number of the question is written down again.
GIVEN = {
    "blended-level": "second_level",
    "colour-for-developer": "developer_g",
    "contribution": "price",
    "cost-of-grams": "pack_price",
    "developer-for-colour": "colour_g",
    "formula-level": "target_level",
    "levels-of-lift": "target_level",
    "mix-for-hair": "hair_g",
    "packs-to-buy": "pack_g",
    "peroxide-in-bottle": "strength_ww_percent",
    "read-cost-shares": "rise_percent",
    "read-head-map": "last_foil",
    "read-timeline": "rinse_min",
    "result-level": "shade_level",
    "round-to-scale": "wanted_g",
    "running-total": "third_g",
    "time-left-for-development": "limit_min",
    "ww-to-wv": "density_g_per_ml",
}

# The whole of which the answer is one part: the other part is what is left of it.
WHOLE: dict[str, Callable[[Numbers], Fraction]] = {
    "alligation": lambda n: n.total_g,
    "blended-level": lambda n: n.first_level + n.second_level,
    "contribution": lambda n: n.price,
    "dilute-to-total": lambda n: n.total_g,
    "margin-of-price": lambda n: Fraction(100),
    "markup-to-margin": lambda n: Fraction(100),
    "net-of-gross": lambda n: n.gross,
    "peroxide-in-bottle": lambda n: n.developer_g,
    "read-cost-shares": lambda n: n.rise_percent,
    "read-dilution-grid": lambda n: n.wanted_g,
    "room-to-limit": lambda n: n.limit_ww_percent,
    "share-in-weave": lambda n: Fraction(100),
    "share-of-bowl": lambda n: Fraction(100),
    "split-total": lambda n: n.total_g,
    "strength-after-water": lambda n: n.stock_ww_percent,
    "strength-on-hair": lambda n: n.developer_ww_percent,
    "tax-in-gross": lambda n: n.gross,
    "time-left-for-development": lambda n: n.limit_min,
    "water-for-total": lambda n: n.total_g,
}


def percent_of(n: Numbers, whole: Fraction) -> Fraction:
    return abs(multiple(n.wanted_g, n.division_g) - n.wanted_g) / whole * 100


def nearest(n: Numbers, step: Fraction) -> Worked:
    """To a step that the scale does not have, by the decimal library."""
    steps = Decimal(n.given["wanted_g"]) * step.denominator / step.numerator
    return Fraction(steps.quantize(Decimal(1), rounding=ROUND_HALF_UP)) * step


def as_decimal(clock: str) -> Fraction:
    """An hour taken for a hundred minutes."""
    hours, minutes = clock.split(":")
    return Fraction(int(hours) * 100 + int(minutes))


def hundreds(n: Numbers) -> str:
    read = int(as_decimal(n.given["start"]) + n.apply_min + n.develop_min)
    return f"{read // 100}:{read % 100:02}"


def neighbours(hue: str) -> tuple[str, str]:
    place = WHEEL.index(hue)
    return WHEEL[place - 1], WHEEL[(place + 1) % 12]


def warmth(level: Fraction) -> str:
    return SHOWS[int(level)][1]


def early(n: Numbers) -> Fraction:
    """The price of a gram in whole cents."""
    return cents(n.pack_price / n.pack_g) * n.used_g


def service(n: Numbers, chair_min: Fraction, hour: int = 60) -> Fraction:
    return n.product_cost + cents(n.wage_per_h * n.worked_min / hour) + cents(n.chair_per_h * chair_min / hour)


def contribution(n: Numbers) -> Fraction:
    return n.price - n.variable_cost


def below(value: Fraction) -> Fraction:
    return Fraction(floor(value))


def above(value: Fraction) -> Fraction:
    return Fraction(ceil(value))


ERRORS: dict[tuple[str, str], Callable[[Numbers], Wrong]] = {
    ("add-strong-to-weak", "denominator"): lambda n: n.weak_g * strong_share(n),
    ("add-strong-to-weak", "inverted"): lambda n: n.weak_g * (1 - strong_share(n)) / strong_share(n),
    ("add-strong-to-weak", "part-and-whole"): lambda n: n.weak_g / (1 - strong_share(n)),
    ("add-tax", "denominator"): lambda n: n.net * 100 / (100 - n.tax_percent),
    ("add-tax", "inverted"): lambda n: n.net * 100 / (100 + n.tax_percent),
    ("add-tax", "part-and-whole"): lambda n: n.net * n.tax_percent / 100,
    ("alligation", "denominator"): lambda n: (
        n.total_g * (n.target_ww_percent - n.weak_ww_percent) / n.strong_ww_percent
    ),
    ("alligation", "other-rule"): lambda n: n.total_g * n.target_ww_percent / n.strong_ww_percent,
    ("blended-level", "plain-mean"): lambda n: (n.first_level + n.second_level) / 2,
    ("colour-for-developer", "denominator"): lambda n: n.developer_g / (1 + n.developer_parts),
    ("colour-for-developer", "inverted"): lambda n: n.developer_g * n.developer_parts,
    ("complement", "neighbour-hue"): lambda n: neighbours(opposite(n.given["hue"])),
    ("complement", "same-hue"): lambda n: n.given["hue"],
    ("contribution", "added"): lambda n: n.price + n.variable_cost,
    ("cost-of-grams", "inverted"): lambda n: n.pack_price * n.pack_g / n.used_g,
    ("cost-of-grams", "rounded-too-early"): early,
    ("cost-of-minutes", "hundred-minutes"): lambda n: an_hour(n) * n.worked_min / 100,
    ("cost-of-minutes", "inverted"): lambda n: an_hour(n) * 60 / n.worked_min,
    ("cost-of-minutes", "left-out"): lambda n: n.wage_per_h * n.worked_min / 60,
    ("cost-of-service", "hundred-minutes"): lambda n: service(n, n.chair_min, 100),
    ("cost-of-service", "left-out"): lambda n: service(n, Fraction(0)),
    ("cost-of-service", "part-and-whole"): lambda n: service(n, n.worked_min),
    ("developer-for-colour", "inverted"): lambda n: n.colour_g / n.developer_parts,
    ("developer-for-colour", "part-and-whole"): lambda n: n.colour_g * (1 + n.developer_parts),
    ("dilute-to-total", "denominator"): lambda n: n.total_g * n.target_ww_percent / 100,
    ("dilute-to-total", "inverted"): lambda n: n.total_g * n.stock_ww_percent / n.target_ww_percent,
    ("dilute-to-total", "part-and-whole"): lambda n: (
        n.total_g * n.target_ww_percent / (n.stock_ww_percent + n.target_ww_percent)
    ),
    ("exposed-pigment", "next-row"): lambda n: (SHOWS[int(n.level) - 1][0], SHOWS[int(n.level) + 1][0]),
    ("exposed-pigment", "other-rule"): lambda n: opposite(warmth(n.level)),
    ("first-strand", "hundred-minutes"): lambda n: as_decimal(n.given["rinsed"]) - as_decimal(n.given["start"]),
    # Either what lies before the last strand or what lies behind it is left out.
    ("first-strand", "left-out"): lambda n: (
        between(n.given["start"], n.given["applied"]),
        between(n.given["applied"], n.given["rinsed"]),
    ),
    ("foils-of-panel", "left-out"): lambda n: below(n.panel_mm / n.slice_mm),
    ("formula-level", "lift-as-factor"): lambda n: (
        (n.target_level - n.natural_level) * n.target_level - n.natural_level
    ),
    ("formula-level", "other-rule"): lambda n: (n.natural_level + n.target_level) / 2,
    # Two targets less the natural level are the target and the lift.
    ("formula-level", "part-and-whole"): lambda n: n.target_level - n.natural_level,
    ("hue-after-lift", "neighbour-hue"): lambda n: neighbours(opposite(warmth(n.natural_level + n.lift_levels))),
    ("hue-after-lift", "same-hue"): lambda n: warmth(n.natural_level + n.lift_levels),
    ("hue-after-lift", "start-for-end"): lambda n: opposite(warmth(n.natural_level)),
    ("label-to-percent", "denominator"): lambda n: n.label_vol / 3,
    ("label-to-percent", "volumes-for-percent"): lambda n: n.label_vol,
    ("margin-of-price", "inverted"): lambda n: n.price / n.cost * 100,
    ("margin-of-price", "markup-for-margin"): lambda n: (n.price - n.cost) / n.cost * 100,
    ("markup-to-margin", "margin-for-markup"): lambda n: n.markup_percent,
    # The way from a margin to the mark-up.
    ("markup-to-margin", "other-rule"): lambda n: n.markup_percent / (100 - n.markup_percent) * 100,
    ("mix-for-hair", "inverted"): lambda n: n.hair_g / n.take_up_g_per_g,
    ("mix-for-hair", "part-and-whole"): lambda n: n.hair_g + n.hair_g * n.take_up_g_per_g,
    ("mix-per-foil", "denominator"): lambda n: n.mix_g * 100 / (100 - n.spare_percent) / n.foils,
    ("mix-per-foil", "inverted"): lambda n: n.foils * 100 / (n.mix_g * (100 + n.spare_percent)),
    ("mix-per-foil", "left-out"): lambda n: n.mix_g / n.foils,
    # Percent taken off instead of put on.
    ("mix-per-foil", "other-rule"): lambda n: n.mix_g * (100 - n.spare_percent) / 100 / n.foils,
    ("net-of-gross", "inverted"): lambda n: n.gross * (100 + n.tax_percent) / 100,
    ("net-of-gross", "tax-off-gross"): lambda n: n.gross * (100 - n.tax_percent) / 100,
    ("neutralising-hue", "neighbour-hue"): lambda n: neighbours(opposite(warmth(n.level))),
    ("neutralising-hue", "same-hue"): lambda n: warmth(n.level),
    ("part-of-peroxide", "inverted"): lambda n: n.peroxide_g * n.strength_ww_percent,
    ("part-of-peroxide", "part-and-whole"): lambda n: n.peroxide_g * n.strength_ww_percent / 100,
    ("peroxide-in-bottle", "inverted"): lambda n: n.developer_g / n.strength_ww_percent,
    ("price-from-margin", "left-out"): lambda n: n.cost * n.margin_percent / 100,
    ("price-from-margin", "markup-for-margin"): lambda n: n.cost * (100 + n.margin_percent) / 100,
    ("price-from-margin", "part-and-whole"): lambda n: n.cost * 100 / n.margin_percent,
    ("price-from-markup", "left-out"): lambda n: n.cost * n.markup_percent / 100,
    ("price-from-markup", "margin-for-markup"): lambda n: n.cost * 100 / (100 - n.markup_percent),
    ("price-from-markup", "part-and-whole"): lambda n: n.cost * 100 / n.markup_percent,
    ("read-cost-shares", "part-and-whole"): lambda n: (
        n.labour_cost / (n.product_cost + n.labour_cost + n.overhead_cost) * 100
    ),
    ("read-dilution-grid", "left-out"): lambda n: n.grid_g * n.target_ww_percent / n.stock_ww_percent,
    # The grid's bottles are of 6, 9 and 12 %: the row below, and in the last one the row above.
    ("read-dilution-grid", "next-row"): lambda n: (
        n.wanted_g * n.target_ww_percent / (n.stock_ww_percent + 3 if n.stock_ww_percent < 12 else Fraction(9))
    ),
    # The foils are numbered through: the first region begins with foil 1.
    ("read-head-map", "next-row"): lambda n: n.other_last_foil,
    ("read-lift-curve", "next-row"): lambda n: (first_look(n) - 10, first_look(n) + 10),
    # Waiting for the limit of the picture whatever the line says.
    ("read-lift-curve", "other-rule"): lambda n: Fraction(45),
    ("read-pigment-chart", "next-row"): lambda n: (opposite(warmth(n.level - 1)), opposite(warmth(n.level + 1))),
    ("read-pigment-chart", "same-hue"): lambda n: warmth(n.level),
    ("read-timeline", "left-out"): lambda n: n.rinse_min - n.applied_min,
    ("read-timeline", "next-row"): lambda n: n.other_rinse_min - n.other_start_min,
    ("regrowth", "inverted"): lambda n: n.weeks * 7 / n.days_per_month / n.rate_cm_per_month,
    ("regrowth", "left-out"): lambda n: n.rate_cm_per_month * n.weeks / n.days_per_month,
    ("regrowth", "weeks-for-months"): lambda n: n.rate_cm_per_month * n.weeks,
    ("result-level", "left-out"): lambda n: (n.shade_level - n.natural_level) / 2,
    ("result-level", "other-rule"): lambda n: 2 * n.shade_level - n.natural_level,
    ("rinse-at", "hundred-minutes"): hundreds,
    ("rinse-at", "left-out"): lambda n: (later(n.given["start"], n.develop_min), later(n.given["start"], n.apply_min)),
    ("room-to-limit", "bottle-for-hair"): lambda n: n.limit_ww_percent - n.developer_ww_percent,
    ("room-to-limit", "denominator"): lambda n: 100 * (1 - on_hair(n) / n.limit_ww_percent),
    ("round-to-scale", "cut-off"): lambda n: below(n.wanted_g / n.division_g) * n.division_g,
    ("round-to-scale", "rounded-up"): lambda n: above(n.wanted_g / n.division_g) * n.division_g,
    ("round-to-scale", "wrong-step"): lambda n: (nearest(n, Fraction(1)), nearest(n, Fraction(1, 10))),
    ("rounding-error", "denominator"): lambda n: percent_of(n, multiple(n.wanted_g, n.division_g)),
    ("rounding-error", "left-out"): lambda n: percent_of(n, Fraction(1)),
    # The whole step for the part of it that the mass is off.
    ("rounding-error", "part-and-whole"): lambda n: n.division_g / n.wanted_g * 100,
    ("running-total", "left-out"): lambda n: (n.first_g + n.second_g, n.second_g + n.third_g),
    ("services-after-discount", "left-out"): lambda n: above(n.sold * 100 / (100 - n.discount_percent)),
    ("services-after-discount", "part-and-whole"): lambda n: above(n.sold * (100 + n.discount_percent) / 100),
    ("services-after-discount", "rounded-down"): lambda n: after_discount(n) - 1,
    ("services-for-profit", "denominator"): lambda n: above((n.fixed + n.profit) / n.price),
    ("services-for-profit", "left-out"): lambda n: above(n.fixed / contribution(n)),
    ("services-for-profit", "rounded-down"): lambda n: below((n.fixed + n.profit) / contribution(n)),
    ("services-to-break-even", "denominator"): lambda n: above(n.fixed / n.variable_cost),
    ("services-to-break-even", "left-out"): lambda n: above(n.fixed / n.price),
    ("services-to-break-even", "rounded-down"): lambda n: below(n.fixed / contribution(n)),
    ("share-in-weave", "denominator"): lambda n: n.pick_mm / (n.width_mm / n.picks - n.pick_mm) * 100,
    ("share-in-weave", "inverted"): lambda n: n.width_mm / (n.picks * n.pick_mm) * 100,
    ("share-in-weave", "left-out"): lambda n: n.pick_mm / n.width_mm * 100,
    ("share-of-bowl", "denominator"): lambda n: n.lightener_parts / n.developer_parts * 100,
    ("share-of-bowl", "inverted"): lambda n: (n.lightener_parts + n.developer_parts) / n.lightener_parts * 100,
    ("smallest-mass", "inverted"): lambda n: n.division_g / 2 * n.tolerance_percent,
    ("smallest-mass", "left-out"): lambda n: n.division_g / n.tolerance_percent * 100,
    ("split-total", "inverted"): lambda n: n.total_g * (1 + n.developer_parts),
    ("split-total", "part-and-whole"): lambda n: n.total_g / n.developer_parts,
    ("strength-after-water", "denominator"): lambda n: n.stock_ww_percent * n.stock_g / n.water_g,
    ("strength-after-water", "plain-mean"): lambda n: n.stock_ww_percent / 2,
    ("strength-of-blend", "added"): lambda n: n.first_ww_percent + n.second_ww_percent,
    ("strength-of-blend", "denominator"): lambda n: (
        (n.first_ww_percent * n.first_g + n.second_ww_percent * n.second_g) / n.first_g
    ),
    ("strength-of-blend", "plain-mean"): lambda n: (n.first_ww_percent + n.second_ww_percent) / 2,
    ("strength-on-hair", "bottle-for-hair"): lambda n: n.developer_ww_percent,
    ("strength-on-hair", "plain-mean"): lambda n: n.developer_ww_percent / 2,
    ("strongest-developer", "bottle-for-hair"): lambda n: n.limit_ww_percent,
    ("strongest-developer", "denominator"): lambda n: n.limit_ww_percent * (n.product_g + n.developer_g) / n.product_g,
    ("strongest-developer", "inverted"): lambda n: n.limit_ww_percent * n.developer_g / (n.product_g + n.developer_g),
    ("tax-in-gross", "denominator"): lambda n: n.gross * n.tax_percent / (100 - n.tax_percent),
    ("tax-in-gross", "tax-off-gross"): lambda n: n.gross * n.tax_percent / 100,
    ("three-shades", "denominator"): lambda n: n.total_g * n.first_parts / (n.second_parts + n.third_parts),
    ("three-shades", "left-out"): lambda n: n.total_g * n.first_parts,
    # Another part of the three than the one that is asked for.
    ("three-shades", "other-part"): lambda n: (
        n.total_g * n.second_parts / (n.first_parts + n.second_parts + n.third_parts)
    ),
    ("three-shades", "plain-mean"): lambda n: n.total_g / 3,
    ("time-left-for-development", "added"): lambda n: n.limit_min + n.foils * n.foil_min,
    ("total-from-one-shade", "denominator"): lambda n: (
        n.second_g * (n.first_parts + n.second_parts + n.third_parts) / n.first_parts
    ),
    ("total-from-one-shade", "left-out"): lambda n: n.second_g / n.second_parts * (n.first_parts + n.third_parts),
    ("total-from-one-shade", "part-and-whole"): lambda n: n.second_g * (n.first_parts + n.second_parts + n.third_parts),
    ("volumes-to-g-per-l", "inverted"): lambda n: (
        2 * n.strength_volumes * n.molar_volume_l_per_mol / n.molar_mass_g_per_mol
    ),
    ("volumes-to-g-per-l", "stoichiometry"): lambda n: (
        n.strength_volumes / n.molar_volume_l_per_mol * n.molar_mass_g_per_mol
    ),
    ("volumes-to-g-per-l", "volumes-for-percent"): lambda n: n.strength_volumes * 10,
    ("water-for-total", "denominator"): lambda n: n.total_g * (n.stock_ww_percent - n.target_ww_percent) / 100,
    ("water-for-total", "part-and-whole"): lambda n: (
        n.total_g * (n.stock_ww_percent - n.target_ww_percent) / (n.stock_ww_percent + n.target_ww_percent)
    ),
    ("water-to-add", "denominator"): lambda n: n.stock_g * (1 - n.target_ww_percent / n.stock_ww_percent),
    # The stock for so much of the target, as if what is left were the total.
    ("water-to-add", "other-rule"): lambda n: n.stock_g * n.target_ww_percent / n.stock_ww_percent,
    ("water-to-add", "part-and-whole"): lambda n: n.stock_g * n.stock_ww_percent / n.target_ww_percent,
    ("wv-to-ww", "inverted"): lambda n: n.strength_wv_percent * n.density_g_per_ml,
    ("wv-to-ww", "wv-for-ww"): lambda n: n.strength_wv_percent,
    ("ww-to-wv", "inverted"): lambda n: n.strength_ww_percent / n.density_g_per_ml,
    ("ww-to-wv", "wv-for-ww"): lambda n: n.strength_ww_percent,
}

# Beside the answer by so much, or ten times it: the way of the error is the same for every kind.
BESIDE = {"both-ends": 1, "one-too-few": -1, "one-too-many": 1}


def mistaken(kind: str, mistake: str, numbers: Numbers) -> tuple[Worked, ...]:
    """What the error leads to, not rounded but where the error or the question rounds."""
    if derive := ERRORS.get((kind, mistake)):
        found = derive(numbers)
        return found if isinstance(found, tuple) else (found,)
    if mistake == "given-for-answer":
        return (getattr(numbers, GIVEN[kind]),)
    answer = worked(kind, numbers)
    assert isinstance(answer, Fraction)
    if mistake == "other-part":
        return (WHOLE[kind](numbers) - answer,)
    if mistake == "decimal-point":
        return answer / 10, answer * 10
    if mistake == "rounded-down":
        return (answer - 1,)
    return (answer + BESIDE[mistake],)
