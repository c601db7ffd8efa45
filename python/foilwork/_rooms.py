"""Rooms on demand: the compiled half of a room is made when somebody imports it.

Nothing else is imported here: every module more is part of each start of the command line.
"""

import sys
from _frozen_importlib import ModuleSpec

from foilwork._native import ROOMS, open_room

TYPE_CHECKING = False
if TYPE_CHECKING:
    from importlib.abc import Loader
    from types import ModuleType
else:
    Loader = object

_PLACE = "foilwork._native."


class _Rooms(Loader):
    """Finds ``foilwork._native.<room>``, which no file holds."""

    def find_spec(self, name: str, path: object = None, target: object = None) -> ModuleSpec | None:
        """What is asked of a finder."""
        if name.startswith(_PLACE) and name.removeprefix(_PLACE) in ROOMS:
            return ModuleSpec(name, self)
        return None

    def create_module(self, spec: ModuleSpec) -> "ModuleType":
        """What is asked of a loader: the room, with all its names."""
        return open_room(spec.name.removeprefix(_PLACE))

    def exec_module(self, module: "ModuleType") -> None:
        """Nothing is left to do."""


sys.meta_path.append(_Rooms())
