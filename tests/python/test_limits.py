"""Limits as they are used from Python, and molar masses against the libraries they came from."""

import csv
import json
from pathlib import Path
from typing import Any

import chemicals
import periodictable
import pytest

import foilwork
from foilwork import limits, mix


@pytest.fixture(scope="module")
def forms(root: Path) -> list[dict[str, str]]:
    """The table of salt forms in the crate."""
    with (root / "src" / "limits" / "data" / "forms.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_salt_factors_are_those_of_two_libraries(forms: list[dict[str, Any]]) -> None:
    # Formula by CAS number from chemicals, atomic weights from periodictable.
    # What the library lacks is marked as from memory; its formula is held to the weights all the same.
    for row in forms:
        in_library = row["how"] == "library"
        formula = chemicals.identifiers.search_chemical(row["form_cas"]).formula if in_library else row["form_formula"]
        if not formula:
            assert limits.salt_factor(row["form_cas"], row["counted_as"]) is None, "no fixed content"
            continue
        whole = periodictable.formula(formula).mass
        part = periodictable.formula(chemicals.identifiers.search_chemical(row["counted_cas"]).formula).mass
        want = int(row["counted_per_form"]) * part / whole
        assert limits.salt_factor(row["form_cas"], row["counted_as"]) == pytest.approx(want, rel=1e-4), row
    assert limits.salt_factor("337906-37-3", "free-base") is None


def bowl(cas: str, percent: float) -> mix.Composition:
    return mix.Composition([(100, mix.Product("bowl", [mix.Ingredient(cas, percent, cas=cas)]))])


# Source: Regulation (EC) No 1223/2009, Annex III, entries 12, 22 and 4; Annex II, entry 1339.
@pytest.mark.parametrize(
    ("cas", "percent", "standing"),
    [
        ("7722-84-1", 12.0, "within"),
        ("7722-84-1", 12.1, "exceeded"),
        ("108-46-3", 1.25, "within"),
        ("108-46-3", 1.26, "exceeded"),
        ("7664-41-7", 6.0, "within"),
        ("123-31-9", 0.001, "exceeded"),
    ],
)
def test_union_limits(cas: str, percent: float, standing: str) -> None:
    report = limits.check(limits.Table("EU"), bowl(cas, percent))
    assert report.judgements[0].standing == standing
    assert report.is_exceeded is (standing == "exceeded")
    assert report.is_within_everything_checked is (standing == "within")


def test_report_is_plain_data() -> None:
    report = limits.check_peroxide("EU", (11.0, 12.5, 13.0))
    data = report.to_dict()
    assert json.loads(json.dumps(data)) == data
    (judgement,) = report.judgements
    assert (judgement.standing, judgement.certain, judgement.why) == ("exceeded", False, None)
    assert judgement.level_ww_percent == (11.0, 12.5, 13.0)
    assert judgement.to_dict()["level_ww_percent"] == {"low": 11.0, "best": 12.5, "high": 13.0}
    assert "EXCEEDED" in str(report)
    assert "EXCEEDED" in repr(report)


@pytest.mark.parametrize("code", [code for code, _ in limits.jurisdictions()])
def test_memory_is_never_within(code: Any) -> None:
    table = limits.Table(code)
    unverified = {row.id for row in table.listing() if row.how == "from-memory"}
    assert len(unverified) == table.unverified
    for cas in ("7722-84-1", "106-50-3", "95-70-5", "108-46-3", "7664-41-7"):
        for judgement in limits.check(table, bowl(cas, 0.1)).judgements:
            if judgement.limit and judgement.limit.id in unverified:
                assert judgement.standing == "cannot-be-judged"


def test_listing_is_complete_and_says_it_is_not() -> None:
    rows = {code: len(limits.Table(code)) for code, _ in limits.jurisdictions()}
    assert sum(rows.values()) - rows["EU"] == 210  # Poland has the rows of the union too
    table = limits.Table("EU")
    assert len(table.listing()) == rows["EU"] == 176
    assert "not complete" in table.text()


def test_own_table() -> None:
    house = limits.Table.from_csv(
        "house rule",
        "id,rule,substance,cas,applies_to,user,figure,unit,measured\n"
        "house-1,maximum,hydrogen peroxide,7722-84-1,hair,all,9,%,as-applied\n",
    )
    both = limits.Table("EU").overlaid(house)
    assert (len(both), both.title) == (177, "European Union with house rule")
    assert limits.check(both, bowl("7722-84-1", 10)).is_exceeded
    assert not limits.check(limits.Table("EU"), bowl("7722-84-1", 10)).is_exceeded
    with pytest.raises(foilwork.FoilworkError, match="line 2: figure is"):
        limits.Table.from_csv(
            "x", "id,rule,substance,applies_to,user,figure,unit,measured\na,maximum,b,hair,all,,%,as-applied\n"
        )


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (("Atlantis", 3), "unknown jurisdiction"),
        (("EU", 3, "perm"), "unknown purpose"),
        (("EU", 3, "lightening", "pets"), "unknown audience"),
        (("EU", 101), "invalid strength"),
    ],
)
def test_bad_arguments_say_the_way_out(arguments: tuple[Any, float], message: str) -> None:
    with pytest.raises(foilwork.FoilworkError, match=message):
        limits.check_peroxide(*arguments)
