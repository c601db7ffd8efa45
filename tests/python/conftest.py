"""What the tests of the Python module and of the project itself share."""

import sys
from pathlib import Path

import pytest


@pytest.fixture(scope="session")
def root() -> Path:
    """The top of the project."""
    return Path(__file__).resolve().parents[2]


@pytest.fixture(scope="session")
def command() -> Path:
    """The console script ``foilwork`` that was installed with the module under test."""
    return Path(sys.executable).with_name("foilwork")
