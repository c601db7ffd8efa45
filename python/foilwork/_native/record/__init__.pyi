"""During the service and after: what is noted, what it says to do, and plan against what happened."""

from foilwork._native.record._again import *
from foilwork._native.record._log import *
from foilwork._native.record._looked import *
from foilwork._native.record._rest import *
from foilwork._native.record._whole import *

__all__ = [
    "AfterLevel",
    "AgainRejected",
    "Evenness",
    "Instruction",
    "LevelsSeen",
    "LogEntry",
    "LogProblem",
    "PlannedActual",
    "Record",
    "RestOfService",
    "SecondApplication",
    "ServiceLog",
    "after_levels",
    "instructions",
    "levels_seen",
    "log_line",
    "read_log",
    "record",
    "rest_of_service",
    "second_applications",
    "trace_record",
]
