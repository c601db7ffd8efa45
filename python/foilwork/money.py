"""The money room of foilwork."""

__all__: list[str] = []
