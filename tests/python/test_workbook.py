"""Workbooks come out as foilwork says they do: recalculated from nothing by engines that know nothing of foilwork.

openpyxl writes each workbook anew without the results that foilwork left in it, so that no test can pass on those.
``formulas`` recalculates it here; ``make test-workbook`` asks LibreOffice as well.
"""

import math
import os
import re
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import openpyxl
import pytest
from payloads import PAYLOADS

import foilwork
from foilwork.business import price_services
from foilwork.mix import Recipe
from foilwork.peroxide import dilution_table
from foilwork.service import plan_file
from foilwork.teach import worksheet
from foilwork.workbook import (
    dilution_workbook,
    list_in_workbook,
    plan_workbook,
    recipe_workbook,
    services_workbook,
    worksheet_workbook,
)

# Invented for the salon Juniper & Tide.
TERMS = {
    "currency": "EUR",
    "wage_per_h": "18.00",
    "paid_h": 38,
    "productive_h": 19,
    "overhead": "48000",
    "chairs": 4,
    "productive_h_per_chair": 1200,
    "margin_percent": 25,
    "tax_percent": 21,
}
SERVICES = [
    {"service": "toner", "hands_on_min": 15, "chair_min": 40, "price": "35.00", "sold": 6},
    {
        "service": "half head of foils",
        "class": "long",
        "hands_on_min": 70,
        "chair_min": 120,
        "sold": 3,
        "laundry": "1.20",
    },
    {"service": "=1+1", "class": "@SUM(A1)", "hands_on_min": 20, "chair_min": 45},
]
# What every spreadsheet has had for decades.
KNOWN = {"ABS", "AND", "IF", "INT", "ISNUMBER", "MAX", "MIN", "MOD", "N", "OR", "ROUND", "SIGN", "SUM", "SUMPRODUCT"}
KNOWN |= {"ROUNDDOWN", "ROUNDUP", "TRIM"}

BOOKS: dict[str, Callable[[], bytes]] = {
    "dilution": lambda: dilution_workbook([12, 9, 3, 25], [6, 4.5, 3, 10], 100),
    # Halves in the middle, on a fine scale.
    "halves": lambda: dilution_workbook([12, 9], [6, 4.5, 3], 2.5, 0.1, weaker_ww_percent=3),
    "recipe": lambda: recipe_workbook(Recipe("30 g J7-mist + 15 g J8-oat + 67.5 g 6% + 0.5 g drops"), 77),
    "plan": lambda: plan_workbook(plan_file(Path("examples/soft-gradient.toml"))),
    "services": lambda: services_workbook(SERVICES, TERMS),
    "worksheet": lambda: worksheet_workbook(worksheet(seed=3)),
}

Cells = dict[tuple[str, str], Any]
Engine = Callable[[Path], Cells]


def by_formulas(path: Path) -> Cells:
    import formulas

    solved = formulas.ExcelModel().loads(str(path)).finish().calculate()
    found: Cells = {}
    for sheet, cell, _ in all_formulas(path):
        found[sheet, cell] = solved[f"'[{path.name}]{sheet.upper()}'!{cell}"].value[0, 0]
    return found


def by_libreoffice(path: Path) -> Cells:
    """LibreOffice of Debian's packages, without a window."""
    folder = path.parent / "recalculated"
    convert = ["--headless", "--norestore", "--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", str(folder)]
    profile = f"-env:UserInstallation={(path.parent / 'profile').as_uri()}"
    subprocess.run([os.environ["FOILWORK_OFFICE"], profile, *convert, str(path)], check=True, capture_output=True)
    return results(folder / path.name)


ENGINES = [by_formulas] + ([by_libreoffice] if "FOILWORK_OFFICE" in os.environ else [])


def all_formulas(path: Path) -> Iterator[tuple[str, str, str]]:
    for sheet in openpyxl.load_workbook(path):
        for row in sheet.iter_rows():
            yield from ((sheet.title, cell.coordinate, cell.value) for cell in row if cell.data_type == "f")


def results(path: Path) -> Cells:
    book = openpyxl.load_workbook(path, data_only=True)
    return {(sheet, cell): book[sheet][cell].value for sheet, cell, _ in all_formulas(path)}


@pytest.fixture(scope="module")
def paths(tmp_path_factory: pytest.TempPathFactory, root: Path) -> dict[str, Path]:
    """Each workbook as foilwork writes it."""
    folder = tmp_path_factory.mktemp("books")
    there = Path.cwd()
    os.chdir(root)
    try:
        for name, make in BOOKS.items():
            (folder / f"{name}.xlsx").write_bytes(make())
    finally:
        os.chdir(there)
    return {name: folder / f"{name}.xlsx" for name in BOOKS}


def anew(path: Path, to: Path, changes: dict[str, Any] | None = None) -> Path:
    """The same without any result, with other numbers under some names or in cells of the first sheet."""
    book = openpyxl.load_workbook(path)
    for name, value in (changes or {}).items():
        if name in book.defined_names:
            (sheet, cell), *_ = book.defined_names[name].destinations
            book[sheet][cell] = value
        else:
            book.worksheets[0][name] = value
    to.parent.mkdir(exist_ok=True)
    book.save(to)
    assert all(value is None for value in results(to).values())
    return to


def same(one: Any, other: Any) -> bool:
    try:
        return math.isclose(float(one), float(other), rel_tol=1e-9, abs_tol=1e-9)
    except ValueError:
        return str(one) == str(other)


@pytest.mark.parametrize("engine", ENGINES)
@pytest.mark.parametrize("name", BOOKS)
def test_an_engine_comes_to_the_same(name: str, engine: Engine, paths: dict[str, Path], tmp_path: Path) -> None:
    want = results(paths[name])
    found = engine(anew(paths[name], tmp_path / f"{name}.xlsx"))
    assert len(want) >= 10
    assert {cell: (found[cell], value) for cell, value in want.items() if not same(found[cell], value)} == {}


def rows_of(path: Path, found: Cells, sheet: str, first_name: str) -> list[dict[str, Any]]:
    """The rows under the line of names that begins with a word, as far as they have a number in the second column."""
    page = openpyxl.load_workbook(path)[sheet]
    grid = [[found.get((sheet, cell.coordinate), cell.value) for cell in row] for row in page.iter_rows()]
    start = next(place for place, row in enumerate(grid) if row[0] == first_name)
    names = [str(name) for name in grid[start]]
    below = []
    for row in grid[start + 1 :]:
        if not isinstance(row[1], int | float):
            break
        below.append(dict(zip(names, row, strict=True)))
    return below


@pytest.mark.parametrize("engine", ENGINES)
def test_other_inputs_come_to_what_foilwork_says_of_them(
    engine: Engine, paths: dict[str, Path], tmp_path: Path
) -> None:
    path = anew(
        paths["dilution"], tmp_path / "other.xlsx", {"total_g": 37, "division_g": 0.5, "weaker_ww_percent": 1.5}
    )
    rows = rows_of(path, engine(path), "Dilution", "bottle")
    assert len(rows) == 16
    for row in rows:
        stock, target = row["% w/w"], row["wanted, % w/w"]
        # Worked here: the part of the bottle, by the peroxide that both bring.
        if not min(stock, 1.5) <= target <= max(stock, 1.5):
            assert row["can it be weighed?"] == "out of reach" and row["WEIGH bottle, g"] == "-"
            continue
        exact = 37 * (target - 1.5) / (stock - 1.5)
        assert row["bottle, exact g"] == pytest.approx(exact, rel=1e-12)
        assert abs(row["WEIGH bottle, g"] - exact) <= 0.25 + 1e-9
        assert row["WEIGH bottle, g"] + row["WEIGH added, g"] == pytest.approx(37)
        gives = (row["WEIGH bottle, g"] * stock + row["WEIGH added, g"] * 1.5) / 37
        assert row["gives, % w/w"] == pytest.approx(gives, rel=1e-12)
    path = anew(paths["dilution"], tmp_path / "total.xlsx", {"total_g": 61})
    for row, want in zip(
        rows_of(path, engine(path), "Dilution", "bottle"),
        dilution_table([12, 9, 3, 25], [6, 4.5, 3, 10], 61, 1),
        strict=True,
    ):
        assert row["WEIGH bottle, g"] == ("-" if want.stock_g is None else want.stock_g)


@pytest.mark.parametrize("engine", ENGINES)
def test_a_bowl_of_another_size_adds_up(engine: Engine, paths: dict[str, Path], tmp_path: Path) -> None:
    path = anew(paths["recipe"], tmp_path / "recipe.xlsx", {"wanted_total": 41, "division_g": 0.5})
    rows = rows_of(path, engine(path), "Recipe", "part")
    *parts, total = rows
    weighed = [row["WEIGH, g"] for row in parts]
    assert sum(weighed) == total["WEIGH, g"] == 41
    # Worked here: 41 g in the parts of 30, 15, 67.5 and 0.5.
    assert [row["now, g"] for row in parts] == pytest.approx([41 * part / 113 for part in (30, 15, 67.5, 0.5)])
    assert all(abs(row["WEIGH, g"] - row["now, g"]) <= 0.5 for row in parts)


def test_a_recipe_of_nothing_says_nothing_of_the_scale(paths: dict[str, Path], tmp_path: Path) -> None:
    page = openpyxl.load_workbook(paths["recipe"])["Recipe"]
    start = next(row for row in range(1, 40) if page.cell(row, 1).value == "part") + 1
    path = anew(paths["recipe"], tmp_path / "nothing.xlsx", {f"B{row}": 0 for row in range(start, start + 4)})
    at = next(row for row in range(1, 40) if page.cell(row, 1).value == "on this scale")
    assert str(by_formulas(path)["Recipe", f"B{at}"]) == "-"


def alarms(path: Path, found: Cells) -> list[str]:
    """What the cells say that hold a strength against the ceiling, from the top."""
    return [str(found[sheet, cell]) for sheet, cell, formula in all_formulas(path) if "limit_ww_percent" in formula]


# Annex III, entry 12 of Regulation (EC) No 1223/2009: at most 12 % in hair products.
CEILING = "12 % w/w"


@pytest.mark.parametrize("engine", ENGINES)
def test_a_chart_says_when_a_change_passes_the_ceiling(engine: Engine, paths: dict[str, Path], tmp_path: Path) -> None:
    book = openpyxl.load_workbook(paths["dilution"])
    (sheet, cell), *_ = book.defined_names["limit_ww_percent"].destinations
    assert book[sheet][cell].value == 12 and book[sheet][cell].protection.locked
    path = anew(paths["dilution"], tmp_path / "strong.xlsx", {"weaker_ww_percent": 12.1})
    said = alarms(path, engine(path))
    # 25 % w/w to the targets below 12.1 % is out of reach, so that the bottle alone is to be seen.
    assert said == [f"BOTTLE ABOVE {CEILING}"] * 16
    first = next(row for row in range(1, 40) if book["Dilution"].cell(row, 1).value == "bottle") + 1
    path = anew(paths["dilution"], tmp_path / "changed.xlsx", {f"B{first}": 30, f"E{first}": 15, f"B{first + 4}": 12})
    said = alarms(path, engine(path))
    # 15 % w/w comes of the first row; the bottle of 25 % w/w in the last four rows is only the bottle.
    assert said[0] == f"ABOVE {CEILING}"
    # Out of reach, nothing is mixed and nothing held: 9 % w/w makes no 10, and 3 % w/w none of 6, 4.5, 10.
    held = f"held against {CEILING}"
    assert said[1:12] == [held] * 6 + ["-"] * 3 + [held, "-"]
    assert said[12:] == [f"BOTTLE ABOVE {CEILING}"] * 4


@pytest.mark.parametrize(
    ("jurisdiction", "ceiling", "bowl_g", "above"),
    [
        # 12 % w/w in 1:2, the bottle read up to a sixth above its label: 8 x 7/6 = 9.3; on a scale of 1 g, a bowl of
        # 1 g is developer alone: 12 x 7/6 = 14.
        ("EU", CEILING, 45, False),
        ("EU", CEILING, 1, True),
        # No ceiling in the table of the country: that of the European Union is told, and whose it is.
        ("CA", CEILING, 1, True),
        (None, CEILING, 1, True),
        # Japan's 6 %, from memory in the table.
        ("JP", "6 % w/w", 45, True),
    ],
)
def test_a_bench_sheet_says_when_a_bowl_passes_the_ceiling(
    jurisdiction: str | None, ceiling: str, bowl_g: float, above: bool, root: Path, tmp_path: Path
) -> None:
    text = (root / "examples/soft-gradient.toml").read_text()
    stated = 'jurisdiction = "EU"\n'
    assert stated in text
    text = text.replace(stated, "" if jurisdiction is None else stated.replace("EU", jurisdiction))
    # Its stronger developer at 12 % w/w, with as much less water.
    for old, new in (
        ('strength = "6 %', 'strength = "12 %'),
        ("_percent = 85", "_percent = 79"),
        ("_percent = 9\n", "_percent = 12\n"),
    ):
        assert old in text
        text = text.replace(old, new)
    path = tmp_path / "plan.xlsx"
    (tmp_path / "service.toml").write_text(text)
    path.write_bytes(plan_workbook(plan_file(tmp_path / "service.toml")))
    page = openpyxl.load_workbook(path)["Bench"]
    sizes = [row[1].coordinate for row in page.iter_rows() if row[0].value == "in this bowl, g"]
    told = " ".join(str(row[0].value) for row in page.iter_rows())
    assert f"at most {ceiling}" in told
    assert ("no jurisdiction is stated" in told) == (jurisdiction is None)
    assert ("the table has none for Canada" in told) == (jurisdiction == "CA")
    assert ("from memory and unverified" in told) == (jurisdiction == "JP")
    changed = anew(path, tmp_path / "changed.xlsx", {"division_g": 1, **dict.fromkeys(sizes, bowl_g)})
    said = alarms(changed, by_formulas(changed))
    assert said and all(one in (f"ABOVE {ceiling}", f"held against {ceiling}") for one in said)
    assert (f"ABOVE {ceiling}" in said) == above


def test_a_bowl_of_nothing_is_held_against_nothing(paths: dict[str, Path], tmp_path: Path) -> None:
    page = openpyxl.load_workbook(paths["plan"])["Bench"]
    sizes = [row[1].coordinate for row in page.iter_rows() if row[0].value == "in this bowl, g"]
    # 0.4 g on a scale that counts in 1 g.
    path = anew(paths["plan"], tmp_path / "nothing.xlsx", {"division_g": 1, **dict.fromkeys(sizes, 0.4)})
    said = alarms(path, by_formulas(path))
    assert said and set(said) == {"-"}


@pytest.mark.parametrize("name", ["dilution", "recipe", "plan"])
def test_a_page_says_that_changes_are_not_checked(name: str, paths: dict[str, Path]) -> None:
    page = openpyxl.load_workbook(paths[name]).worksheets[0]
    rows = [[str(cell.value) for cell in row] for row in page.iter_rows()]
    first_input = next(at for at, row in enumerate(page.iter_rows()) if any(not cell.protection.locked for cell in row))
    assert any("A CHANGED NUMBER IS NOT CHECKED" in row[0] for row in rows[:first_input])
    words = {word.strip(".,:").lower() for row in rows for word in " ".join(row).split()}
    assert not words & {"ok", "safe", "passed"}


@pytest.mark.parametrize("engine", ENGINES)
def test_answers_are_marked(engine: Engine, paths: dict[str, Path], tmp_path: Path) -> None:
    key = openpyxl.load_workbook(paths["worksheet"])["Key"]
    first, second = (key.cell(row, 3).value for row in (4, 5))
    path = anew(
        paths["worksheet"], tmp_path / "answers.xlsx", {"C4": first, "C5": -1.0 if isinstance(second, float) else "x"}
    )
    found = engine(path)
    marks = [found["Problems", f"E{row}"] for row in (4, 5, 6)]
    assert [str(mark) for mark in marks] == ["right", "not yet", "open"]
    assert found["Problems", "C14"] == 1


@pytest.mark.parametrize("name", BOOKS)
def test_inputs_are_checked_and_formulas_protected(name: str, paths: dict[str, Path]) -> None:
    book = openpyxl.load_workbook(paths[name])
    assert book.worksheets[-1].title == "Sources"
    inputs = 0
    for sheet in book:
        assert sheet.protection.sheet and sheet.print_area
        checked = sheet.data_validations.dataValidation
        for cell in (cell for row in sheet.iter_rows() for cell in row):
            if cell.data_type == "f":
                assert cell.protection.locked
                assert set(re.findall(r"([A-Z]+)\(", cell.value)) <= KNOWN, cell.value
            if not cell.protection.locked:
                inputs += 1
                assert cell.fill.fgColor.rgb == "FFFFF2CC"
                assert name == "worksheet" or any(cell.coordinate in check.sqref for check in checked), cell
    assert inputs >= 5
    for defined in book.defined_names.values():
        (sheet, cell), *_ = defined.destinations
        assert book[sheet][cell].value is not None
    told = " ".join(str(cell.value) for row in book.worksheets[-1].iter_rows() for cell in row)
    assert "basis" in told and "never says that anything is safe" in told


def test_cautions_stand_on_the_page() -> None:
    book = dilution_workbook([35], [6], 100)
    assert "no advice on handling it in a salon" in list_in_workbook(book)
    assert "gloves" in list_in_workbook(recipe_workbook(Recipe("30 g lightener + 60 g 9%"), 45)).lower()


def test_a_text_is_never_a_formula(tmp_path: Path) -> None:
    taken = []
    for payload in PAYLOADS:
        row = {"service": payload, "class": payload, "hands_on_min": 15, "chair_min": 40}
        try:
            price_services([row], TERMS)
        except foilwork.FoilworkError:
            continue
        taken.append(row)
    assert len(taken) > 100
    path = tmp_path / "taken.xlsx"
    path.write_bytes(services_workbook(taken, TERMS))
    book = openpyxl.load_workbook(path)
    for sheet in ("Prices", "Costs"):
        shown = [cell for row in book[sheet].iter_rows(max_col=2) for cell in row if isinstance(cell.value, str)]
        assert [cell.value for cell in shown if cell.data_type == "f"] == []
        # Typed again, it stays a text as well.
        assert all(cell.quotePrefix for cell in shown)
        texts = {cell.value for cell in shown}
        assert {str(row["service"]).strip() for row in taken} <= texts
    assert not any(cell.hyperlink for sheet in book for row in sheet.iter_rows() for cell in row)


def test_a_list_comes_back_from_a_workbook(tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    book.active.title = "Services"
    for row in (
        ["service", "Hands-on min", "chair_min", "price"],
        ["toner", 15, 40, 35.5],
        [None] * 4,
        ["foils", 70, 120, "90,5"],
    ):
        book.active.append(row)
    path = tmp_path / "list.xlsx"
    book.save(path)
    text = list_in_workbook(path.read_bytes())
    assert text.splitlines() == ["service,Hands-on min,chair_min,price", "toner,15,40,35.5", "", 'foils,70,120,"90,5"']
    book.active["B2"] = True
    book.save(path)
    with pytest.raises(foilwork.FoilworkError, match="sheet Services, cell B2: holds a truth value"):
        list_in_workbook(path.read_bytes())
    with pytest.raises(foilwork.FoilworkError, match="cannot be read as a workbook"):
        list_in_workbook(b"PK\x03\x04 and no more")
