"""The console script: the Rust command line, called with this process's arguments."""

import sys

from foilwork._native import main as _main


def main() -> None:
    """Run ``foilwork`` and exit with its documented status (0 fine, 1 blocking findings, 2 bad input)."""
    sys.exit(_main(["foilwork", *sys.argv[1:]]))
