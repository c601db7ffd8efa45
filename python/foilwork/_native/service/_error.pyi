from foilwork._native import FoilworkError

__all__ = [
    "ServiceFileError",
]

class ServiceFileError(FoilworkError):
    """A service file that cannot be planned. ``problems`` lists (line, field, message) for everything that is wrong."""

    problems: list[tuple[int | None, str, str]]
