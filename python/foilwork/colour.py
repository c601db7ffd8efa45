"""The colour room of foilwork."""

__all__: list[str] = []
