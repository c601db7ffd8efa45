from collections.abc import Iterable

from foilwork import planned
from foilwork._native.record._log import LogEntry
from foilwork._native.service._plan import Plan

__all__ = [
    "forget",
    "keep",
    "read_records",
    "read_records_csv",
    "records_csv",
]

def forget(file: bytes, guest: str) -> tuple[bytes, list[int], list[int]]:
    r"""Take the lines of a guest out of a file of records or a strand book; every other byte stays as it is.

    Args:
        file: the bytes of the file.
        guest: the code of the guest.

    Returns:
        What is left, the numbers of the lines taken out, and of lines that cannot be read and hold the code.

    Raises:
        TypeError: a file that is no bytes.

    Examples:
        >>> from foilwork.history import forget
        >>> forget(b'{"guest":"J-014"}\n{"guest":"J-088"}\n', "J-014")
        (b'{"guest":"J-088"}\n', [1], [])
    """
def keep(plan: Plan, entries: Iterable[LogEntry]) -> str:
    """The line that is kept of a service, with its line break; append it to a file of records in one write.

    Args:
        plan: the plan.
        entries: the entries of its log.

    Returns:
        A JSON object in a line: a code for the guest, planned and actual, all that repeats the result.

    Raises:
        FoilworkError: never for entries that were made.

    Examples:
        >>> from foilwork import plan_file
        >>> from foilwork.history import keep, read_records
        >>> line = keep(plan_file("examples/soft-gradient.toml"), [])
        >>> [record], problems = read_records(line)
        >>> record.on, record.guest, len(record.section), problems
        ('2026-11-25', 'J-014', 6, [])
    """
def read_records(text: str) -> tuple[list[planned.KeptRecord], list[str]]:
    r"""Read a file of records; a line that a crash has torn is reported, and the others count.

    Args:
        text: the lines, as ``keep`` and ``foilwork record --keep`` write them.

    Returns:
        The records, and the lines that could not be read, each with its number.

    Raises:
        FoilworkError: never; what is wrong with a line is among the problems.

    Examples:
        >>> from foilwork.history import read_records
        >>> records, problems = read_records('{"format":1,"on":"2026-11-25","title":"gloss"}\n{"format":1,"on')
        >>> records[0].title, problems[0][:12]
        ('gloss', 'line 2: torn')
    """
def read_records_csv(text: str) -> tuple[list[planned.KeptRecord], list[str]]:
    r"""Read records from comma-separated text, a row for each section.

    Args:
        text: the table, as ``records_csv`` writes it; columns may stand in any order.

    Returns:
        The records, and the rows that could not be read, each with its line.

    Raises:
        FoilworkError: never; what is wrong with a row is among the problems.

    Examples:
        >>> from foilwork.history import read_records_csv
        >>> records, _ = read_records_csv("record,format,on,title,section,weighed_g\n1,1,2026-11-25,gloss,lengths,75\n")
        >>> records[0].section[0].weighed_g
        75.0
    """
def records_csv(text: str) -> str:
    """Records as comma-separated text for a spreadsheet, a row for each section.

    Args:
        text: the lines of the records.

    Returns:
        The table with its heading; lines that cannot be read are left out.

    Examples:
        >>> from foilwork.history import records_csv
        >>> records_csv('{"format":1,"on":"2026-11-25","title":"gloss"}').splitlines()[1][:20]
        '1,1,2026-11-25,gloss'
    """
