from typing import final

from foilwork._native import Bounds, _Answer, _Percent
from foilwork._native.source._trail import TracedResult

__all__ = [
    "InFoils",
    "Layout",
    "by_hand",
]

@final
class InFoils(_Answer):
    """What a layout gives on a panel; made by ``Layout.on``."""

    __match_args__ = ("picks", "lifted_cm2", "share_of_subsection_percent", "share_of_panel_percent", "foils", "across", "apply_min")
    @property
    def picks(self) -> Bounds[int]:
        """Strands in a subsection across the whole panel."""
    @property
    def lifted_cm2(self) -> Bounds[float]:
        """Scalp whose hair is lifted in one subsection, in cm2."""
    @property
    def share_of_subsection_percent(self) -> Bounds[float]:
        """Of the hair of a subsection, in percent."""
    @property
    def share_of_panel_percent(self) -> Bounds[float]:
        """Of all the hair of the panel, in percent."""
    @property
    def foils(self) -> Bounds[int]:
        """Foils, of which ``across`` lie beside each other in a row."""
    @property
    def across(self) -> int:
        """Foils beside each other."""
    @property
    def apply_min(self) -> Bounds[float]:
        """Minutes for them."""

@final
class Layout(_Answer):
    """Subsections, and what is left between them. A number is exact; what is done by hand has the bounds of ``by_hand``.

    Args:
        subsection_mm: thickness of a subsection; 1/8 inch by hand where it is not said.
        left_between_mm: hair left between two foils; as much as a subsection where it is not said, 0 for back to back.
        pick_mm: width of a strand of a weave; a slice where it is not said.
        gap_mm: between two strands; as wide as a strand where it is not said.
        depth_mm: how deep the comb goes; through all of the subsection where it is not said.
        foil_width_cm: width of a foil; as wide as the panel where it is not said.

    Raises:
        FoilworkError: a size out of range.

    Source:
        Plane geometry; ``"subsection-thickness"`` for 1/8 inch.

    Examples:
        >>> from foilwork.head import Layout
        >>> foils = Layout(subsection_mm=6, pick_mm=3, gap_mm=3).on(8, 6)
        >>> foils.picks.best, foils.foils.best, round(foils.share_of_panel_percent.best, 3)
        (13, 5, 24.375)
    """

    __match_args__ = ("subsection_mm", "left_between_mm", "pick_mm", "gap_mm", "depth_mm", "foil_width_cm")
    def __new__(
        cls, *, subsection_mm: _Percent | None = None, left_between_mm: _Percent | None = None, pick_mm: _Percent | None = None, gap_mm: _Percent | None = None, depth_mm: _Percent | None = None, foil_width_cm: float | None = None
    ) -> Layout: ...
    @property
    def subsection_mm(self) -> Bounds[float]:
        """Thickness of a subsection, in mm."""
    @property
    def left_between_mm(self) -> Bounds[float]:
        """Hair left between two foils, in mm."""
    @property
    def pick_mm(self) -> Bounds[float] | None:
        """Width of a strand, in mm; ``None`` for slices."""
    @property
    def gap_mm(self) -> Bounds[float] | None:
        """Between two strands, in mm."""
    @property
    def depth_mm(self) -> Bounds[float] | None:
        """How deep the comb goes, in mm."""
    @property
    def foil_width_cm(self) -> float | None:
        """Width of a foil, in cm; ``None`` for as wide as the panel."""
    def on(self, width_cm: float, height_cm: float) -> InFoils:
        """What it gives on a panel.

        Args:
            width_cm: of the panel, along the parting.
            height_cm: across the partings, from the first to the last.

        Returns:
            An ``InFoils``.

        Raises:
            FoilworkError: sizes that do not fit on each other; both are named.
        """
    def trail_on(self, width_cm: float, height_cm: float) -> list[TracedResult]:
        """How the foils of a panel, and the strands picked in a row, come about.

        Args:
            width_cm: of the panel, along the parting.
            height_cm: across the partings, from the first to the last.

        Returns:
            A :class:`foilwork.source.TracedResult` for each.

        Raises:
            FoilworkError: sizes that do not fit on each other; both are named.

        Examples:
            >>> from foilwork.head import Layout
            >>> Layout(subsection_mm=6, pick_mm=3, gap_mm=3).trail_on(8, 6)[0].what
            'foils'
        """

def by_hand(size_mm: float) -> Bounds[float]:
    """A size that is taken by hand and by eye: a quarter off either way, assumed.

    Args:
        size_mm: the size meant.

    Returns:
        ``Bounds`` in mm, for the sizes of a ``Layout``.

    Raises:
        FoilworkError: a size out of range.

    Examples:
        >>> from foilwork.head import by_hand
        >>> [round(mm, 6) for mm in by_hand(4)]
        [3.0, 4.0, 5.0]
    """
