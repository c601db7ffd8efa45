from foilwork._native.service._error import *
from foilwork._native.service._plan import *
from foilwork._native.service._starter import *
from foilwork._native.service._trail import *

__all__ = [
    "Plan",
    "ServiceFileError",
    "TracedInput",
    "TracedResult",
    "plan",
    "plan_file",
    "service_schema",
    "starter",
]
