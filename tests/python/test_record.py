"""The log and the record through Python."""

from pathlib import Path

import pytest

from foilwork import FoilworkError, plan_file
from foilwork.record import (
    LogEntry,
    after_levels,
    instructions,
    levels_seen,
    log_line,
    read_log,
    record,
    rest_of_service,
)


def entries() -> list[LogEntry]:
    return [
        LogEntry("weighed", at_min=0, section="nape", mass_g=52.2),
        LogEntry("begun", at_min=2, section="nape"),
        LogEntry("comfort", at_min=10, comfort="tingling"),
        LogEntry("incident", at_min=12, note='foil "4"\nslipped'),
        LogEntry("rinsed", at_min=46, section="nape"),
        LogEntry("result", at_min=60, section="nape", level=8.5, tone="beige"),
    ]


def test_a_log_round_trips(tmp_path: Path) -> None:
    log = tmp_path / "today.log"
    for entry in entries():
        with log.open("a", encoding="utf-8") as file:
            file.write(log_line(entry))
    read = read_log(log.read_text(encoding="utf-8"))
    assert list(read.entries) == entries()
    assert not read.problems


def test_a_torn_line_costs_that_line_alone() -> None:
    lines = [log_line(entry) for entry in entries()]
    text = lines[0] + lines[1][:20] + "\n" + lines[2]
    read = read_log(text)
    assert [entry.what for entry in read.entries] == ["weighed", "comfort"]
    assert [problem.line for problem in read.problems] == [2]


def test_the_record_stands_beside_the_plan() -> None:
    found = record(plan_file("examples/soft-gradient.toml"), entries())
    pairs = {pair.what: pair for pair in found.pairs}
    assert pairs["on-hair-min"].actual == 44
    assert pairs["mass-g"].planned == pytest.approx(46.4)
    assert found.evenness is None
    assert found.instructions[0].verdict == "stop"
    assert instructions(entries()) == found.instructions


def test_what_python_hands_over_is_checked() -> None:
    with pytest.raises(FoilworkError, match="begun: `section` is missing"):
        LogEntry("begun", at_min=3)
    with pytest.raises(FoilworkError, match="comfort"):
        LogEntry("comfort", at_min=3, comfort="lovely")


def test_the_rest_of_a_service_tells_its_levels() -> None:
    # Seen after 25 of 48 planned minutes: it is looked at again five minutes later, as the guide says.
    file = "examples/soft-gradient.toml"
    noted = [LogEntry("begun", at_min=4, section="nape"), LogEntry("seen", at_min=29, section="nape", level=7.5)]
    moved = plan_file(file, seen=levels_seen(plan_file(file), noted).levels)
    levels = rest_of_service(moved, noted).levels
    assert levels == after_levels(moved, noted)
    assert [(one.section, one.at_min, one.next, one.look_again_min) for one in levels] == [("nape", 29, "go-on", 34)]
