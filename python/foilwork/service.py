"""The service: read a service file, plan it, print the bench sheet."""

import os
from pathlib import Path

from foilwork._native import Plan, ServiceFileError, plan, service_schema

__all__ = ["Plan", "ServiceFileError", "plan", "plan_file", "service_schema"]


def plan_file(path: str | os.PathLike[str]) -> Plan:
    """Plan a service from a file; ``.json`` is read as JSON, everything else as TOML.

    Args:
        path: the service file, UTF-8.

    Returns:
        The plan; ``print(plan)`` shows the bench sheet.

    Raises:
        ServiceFileError: everything that is wrong with the file, each with its line.
        OSError: the file cannot be read.

    Examples:
        >>> from foilwork import plan_file
        >>> plan_file("examples/soft-gradient.toml").is_blocked
        False
    """
    path = Path(path)
    return plan(path.read_text(encoding="utf-8"), "json" if path.suffix.lower() == ".json" else "toml")
