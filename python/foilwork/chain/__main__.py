"""The history of a chain from a terminal: ``python -m foilwork.chain RECORDS TO --terms terms.toml``."""

from __future__ import annotations

import argparse
import signal
import sys
import time
import tomllib
from pathlib import Path
from typing import Any

from foilwork._native import FoilworkError
from foilwork.chain import BY, Progress, Report, run


def main() -> int:
    """Work a history out and say what it comes to; 0 fine, 1 files failed or it was stopped, 2 bad input."""
    parser = argparse.ArgumentParser(prog="python -m foilwork.chain", description=run.__doc__.splitlines()[0])  # type: ignore[union-attr]
    parser.add_argument("records", type=Path, help="a Parquet file, or a folder of them")
    parser.add_argument("to", type=Path, help="a folder for the results; a run that was stopped goes on there")
    parser.add_argument("--terms", type=Path, required=True, help="a TOML file with the terms of the chain")
    parser.add_argument("--engine", choices=["arrow", "duckdb", "polars"], default="arrow")
    parser.add_argument("--by", default=",".join(BY), help="keys, with + for several together (default: %(default)s)")
    arguments = parser.parse_args()
    asked_to_stop = False

    def stop(*_: object) -> None:
        nonlocal asked_to_stop
        asked_to_stop = True

    signal.signal(signal.SIGINT, stop)
    try:
        terms = tomllib.loads(arguments.terms.read_text(encoding="utf-8"))
        by = [tuple(group.split("+")) for group in arguments.by.split(",") if group]
        bar = _Bar() if sys.stderr.isatty() else None
        report = run(
            arguments.records,
            arguments.to,
            terms,
            by=by,
            engine=arguments.engine,
            progress=bar,
            stop=lambda: asked_to_stop,
        )
    except (FoilworkError, OSError, tomllib.TOMLDecodeError) as error:
        print(f"error: {error}", file=sys.stderr)
        return 2
    if bar is not None:
        bar.end()
    print(_said(report, arguments.to, str(terms["currency"])))
    return 0 if report.complete else 1


class _Bar:
    """A line that grows, on a terminal only."""

    WIDTH = 40

    def __init__(self) -> None:
        self._started = self._shown = time.monotonic()

    def __call__(self, at: Progress) -> None:
        now = time.monotonic()
        if now - self._shown < 0.2:
            return
        self._shown = now
        share = at.rows / at.all_rows if at.all_rows else 1.0
        filled = "#" * int(share * self.WIDTH)
        speed = at.rows / max(now - self._started, 1e-9)
        text = f"\r[{filled:<{self.WIDTH}}] {share:4.0%}  {at.rows:,} rows, {speed:,.0f} a second"
        print(text, end="", file=sys.stderr, flush=True)

    def end(self) -> None:
        """Leaves the line."""
        print(file=sys.stderr)


def _said(report: Report, to: Path, currency: str) -> str:
    lines = [f"{report.rows:,} rows of {report.done} of {report.files} files; {report.refused:,} bad rows kept apart"]
    if report.kept:
        lines.append(f"{report.kept} files were done before")
    lines += [f"failed, in no total: {name}: {reason}" for name, reason in report.failed.items()]
    if report.stopped:
        lines.append("stopped: what is done is kept; the same words again go on")
    rows: list[dict[str, Any]] = report.totals.to_pylist()
    if rows and rows[0]["by"] == "all":
        found = rows[0]
        used, wasted = found["used_mg"] / 1e6, found["wasted_mg"] / 1e6
        share = 100 * wasted / (used + wasted) if used + wasted else 0.0
        lines += [
            f"{found['bowls']:,} bowls: {used:,.3f} kg used, {wasted:,.3f} kg thrown away ({share:.1f} %)",
            f"strength on the hair from {found['on_hair_weakest_ww_percent']:.2f} to "
            f"{found['on_hair_strongest_ww_percent']:.2f} % w/w; {found['off_ratio']:,} bowls off their ratio",
            f"limits: {found['exceeded']:,} bowls exceed one, {found['not_judged']:,} could not be judged",
            f"net, cost, margin in minor units of {currency}: {found['net_minor']:,}, {found['cost_minor']:,}, "
            f"{found['margin_minor']:,}",
        ]
        if found["consumables_unknown"]:
            lines.append(
                f"{found['consumables_unknown']:,} bowls do not say their consumables: they cost more than that"
            )
    lines.append(f"totals: {to / 'totals.parquet'}; bad rows: {to / 'apart'}")
    return "\n".join(lines)


if __name__ == "__main__":
    sys.exit(main())
