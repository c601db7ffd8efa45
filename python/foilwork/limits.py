"""The limits room of foilwork."""

__all__: list[str] = []
