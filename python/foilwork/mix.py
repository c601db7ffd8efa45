"""The mix room of foilwork."""

__all__: list[str] = []
