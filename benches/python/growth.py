"""How time grows with the length of every list that foilwork reads: linear, or bounded and said so.

Run ``python benches/python/growth.py`` (release build of the module) for the table, from ten items to the bound of each
list. Time is processor time of this process, the least of several runs; the slope is that of log time over log length
between one length and the next; between the two longest no fixed cost hides it. One is linear.
"""

import copy
import json
import math
import time
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any, NamedTuple

import foilwork
from foilwork import business, colour, lift, limits, mix, money, peroxide, record, shop

Work = Callable[[], object]
EXAMPLE = tomllib.loads((Path(__file__).parents[2] / "examples" / "soft-gradient.toml").read_text(encoding="utf-8"))
TERMS = {
    "currency": "EUR",
    "wage_per_h": "18.00",
    "paid_h": 38,
    "productive_h": 19,
    "overhead": "48000",
    "chairs": 4,
    "productive_h_per_chair": 1200,
    "margin_percent": 25,
}


class List(NamedTuple):
    """A list that grows: how to make the work for so many items, and how many are accepted."""

    work: Callable[[int], Work]
    most: int


def service(change: Callable[[dict[str, Any], int], None]) -> Callable[[int], Work]:
    def work(count: int) -> Work:
        file = copy.deepcopy(EXAMPLE)
        change(file, count)
        text = json.dumps(file, default=str)
        return lambda: foilwork.plan(text, "json")

    return work


def on_the_shelf(kind: str, name: str) -> Callable[[dict[str, Any], int], None]:
    """So many more products of a kind, each a copy of the first under a name of its own."""

    def change(file: dict[str, Any], count: int) -> None:
        shelf = file["shop"][kind]
        shelf += [{**shelf[0], name: f"spare {number}"} for number in range(count)]

    return change


def more_sections(file: dict[str, Any], count: int) -> None:
    own = {"regions", "after", "share_percent"}
    crown = {key: value for key, value in file["section"][1].items() if key not in own}
    share = {"share_percent": 50 / count}
    file["section"] += [{**crown, **share, "name": f"row {number}"} for number in range(count)]


def chained_sections(file: dict[str, Any], count: int) -> None:
    more_sections(file, count)
    for one, other in zip(file["section"][-count:], file["section"][-count + 1 :], strict=False):
        one["after"] = [{"section": other["name"]}]


def more_toners(file: dict[str, Any], count: int) -> None:
    more_sections(file, count)
    file["toner"] += [
        {**file["toner"][0], "name": f"gloss {number}", "sections": [f"row {number}"]} for number in range(count)
    ]


def more_strands(file: dict[str, Any], count: int) -> None:
    file["strand"] = [
        {
            "product": "Foam Line powder",
            "developer": "developer 6",
            "before_level": 6,
            "after_level": 8,
            "time_min": 30,
            "reader": "eye",
        }
    ] * count


def shop_text(count: int) -> Work:
    shelf = "".join(
        f'[[developer]]\nname = "bottle {number}"\nstrength = "6 % w/w"\nstrength_basis = "measured"\n'
        f'pack_g = 1000\nprice = "8.90"\n'
        for number in range(count)
    )
    text = f'format = 1\nname = "Juniper & Tide"\ncurrency = "EUR"\n{shelf}'
    return lambda: shop.read(text)


def services_csv(count: int) -> Work:
    text = "service,hands_on_min,chair_min\n" + "".join(f"toner {number},15,40\n" for number in range(count))
    return lambda: business.price_services_csv(text, TERMS)


def services_json(count: int) -> Work:
    rows = [{"service": f"toner {number}", "hands_on_min": 15, "chair_min": 40} for number in range(count)]
    text = json.dumps(rows)
    return lambda: business.price_services_json(text, TERMS)


def limits_csv(count: int) -> Work:
    text = "id,rule,substance,applies_to,user,figure,unit,measured\n" + "".join(
        f"r{number},maximum,hydrogen peroxide,hair,all,12,% w/w,as applied\n" for number in range(count)
    )
    return lambda: limits.Table.from_csv("house table", text)


def strand_book(count: int) -> Work:
    reading = lift.StrandReading(lift.Situation(4), time_min=25, before_level=4, after_level=6.5)
    text = lift.strand_line(None) + lift.strand_line(reading) * count
    assert not lift.read_strand_book(text).problems
    return lambda: lift.read_strand_book(text)


def shades_text(count: int) -> Work:
    text = "".join(
        f'[[shade]]\ncode = "J{number}"\nlevel = 9\ntones = ["violet"]\nclass = "demi"\nratio = "1:2"\n'
        for number in range(count)
    )
    assert len(colour.read_shades(text)) == count
    return lambda: colour.read_shades(text)


def service_log(count: int) -> Work:
    text = record.log_line(record.LogEntry("begun", at_min=3, section="nape")) * count
    assert len(record.read_log(text).entries) == count
    return lambda: record.read_log(text)


def long_recipe(count: int) -> Work:
    text = " + ".join(f"{1 + number % 9} g part {number}" for number in range(count))
    return lambda: mix.Recipe(text)


LISTS: dict[str, List] = {
    "sections": List(service(more_sections), 490),
    "sections, each after the next": List(service(chained_sections), 490),
    "toners": List(service(more_toners), 45),
    "strands in the file": List(service(more_strands), 10_000),
    "developers in the file": List(service(on_the_shelf("developer", "name")), 9_900),
    "lighteners in the file": List(service(on_the_shelf("lightener", "name")), 9_900),
    "shades in the file": List(service(on_the_shelf("shade", "code")), 9_900),
    "additives in the file": List(service(on_the_shelf("additive", "name")), 9_900),
    "developers in a shop": List(shop_text, 10_000),
    "services as CSV": List(services_csv, 100_000),
    "services as JSON": List(services_json, 100_000),
    "rows of a limits table": List(limits_csv, 100_000),
    "readings of a strand book": List(strand_book, 100_000),
    "shades of a chart": List(shades_text, 10_000),
    "entries of a service log": List(service_log, 10_000),
    "parts of a recipe": List(long_recipe, 1_000),
    "masses to weigh": List(lambda count: lambda: mix.weigh([1.0 + item % 7 for item in range(count)], 0.1), 100_000),
    "weights of an amount": List(
        lambda count: lambda: money.allocate(money.Money("1000.00", "EUR"), [1] * count), 100_000
    ),
    "strengths mixed": List(lambda count: lambda: peroxide.mix_strengths([3.0] * count, [1.0] * count), 100_000),
}


def seconds(work: Work, runs: int = 5) -> float:
    """Processor time of the quickest run."""
    times = []
    for _ in range(runs):
        start = time.process_time()
        work()
        times.append(time.process_time() - start)
    return min(times)


def slope(grows: List, lengths: tuple[int, int]) -> float:
    """Slope of log time over log length between two lengths."""
    short, long = (seconds(grows.work(length)) for length in lengths)
    return math.log(long / short) / math.log(lengths[1] / lengths[0])


def main() -> None:
    print(f"{'list':32}{'items':>10}{'ms':>12}{'us an item':>12}{'slope':>8}")
    for name, grows in LISTS.items():
        before: tuple[int, float] | None = None
        for length in [*(10**power for power in range(1, 6) if 10**power < grows.most), grows.most]:
            took = seconds(grows.work(length), 3)
            rise = "" if before is None else f"{math.log(took / before[1]) / math.log(length / before[0]):8.2f}"
            print(f"{name:32}{length:10}{took * 1e3:12.2f}{took / length * 1e6:12.2f}{rise}")
            before = length, took


if __name__ == "__main__":
    main()
