from typing import final

from foilwork import _words
from foilwork._native import Bounds, _Answer, _Percent

__all__ = [
    "Factor",
    "Situation",
]

@final
class Factor(_Answer):
    """One lever on a rate: by what it multiplies the rate of the reference mixture."""

    __match_args__ = ("lever", "times", "basis", "source")
    @property
    def lever(self) -> str:
        """The lever, in words."""
    @property
    def times(self) -> Bounds[float]:
        """The multiplier: median and 80 % interval."""
    @property
    def basis(self) -> str:
        """What it rests on: ``"published"``, ``"assumed"`` and so on."""
    @property
    def source(self) -> str | None:
        """The id of its citation in ``foilwork.source.register()``."""

@final
class Situation(_Answer):
    """A mixture and the hair it lies on.

    Args:
        on_hair_ww_percent: peroxide on the hair after mixing, in % w/w, or its bounds.
        temperature_c: temperature of the mixture on the hair.
        booster: ``"persulfate"``, ``"mild"`` or ``"none"``.
        ph: pH of the mixed bowl, where its product states it; never assumed.
        uptake: how readily the hair takes up liquid: ``"low"``, ``"normal"`` or ``"high"``.
        texture: ``"fine"``, ``"medium"`` or ``"coarse"``.
        cover: ``"foil"`` (or film: it stays moist) or ``"open-air"`` (it dries, which ends the action).

    Raises:
        FoilworkError: a value out of range, or a word that is none of these.

    Examples:
        >>> from foilwork.lift import Situation
        >>> mix = Situation(4, temperature_c=30)
        >>> [factor.lever for factor in mix.on_pigment()][:2]
        ['strength on the hair', 'temperature']
    """

    __match_args__ = ("on_hair_ww_percent", "temperature_c", "booster", "ph", "uptake", "texture", "cover")
    def __new__(
        cls,
        on_hair_ww_percent: _Percent,
        *,
        temperature_c: float = 25.0,
        booster: _words._Booster = "persulfate",
        ph: float | None = None,
        uptake: _words._Uptake = "normal",
        texture: _words._Texture = "medium",
        cover: _words._Cover = "foil",
    ) -> Situation: ...
    @property
    def on_hair_ww_percent(self) -> Bounds[float]:
        """Peroxide on the hair after mixing, in % w/w."""
    @property
    def temperature_c(self) -> float:
        """Temperature of the mixture on the hair, in C."""
    @property
    def booster(self) -> str:
        """What oxidises beside the peroxide."""
    @property
    def ph(self) -> float | None:
        """pH of the mixed bowl, where it is stated."""
    @property
    def uptake(self) -> str:
        """How readily the hair takes up liquid."""
    @property
    def texture(self) -> str:
        """How thick the fibre is."""
    @property
    def cover(self) -> str:
        """What lies over the mixture."""
    def on_pigment(self) -> list[Factor]:
        """The levers on the rate of pigment loss."""
    def on_oxidant(self) -> list[Factor]:
        """The levers on the loss of the oxidant."""
