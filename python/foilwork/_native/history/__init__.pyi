"""Many services: what is kept of each, summed up, learned from, and forgotten when a guest asks for it."""

from foilwork._native.history._after import *
from foilwork._native.history._kept import *
from foilwork._native.history._many import *

__all__ = [
    "forget",
    "home_care",
    "keep",
    "lessons",
    "read_records",
    "read_records_csv",
    "rebooking",
    "records_csv",
    "strand_readings",
    "summarise",
    "trace_lessons",
    "trace_rebooking",
    "trace_summaries",
]
