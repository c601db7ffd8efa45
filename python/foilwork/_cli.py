"""The console script: the Rust command line, called with this process's arguments; Parquet and Arrow by pyarrow."""

import sys

from foilwork._native import main as _main


def main() -> None:
    """Run ``foilwork`` and exit with its documented status (0 fine, 1 blocking findings, 2 bad input)."""
    words = ["foilwork", *sys.argv[1:]]
    if words[1:2] == ["fill"]:
        from foilwork._fill import fill_by_words

        done = fill_by_words(words)
        if done is not None:
            sys.exit(done)
    sys.exit(_main(words))
