"""The history of a chain by each engine: rows a second, time for a row, peak memory, growth with the rows.

Run it on an optimised build (``maturin develop --release``). Each run is a process of its own, so that its peak memory
is its own; the records are made beforehand and do not count. ``--quick`` uses few rows, to check that the script still
runs.
"""

import argparse
import json
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "examples"))
import chain_of_salons

ENGINES = ["arrow", "duckdb", "polars"]
# Imported first, so that what the libraries take counts for all rows alike.
RUN = """
import json, resource, sys, time
sys.path.insert(0, sys.argv[1])
import duckdb, polars, pyarrow.parquet
from chain_of_salons import TERMS
from foilwork.chain import run
start, used = time.perf_counter(), time.process_time()
report = run(sys.argv[2], sys.argv[3], TERMS, engine=sys.argv[4])
seconds, processor = time.perf_counter() - start, time.process_time() - used
peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
assert report.complete, report.failed
everything = report.totals.to_pylist()[0]
print(json.dumps([report.rows, report.refused, seconds, processor, peak, everything["margin_minor"]]))
"""


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="few rows")
    parser.add_argument("--rows", type=float, nargs="+", default=[1e5, 1e6, 1e7])
    parser.add_argument("--engines", nargs="+", default=ENGINES, choices=ENGINES)
    parser.add_argument("--in", dest="place", type=Path, help="where to keep the records meanwhile")
    arguments = parser.parse_args()
    examples = Path(chain_of_salons.__file__).parent
    print(f"{'rows':>12}  {'engine':<8}{'us a row':>10}{'us of processor':>17}{'peak MB':>9}   margin in minor units")
    for rows in [20_000] if arguments.quick else [int(rows) for rows in arguments.rows]:
        folder = Path(tempfile.mkdtemp(dir=arguments.place))
        try:
            chain_of_salons.generate(folder / "records", rows)
            for engine in arguments.engines:
                words = [
                    sys.executable,
                    "-c",
                    RUN,
                    str(examples),
                    str(folder / "records"),
                    str(folder / engine),
                    engine,
                ]
                done = subprocess.run(words, capture_output=True, text=True, check=True)
                found, _, seconds, processor, peak, margin = json.loads(done.stdout)
                each = 1e6 / found
                times = f"{seconds * each:>10.2f}{processor * each:>17.2f}"
                print(f"{found:>12,}  {engine:<8}{times}{peak:>9.0f}   {margin:,}")
        finally:
            shutil.rmtree(folder)


if __name__ == "__main__":
    main()
