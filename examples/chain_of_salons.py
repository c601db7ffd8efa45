"""Invented records of a chain of salons, Juniper & Tide, over many years: Parquet files of any number of rows.

    python examples/chain_of_salons.py --rows 1e6 --to target/chain

Nothing in it is real. The same seed gives the same rows, and each file is drawn from a stream of its own, so that any
of them can be made again alone. One file is in memory at a time. About one row in a thousand is spoilt on purpose, and
`consumables_minor` appears in the third year only, as a column would that was added later.
"""

import argparse
import datetime
from pathlib import Path
from typing import Any

import numpy as np
import pyarrow as pa
from pyarrow import parquet

FIRST_YEAR, YEARS = 2017, 8
ROWS_A_FILE = 500_000
# Product, price of its pack in cents, what the pack holds in g.
PRODUCTS = [
    ("Foam Line powder", 2640, 500.0),
    ("Foam Line clay", 2980, 450.0),
    ("J7-sand", 980, 60.0),
    ("J8-amber", 980, 60.0),
    ("J9-mist", 1040, 60.0),
    ("Tide gloss", 1490, 250.0),
]
LIGHTENERS = 2
# Strength on the bottle, its unit, price of a litre in cents.
DEVELOPERS = [
    (1.9, "% w/w", 690),
    (3.0, "% w/w", 740),
    (6.0, "% w/w", 790),
    (9.0, "% w/w", 820),
    (40.0, "volumes", 860),
]
# A concentrate that has to be weakened first; used neat in one bowl of some hundred.
CONCENTRATE = (18.0, "% w/w", 1450)
JURISDICTIONS = ["EU", "EU", "EU", "GB", "JP", "CA"]
TERMS: dict[str, Any] = {
    "currency": "EUR", "wage_per_h": "17.40", "on_costs_percent": 25, "paid_h": 38, "productive_h": 24,
    "overhead": "48000.00", "chairs": 4, "productive_h_per_chair": 1200, "margin_percent": 25,
}  # fmt: skip


def records(seed: int, part: int, rows: int, year: int, salons: int) -> pa.Table:
    """The records of one file: days of one year in their order."""
    chance = np.random.default_rng((seed, part))
    salon = chance.integers(0, salons, rows)
    product = chance.integers(0, len(PRODUCTS), rows)
    strengths = [*DEVELOPERS, CONCENTRATE]
    developer = np.where(chance.random(rows) < 0.004, len(DEVELOPERS), chance.integers(0, len(DEVELOPERS), rows))
    lightens = product < LIGHTENERS
    parts = np.where(lightens, chance.choice([1.5, 2.0], rows), chance.choice([1.0, 1.5, 2.0], rows))
    product_g = chance.integers(100, 601, rows) / 10
    developer_g = np.rint(product_g * parts * chance.normal(1.0, 0.02, rows) * 10) / 10
    # Some stir in half of what the recipe asks for.
    developer_g = np.where(chance.random(rows) < 0.01, np.rint(product_g * parts * 2.5) / 10, developer_g)
    left_g = np.rint(chance.beta(1.2, 9.0, rows) * (product_g + developer_g) * 10) / 10
    hands_on = chance.integers(10, 121, rows)
    days = np.datetime64(f"{year}-01-01") + np.sort(chance.integers(0, 365, rows))
    unit = np.array([unit for _, unit, _ in strengths], object)[developer]
    currency = np.array(["EUR"], object).repeat(rows)
    packs = np.array([held for _, _, held in PRODUCTS])[product]
    spoilt = chance.random(rows)
    unit[spoilt < 0.0002] = "percent"
    currency[(spoilt >= 0.0002) & (spoilt < 0.0004)] = "GBP"
    left_g[(spoilt >= 0.0004) & (spoilt < 0.0006)] += 500
    packs[(spoilt >= 0.0006) & (spoilt < 0.0008)] = 0.0
    without_day = (spoilt >= 0.0008) & (spoilt < 0.001)
    names = np.array([f"JT-{number:04d}" for number in range(salons)], object)
    colourist = np.array([f"JT-{number:04d}-{place}" for number in range(salons) for place in range(5)], object)
    columns: dict[str, Any] = {
        "salon": names[salon],
        "colourist": colourist[salon * 5 + chance.integers(0, 5, rows)],
        "day": pa.array(days, pa.date32(), mask=without_day),
        "product": np.array([name for name, _, _ in PRODUCTS], object)[product],
        "jurisdiction": np.array(JURISDICTIONS, object)[salon % len(JURISDICTIONS)],
        "use": np.where(lightens, "lightening", "oxidative-colour").astype(object),
        "developer_label": np.array([label for label, _, _ in strengths])[developer],
        "developer_unit": unit,
        "developer_parts": parts,
        "product_g": product_g,
        "developer_g": developer_g,
        "left_g": left_g,
        "product_pack_price_minor": np.array([price for _, price, _ in PRODUCTS])[product] + (year - FIRST_YEAR) * 40,
        "product_pack_g": packs,
        "developer_pack_price_minor": np.array([price for _, _, price in strengths])[developer],
        "developer_pack_g": np.full(rows, 1000.0),
        "hands_on_min": hands_on,
        "chair_min": hands_on + chance.integers(0, 61, rows),
        "net_minor": chance.integers(2500, 22_001, rows),
        "currency": currency,
    }
    if year >= FIRST_YEAR + 2:
        columns["consumables_minor"] = chance.integers(35, 421, rows)
    return pa.table(columns)


def generate(
    folder: Path, rows: int, seed: int = 17, salons: int = 2000, years: int = YEARS, rows_a_file: int = ROWS_A_FILE
) -> int:
    """Write the files, each year into a folder of its own, and say how many there are."""
    files = max(years, -(-rows // rows_a_file))
    for part in range(files):
        held = rows * (part + 1) // files - rows * part // files
        year = FIRST_YEAR + part * years // files
        place = folder / f"year={year}"
        place.mkdir(parents=True, exist_ok=True)
        table = records(seed, part, held, year, salons)
        parquet.write_table(table, place / f"part-{part:05d}.parquet", compression="zstd", row_group_size=1 << 17)
    return files


def main() -> None:
    """Generate what the words of the command line ask for."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--rows", type=float, default=1e5)
    parser.add_argument("--to", type=Path, required=True, help="an empty folder")
    parser.add_argument("--seed", type=int, default=17)
    parser.add_argument("--salons", type=int, default=2000)
    arguments = parser.parse_args()
    started = datetime.datetime.now()
    files = generate(arguments.to, int(arguments.rows), arguments.seed, arguments.salons)
    print(f"{int(arguments.rows):,} rows in {files} files, {(datetime.datetime.now() - started).total_seconds():.0f} s")


if __name__ == "__main__":
    main()
