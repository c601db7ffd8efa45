from foilwork._native.service._error import *
from foilwork._native.service._plan import *
from foilwork._native.service._starter import *
from foilwork._native.service._trace import *

__all__ = [
    "Plan",
    "ServiceFileError",
    "plan",
    "plan_file",
    "service_schema",
    "starter",
    "trace_consultation",
    "trace_day",
]
