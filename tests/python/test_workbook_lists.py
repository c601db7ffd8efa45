"""Charts, recipes and price lists as workbooks, and lists read back, where they once said what was not so."""

import io
import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import openpyxl
import pytest
from test_workbook import TERMS, anew, by_formulas, results, rows_of

import foilwork
import foilwork.source
from foilwork.mix import Recipe
from foilwork.teach import worksheet
from foilwork.workbook import (
    dilution_workbook,
    list_in_workbook,
    recipe_workbook,
    services_workbook,
    worksheet_workbook,
)


def written(book: openpyxl.Workbook) -> bytes:
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def test_a_stronger_bottle_than_the_chart_was_made_for_is_told(tmp_path: Path) -> None:
    path = tmp_path / "chart.xlsx"
    path.write_bytes(dilution_workbook([12, 9], [3], 60))
    page = openpyxl.load_workbook(path, data_only=True)["Dilution"]
    row = next(row for row in page.iter_rows() if row[0].value == "cautions")
    assert row[1].value == "no bottle is above that"
    (first, *_) = [row[0].row for row in page.iter_rows() if row[0].value == "bottle"]
    for bottle, said in (
        (35, "ABOVE what this chart was made for: its cautions do not hold, make the chart anew"),
        (12, "no bottle is above that"),
    ):
        changed = anew(path, tmp_path / "changed.xlsx", {f"B{first + 2}": bottle})
        assert by_formulas(changed)["Dilution", row[1].coordinate] == said


def test_a_bottle_as_strong_as_what_is_added(tmp_path: Path) -> None:
    path = tmp_path / "chart.xlsx"
    path.write_bytes(dilution_workbook([3, 6], [3, 6], 60, weaker_ww_percent=3))
    changed = anew(path, tmp_path / "changed.xlsx")
    rows = rows_of(changed, by_formulas(changed), "Dilution", "bottle")
    assert [row["WEIGH bottle, g"] for row in rows] == [60, "-", 0, 60]
    # What foilwork itself came to, as it stands on the page that it made.
    assert rows_of(path, results(path), "Dilution", "bottle") == rows
    assert (rows[0]["WEIGH added, g"], rows[0]["gives, % w/w"]) == (0, 3)
    assert [row["can it be weighed?"] for row in rows] == ["weighable", "out of reach", "weighable", "weighable"]


def test_bounds_of_a_label_follow_it(tmp_path: Path) -> None:
    path = tmp_path / "label.xlsx"
    command("table", "--stocks", "40 vol label", "--targets", "3 % w/w", "--total", "60", "--xlsx", str(path))
    page = openpyxl.load_workbook(path, data_only=True)["Dilution"]
    first = next(row[0].row for row in page.iter_rows() if row[0].value == "bottle") + 1
    # The bounds of the plan's own data, not of the page.
    told = json.loads(command("table", "--stocks", "40 vol label", "--targets", "3 % w/w", "--total", "60", "--json"))
    stock = told["rows"][0]["stock_ww_percent"]
    assert stock["best"] == 12 and stock["low"] < 12 <= stock["high"]
    low, high = stock["low"] / 12, stock["high"] / 12
    assert [page.cell(first, place).value for place in (3, 4)] == pytest.approx([stock["low"], stock["high"]])
    changed = anew(path, tmp_path / "changed.xlsx", {f"B{first}": 6})
    (row,) = rows_of(changed, by_formulas(changed), "Dilution", "bottle")
    # Half of a bottle of 6 %, and nothing: half of its bounds.
    assert row["WEIGH bottle, g"] == 30
    book = openpyxl.load_workbook(changed)["Dilution"]
    assert not any(book.cell(first, place).protection.locked is False for place in (3, 4, 11, 12))
    found = by_formulas(changed)
    assert found["Dilution", f"K{first}"] == pytest.approx(3 * low) and found["Dilution", f"L{first}"] == pytest.approx(
        3 * high
    )


def command(*arguments: str) -> str:
    program = str(Path(sys.executable).with_name("foilwork"))
    return subprocess.run([program, *arguments], check=True, capture_output=True, text=True).stdout


def test_a_recipe_says_that_a_part_rounds_away(tmp_path: Path) -> None:
    path = tmp_path / "recipe.xlsx"
    path.write_bytes(recipe_workbook(Recipe("30 g a + 0.1 g b"), 75))
    for division, said in (
        (1, "a part rounds to NOTHING: use a finer scale or make more"),
        (0.01, "no part rounds away"),
    ):
        changed = anew(path, tmp_path / "changed.xlsx", {"division_g": division})
        assert said in [str(value) for value in by_formulas(changed).values()]
    mere = openpyxl.load_workbook(io.BytesIO(recipe_workbook(Recipe("30 mL a + 10 mL b"), 75)))["Sources"]
    assert "rounding to the scale" not in [cell.value for cell in mere["A"]]


@pytest.mark.parametrize(
    ("tax_percent", "price", "tax"), [(8.875, 107.13, 8.73), (14.975, 50.01, 6.51), (19, 11.73, 1.87)]
)
def test_a_changed_price_is_taxed_at_the_rate_of_the_shop(
    tax_percent: float, price: float, tax: float, tmp_path: Path
) -> None:
    path = tmp_path / "services.xlsx"
    terms = TERMS | {"tax_percent": tax_percent}
    path.write_bytes(services_workbook([{"service": "toner", "hands_on_min": 15, "chair_min": 40}], terms))
    book = openpyxl.load_workbook(path)
    (sheet, cell), *_ = book.defined_names["tax_percent"].destinations
    assert book[sheet][cell].value == tax_percent
    first = next(row[0].row for row in book["Costs"].iter_rows() if row[0].value == "service") + 1
    book["Costs"][f"L{first}"] = price
    changed = tmp_path / "changed.xlsx"
    book.save(changed)
    found = by_formulas(changed)
    # By hand: the price times the rate, over 100 and the rate, to the cent.
    assert found["Costs", f"N{first}"] == pytest.approx(tax, abs=1e-9)
    assert found["Costs", f"M{first}"] == pytest.approx(price - tax, abs=1e-9)


def test_whole_numbers_are_met_or_missed() -> None:
    page = openpyxl.load_workbook(io.BytesIO(worksheet_workbook(worksheet(seed=3))))["Key"]
    rows: list[tuple[Any, Any]] = [(row[2].value, row[4].value) for row in page.iter_rows(min_row=4)]
    numbers = [(value, within) for value, within in rows if isinstance(value, int | float)]
    whole = [within for value, within in numbers if value == int(value)]
    assert whole and set(whole) == {0}
    assert all(within > 0 for value, within in numbers if value != int(value))


def rests(workbook: bytes) -> list[tuple[str, str, str]]:
    page = openpyxl.load_workbook(io.BytesIO(workbook))["Sources"]
    return [(str(row[0]), str(row[1]), str(row[2])) for row in page.iter_rows(min_row=4, max_col=3, values_only=True)]


def test_a_page_of_sources_names_sources() -> None:
    chart = rests(dilution_workbook([12, 9], [3], 60))
    assert not any("label" in what for what, _, _ in chart)
    for weaker, basis in ((0, "assumed"), (1.5, "stated by you")):
        rows = rests(dilution_workbook([12, 9], [3], 60, weaker_ww_percent=weaker))
        assert [found for what, found, _ in rows if what == "strength of what is added"] == [basis]
    problems = [row for row in rests(worksheet_workbook(worksheet(seed=3))) if row[0].startswith("problem ")]
    ids = {citation.id: citation.text for citation in foilwork.source.register()}
    # Words of a citation, never its bare id, and never nothing.
    assert problems and all(source not in ids for _, _, source in problems)
    assert all(source == "arithmetic" or any(text in source for text in ids.values()) for _, _, source in problems)


def test_a_formula_without_a_result_is_refused() -> None:
    book = openpyxl.Workbook()
    book.active.append(["service", "price"])
    book.active.append(["toner", "=30+5"])
    with pytest.raises(foilwork.FoilworkError, match="sheet Sheet, cell B2: holds a formula without a result"):
        list_in_workbook(written(book))


def test_one_text_in_many_cells_is_refused() -> None:
    book = openpyxl.Workbook()
    # 3 000 cells of 30 000 characters share one text: 90 MB of a file of some kilobytes.
    for _ in range(300):
        book.active.append(["x" * 30_000] * 10)
    with pytest.raises(foilwork.FoilworkError, match=r"too much text \(a list has at most 64 MiB\)"):
        list_in_workbook(written(book))
