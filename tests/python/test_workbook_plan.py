"""What a workbook of a plan says beside its numbers: stops first, verdicts with their words, what is left out."""

from itertools import pairwise
from pathlib import Path
from typing import Any

import openpyxl
import pytest
from openpyxl.cell import Cell
from test_workbook import Cells, anew, by_formulas

from foilwork.service import plan_file
from foilwork.workbook import plan_workbook


@pytest.fixture
def made(root: Path, tmp_path: Path) -> "Made":
    return Made(root, tmp_path)


class Made:
    """The workbook of an example, with something changed in its text."""

    def __init__(self, root: Path, folder: Path) -> None:
        self.root, self.folder = root, folder

    def __call__(self, example: str, *changes: tuple[str, str]) -> Path:
        text = (self.root / "examples" / example).read_text()
        for old, new in changes:
            assert old in text
            text = text.replace(old, new)
        file, path = self.folder / example, self.folder / "plan.xlsx"
        file.write_text(text)
        path.write_bytes(plan_workbook(plan_file(file)))
        return path


def column(path: Path, sheet: str, letter: str = "A") -> list[Cell]:
    return [cell for cell in openpyxl.load_workbook(path, data_only=True)[sheet][letter] if cell.value is not None]


def test_what_stops_a_service_stands_first_and_loud(made: Made) -> None:
    first, banner, stop, *_ = column(made("grey-blend.toml", ('result = "clear"', 'result = "reaction"')), "Bench")
    assert str(first.value).startswith("Bench sheet: ")
    assert banner.value == "*** DO NOT BEGIN: 1 finding says STOP. Resolve it first. ***"
    assert str(stop.value).startswith("[STOP] skin test: ")
    for cell in (banner, stop):
        assert cell.font.b and cell.fill.fgColor.rgb == "FFC00000"
    told = [str(cell.value) for cell in column(made("grey-blend.toml"), "Bench")]
    assert not any("DO NOT BEGIN" in text or "[STOP]" in text for text in told)


def test_a_verdict_says_of_what_and_what_it_does_not_say(made: Made) -> None:
    path = made("grey-blend.toml")
    told = [str(cell.value) for cell in column(path, "Bench")]
    assert any(text.startswith("[WARN] strand test: none") for text in told)
    rows = list(openpyxl.load_workbook(path)["Sources"].iter_rows(min_col=1, max_col=2, values_only=True))
    checked = [(str(what), str(basis)) for what, basis in rows if str(basis).startswith("checked: ")]
    assert {basis.removeprefix("checked: ") for _, basis in checked} >= {"WARN", "ok"}
    # Rule and finding, as "law: roots: ...".
    assert all(rule and found for rule, found in (what.split(": ", 1) for what, _ in checked))
    assert not {str(basis) for _, basis in rows} & {"ok", "WARN", "OPEN", "STOP", "note", "caution"}
    meaning = 'OPEN means unknown, never passed. "ok" means nothing was found, not that anything is safe.'
    assert meaning in [what for what, _ in rows]
    assert any(str(what).startswith("Not computed: ") for what, _ in rows)


def test_the_scale_is_the_one_of_the_file(made: Made) -> None:
    book = openpyxl.load_workbook(made("grey-blend.toml"))
    (sheet, cell), *_ = book.defined_names["division_g"].destinations
    assert book[sheet][cell].value == 0.5


def test_labels_are_read_low_and_high(made: Made) -> None:
    page = openpyxl.load_workbook(made("soft-gradient.toml"), data_only=True)["Bench"]
    rows = list(page.iter_rows(values_only=True))
    pairs = [(above, row) for above, row in pairwise(rows) if str(row[0]).startswith("on the hair,")]
    assert pairs
    for above, row in pairs:
        assert above[0] == "bowl; ON THE HAIR as stated, % w/w"
        # No bottle was measured: the solution of the pharmacopoeia may hold 5 to 7 % where 6 % is written.
        assert row[5] == pytest.approx(above[5] * 5 / 6, rel=1e-9)
        assert row[6] == pytest.approx(above[6] * 7 / 6, rel=1e-9)


def lost(path: Path, found: Cells) -> list[str]:
    values = [str(value) for (sheet, _), value in found.items() if sheet == "Bench"]
    return [value for value in values if "round" in value]


def test_a_part_that_rounds_away_is_told(made: Made, tmp_path: Path) -> None:
    path = made("soft-gradient.toml")
    rows = list(openpyxl.load_workbook(path)["Bench"].iter_rows())
    sizes = [row[1].coordinate for row in rows if row[0].value == "in this bowl, g"]
    changed = anew(path, tmp_path / "coarse.xlsx", {"division_g": 5, sizes[0]: 6})
    said = lost(changed, by_formulas(changed))
    # 2 g of powder and 4 g of developer on a scale of 5 g: one of them is nothing.
    assert said[0] == "a part rounds to NOTHING: use a finer scale or make more"
    fine = [cell.value for row in openpyxl.load_workbook(path, data_only=True)["Bench"].iter_rows() for cell in row]
    assert fine.count("no part rounds away") == len(sizes)


def test_costs_say_what_they_leave_out(made: Made) -> None:
    path = made("grey-blend.toml", ('overhead_per_h = "16.50"\n', ""), ('pack_g = 1000\nprice = "7.90"\n', ""))
    told = [str(cell.value) for cell in column(path, "Cost")]
    assert "Not counted: overhead: enter `shop.terms.overhead_per_h`" in told
    assert any("cream developer: no price in the shop" in text for text in told)
    assert any(
        text.startswith("By its costs from ") and "as the hair takes less or more mixture" in text for text in told
    )
    assert any("other sizes on the page Bench do not change them" in text for text in told)


def test_the_tax_is_the_one_that_the_shop_states(made: Made, tmp_path: Path) -> None:
    text = (made.root / "examples/grey-blend.toml").read_text()
    stated = next(line for line in text.splitlines() if line.startswith("tax_percent"))
    path = made("grey-blend.toml", (stated, "tax_percent = 8.875"))
    changed = anew(path, tmp_path / "tax.xlsx", {"net_price": 200})
    book = openpyxl.load_workbook(changed)
    at = {name: next(iter(book.defined_names[name].destinations)) for name in ("tax_percent", "tax", "gross_price")}
    sheet, cell = at["tax_percent"]
    assert book[sheet][cell].value == 8.875
    found = by_formulas(changed)
    assert [found[at[name][0], at[name][1].replace("$", "")] for name in ("tax", "gross_price")] == [17.75, 217.75]


def test_a_step_before_the_colour_is_told_before_the_bowls(made: Made) -> None:
    path = made("soft-gradient.toml", ('name = "nape"', 'name = "nape"\nfirst = ["clean-first"]'))
    cells = column(path, "Bench")
    told = [str(cell.value) for cell in cells]
    first = [at for at, text in enumerate(told) if text.startswith("FIRST: nape, ")]
    assert len(first) == 1 and first[0] < told.index("in this bowl, g")
    assert cells[first[0]].fill.fgColor.rgb == "FFC00000"
    step = next(step for step in plan_file(made.folder / "soft-gradient.toml").first_steps if step.planned)
    rows = [cells[first[0]].row + 3 + place for place in range(len(step.parts))]
    # Twice the bowl is twice the grams: recalculated from no results at all.
    book = openpyxl.load_workbook(path)
    sheet = book["Bench"]
    size = f"B{rows[0] - 2}"
    for times in (1, 2):
        sheet[size].value = times * sum(part.mass_g.best for part in step.parts)
        changed = made.folder / f"times{times}.xlsx"
        book.save(changed)
        found = by_formulas(changed)
        for row, part in zip(rows, step.parts, strict=True):
            assert sheet[f"A{row}"].value == part.product
            assert found["Bench", f"C{row}"] == pytest.approx(times * part.mass_g.best, rel=1e-5)
            # Whole tenths of a gram, the nearest.
            assert found["Bench", f"D{row}"] * 10 == pytest.approx(round(found["Bench", f"D{row}"] * 10))
            assert abs(found["Bench", f"D{row}"] - times * part.mass_g.best) <= 0.05 + 1e-5
            if times == 1:
                assert found["Bench", f"D{row}"] == pytest.approx(part.weigh_g)
    # Without such a step there is no such line.
    assert not any(str(cell.value).startswith("FIRST") for cell in column(made("soft-gradient.toml"), "Bench"))


def test_the_price_of_a_blocked_plan_is_never_alone(made: Made) -> None:
    _, banner, *_ = column(made("grey-blend.toml", ('result = "clear"', 'result = "reaction"')), "Cost")
    assert banner.value == "*** DO NOT BEGIN: 1 finding says STOP. Resolve it first. ***"


def test_a_price_by_the_list_is_told_beside_that_of_the_costs(made: Made) -> None:
    # A list without the class of this service says no price.
    without = ('class = "regrowth"', 'class = "partial"')
    told = [str(cell.value) for cell in column(made("grey-blend.toml", without), "Cost")]
    assert any(text.startswith("Booked as regrowth") and "price unknown" in text for text in told)
    assert any(text.startswith("Counted are ") and " min of hands, by " in text for text in told)
    assert "THE GUEST PAYS" in told
    listed = ('price = "118.00"\nincluded_min = 105\nper_extra_h = "36.00"', 'price = "77.00"')
    told = [str(cell.value) for cell in column(made("grey-blend.toml", listed), "Cost")]
    assert any(
        text.startswith("Booked as regrowth") and "77.00" in text and " by the price list" in text for text in told
    )
    assert "by its costs, with tax" in told and "THE GUEST PAYS" not in told
    assert {"net price, by its costs", "by the price list", "margin, %, by the price list"} <= set(told)


@pytest.mark.parametrize(
    ("left_out", "net"),
    [
        # A sixth of 77.01 is 12.835: 12.84 are tax, and 64.17 stay (64.175, rounded, would be 64.18).
        ("", 64.17),
        # The rate is there where no price is worked out of the costs, too.
        ("markup_percent = 60\n", 64.17),
        ("tax_percent = 20\n", 77.01),
    ],
)
def test_what_a_price_of_the_list_leaves_follows_it(left_out: str, net: float, made: Made, tmp_path: Path) -> None:
    listed = ('price = "118.00"\nincluded_min = 105\nper_extra_h = "36.00"', 'price = "90.00"')
    without = [(left_out, "")] if left_out else []
    fee = ('overhead_per_h = "16.50"', 'overhead_per_h = "16.50"\ncard_percent = 2')
    changed = anew(made("grey-blend.toml", listed, fee, *without), tmp_path / "list.xlsx", {"list_price": 77.01})
    book, found = openpyxl.load_workbook(changed), by_formulas(changed)

    def value(name: str) -> Any:
        (sheet, cell), *_ = book.defined_names[name].destinations
        cell = cell.replace("$", "")
        return found.get((sheet, cell), book[sheet][cell].value)

    assert value("list_net_price") == pytest.approx(net, abs=1e-9)
    # The fee is that of the 90.00 that were planned: 2 % of it.
    assert value("list_card_fee") == 1.8
    assert value("list_profit") == pytest.approx(net - value("cost") - 1.8, abs=1e-9)
    assert value("list_margin_percent") == pytest.approx(100 * (net - value("cost") - 1.8) / net, abs=1e-9)


def test_a_price_that_is_not_worked_out_says_what_is_missing(made: Made) -> None:
    text = (made.root / "examples/soft-gradient.toml").read_text()
    target = next(line for line in text.splitlines() if line.startswith(("margin_percent", "markup_percent")))
    told = [str(cell.value) for cell in column(made("soft-gradient.toml", (target + "\n", "")), "Cost")]
    assert "Price not computed: enter `margin_percent` or `markup_percent` in `shop.terms`." in told
