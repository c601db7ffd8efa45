from typing import final

from foilwork._native import _Answer

__all__ = [
    "Picture",
]

@final
class Picture(_Answer):
    """A picture as SVG; a notebook shows it. What it shows stands in it as words too."""

    __match_args__ = ("svg",)
    @property
    def svg(self) -> str:
        """The text of the picture: nothing in it runs, and nothing is loaded."""
    def _repr_svg_(self) -> str: ...
