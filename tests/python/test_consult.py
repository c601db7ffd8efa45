"""From consultation to decision through Python; days against the calendars of the standard library and of dateutil."""

import copy
import datetime
import json
import pickle
import shutil
import subprocess
from dataclasses import FrozenInstanceError
from functools import cache
from pathlib import Path

import jsonschema
import pytest
from dateutil import parser
from dateutil.relativedelta import relativedelta

import foilwork
from foilwork import planned

EXAMPLES = Path(__file__).parents[2] / "examples"
# Common practice: two to six weeks after a usual application, four to eight after more, six to twelve after much more.
GAPS = {(2.0, 4.0, 6.0), (4.0, 6.0, 8.0), (6.0, 8.0, 12.0)}


@cache
def staged() -> foilwork.Plan:
    return foilwork.plan_file(EXAMPLES / "staged-lightening.toml")


@cache
def consulted() -> planned.ConsultationPlan:
    return staged().consult()


def test_the_past_counts_days_as_the_calendar_does() -> None:
    said = consulted().said
    assert said is not None
    start = datetime.datetime.fromisoformat(str(staged().start)).date()
    dated = [past for past in said.past if past.on]
    assert dated
    for past in dated:
        days = (start - datetime.date.fromisoformat(str(past.on))).days
        assert past.ago_weeks == pytest.approx(days / 7, abs=1e-12)
    assert [past.on for past in said.past] == ["2026-09-30", "2026-03-14", None]


def test_visits_add_their_weeks_to_the_calendar() -> None:
    first, *later = consulted().visits
    start = datetime.datetime.fromisoformat(str(staged().start)).date()
    days = [start] * 3
    assert (first.after_weeks, first.earliest) == (None, start.isoformat())
    assert later
    for visit in later:
        assert visit.after_weeks is not None
        weeks = tuple(visit.after_weeks)
        assert weeks in GAPS
        days = [day + datetime.timedelta(weeks=gap) for day, gap in zip(days, weeks, strict=True)]
        assert [visit.earliest, visit.usual, visit.latest] == [day.isoformat() for day in days]


@pytest.mark.parametrize("start", ["2026-12-31", "2027-12-29", "2028-02-15", "2028-02-29", "2031-01-01"])
def test_weeks_cross_months_and_leap_days_as_dateutil_counts_them(tmp_path: Path, start: str) -> None:
    text = (EXAMPLES / "staged-lightening.toml").read_text(encoding="utf-8")
    assert "2026-12-02T09:30:00" in text
    path = tmp_path / "staged.toml"
    path.write_text(text.replace("2026-12-02T09:30:00", f"{start}T09:30:00"), encoding="utf-8")
    shutil.copy(EXAMPLES / "juniper_and_tide.toml", tmp_path)
    plan = foilwork.plan_file(path)
    begin = parser.isoparse(str(plan.start))
    assert begin == parser.isoparse(f"{start}T09:30:00")
    said, visits = plan.consult().said, plan.consult().visits
    assert said is not None
    for past in said.past:
        if past.on is not None and past.ago_weeks is not None:
            gone = relativedelta(days=round(past.ago_weeks * 7))
            assert parser.isoparse(past.on) + gone == begin.replace(hour=0, minute=0)
    days = [begin.date()] * 3
    assert len(visits) > 1
    for visit in visits[1:]:
        assert visit.after_weeks is not None
        weeks = tuple(visit.after_weeks)
        days = [day + relativedelta(weeks=int(gap)) for day, gap in zip(days, weeks, strict=True)]
        assert all(gap == int(gap) for gap in weeks)
        assert [parser.isoparse(str(day)).date() for day in (visit.earliest, visit.usual, visit.latest)] == days


def test_the_decision_folds_the_findings() -> None:
    found, plan = consulted().decision, staged()
    verdicts = [finding.verdict for finding in plan.findings]
    assert (len(found.stops), found.go == "stop") == (verdicts.count("stop"), plan.blocked)
    told = len(found.restrictions) + len(found.open) + found.for_the_bench
    assert told == verdicts.count("warning") + verdicts.count("not-judged")


def test_a_consultation_is_a_value_of_its_schema(command: Path) -> None:
    found = consulted()
    assert found == copy.deepcopy(found) == pickle.loads(pickle.dumps(found))
    with pytest.raises(FrozenInstanceError):
        found.title = "other"  # type: ignore[misc]
    schema = json.loads((EXAMPLES / "plan.schema.json").read_text(encoding="utf-8"))
    whole = {"$defs": schema["$defs"], "$ref": "#/$defs/ConsultationPlan"}
    arguments = [str(command), "consult", str(EXAMPLES / "staged-lightening.toml"), "--json"]
    printed = subprocess.run(arguments, capture_output=True, text=True, check=True).stdout
    jsonschema.Draft202012Validator(whole).validate(json.loads(printed))


def test_the_page_can_be_signed_only_without_a_stop() -> None:
    assert 'class="sign"' in staged().agreement_html()
    text = (EXAMPLES / "soft-gradient.toml").read_text(encoding="utf-8")
    stopped = foilwork.plan(text.replace('scalp = "intact"', 'scalp = "broken"'))
    assert stopped.consult().decision.go == "stop"
    assert 'class="sign"' not in stopped.agreement_html()
    assert "STOP" in stopped.consultation_text()
