from typing import TypeAlias, final

from foilwork import _words
from foilwork._native import Bounds, _Answer, _Percent
from foilwork._native.hair._facts import HairFacts
from foilwork._native.head._strand import Profile

_Foils: TypeAlias = int | Bounds[int] | tuple[int, int, int]

__all__ = [
    "Demand",
    "demand",
    "film",
    "hair_by_use",
    "minutes_per_foil",
    "take_up",
]

@final
class Demand(_Answer):
    """What hair takes; made by ``demand``."""

    __match_args__ = ("hair_g", "mix_g", "mix_per_foil_g", "apply_min")
    @property
    def hair_g(self) -> Bounds[float]:
        """Hair that is covered, in g."""
    @property
    def mix_g(self) -> Bounds[float]:
        """Mixture on it, without spare, in g."""
    @property
    def mix_per_foil_g(self) -> Bounds[float] | None:
        """Mixture for one foil, in g, where there are foils."""
    @property
    def apply_min(self) -> Bounds[float] | None:
        """Minutes for the foils, where there are foils."""

def demand(
    facts: HairFacts,
    technique: _words._Technique,
    length_cm: _Percent,
    *,
    share_percent: _Percent = 100,
    taken_percent: _Percent = 100,
    lightens: bool = False,
    profile: Profile | None = None,
    foils: _Foils | None = None,
    scalp_cm2: _Percent | None = None,
) -> Demand:
    """The grams that hair takes: a share of all of it, of which some is lifted, covered along the strand, times the take-up.

    Args:
        facts: what is known of the hair.
        technique: as for ``profile``.
        length_cm: mean length of the hair, or its bounds.
        share_percent: the hair of the area worked on, of all of it.
        taken_percent: of that hair, what is lifted.
        lightens: whether the mix is a lightener.
        profile: how the strand is covered; usual for the technique where it is not said.
        foils: how many, or their bounds.
        scalp_cm2: scalp that the mix touches; it leaves a film there.

    Returns:
        A ``Demand``.

    Raises:
        FoilworkError: a value out of range, or another technique.

    Source:
        Take-up and film are assumed, chosen so that an average head takes what the trade uses on it.

    Examples:
        >>> from foilwork.hair import HairFacts
        >>> from foilwork.head import demand
        >>> weaves = demand(HairFacts(), "weave", 20, taken_percent=45, lightens=True, foils=80)
        >>> 120 < weaves.mix_g.best < 300, round(weaves.mix_per_foil_g.best * 80 / weaves.mix_g.best, 6)
        (True, 1.0)
    """
def film() -> Bounds[float]:
    """What a mixture at the scalp leaves on it, in g/cm2; assumed from the trade's amount for a regrowth.

    Returns:
        ``Bounds`` in g/cm2.

    Examples:
        >>> from foilwork.head import film
        >>> film().best
        0.08
    """
def hair_by_use(
    used_g: float,
    technique: _words._Technique,
    length_cm: _Percent,
    *,
    share_percent: _Percent,
    lightens: bool = False,
    profile: Profile | None = None,
    scalp_cm2: _Percent | None = None,
) -> Bounds[float] | None:
    """Mass of all the hair by its length, in g/cm, as an earlier use on it says: what was used, less the film on the scalp, over
    what a gram of hair takes. Goes into ``HairFacts(by_use_g_per_cm=...)``.

    Args:
        used_g: what was put on the hair, not what was mixed.
        technique: as for ``profile``.
        length_cm: mean length of the hair, or its bounds.
        share_percent: the hair that carried it, of all the hair.
        lightens: whether the mix is a lightener.
        profile: how the strand was covered; usual for the technique where it is not said.
        scalp_cm2: scalp that the mix touched; it left a film there.

    Returns:
        ``Bounds`` in g/cm, or ``None`` where the film alone may be all that was used.

    Raises:
        FoilworkError: a value out of range, or another technique.

    Source:
        Take-up and film are assumed, and so is that one use repeats another within a factor of 1.2.

    Examples:
        >>> from foilwork.hair import HairFacts
        >>> from foilwork.head import hair_by_use
        >>> by_use = hair_by_use(90, "weave", 20, share_percent=45, lightens=True)
        >>> known = HairFacts(by_use_g_per_cm=by_use).part().mass_g(20)
        >>> guessed = HairFacts().part().mass_g(20)
        >>> known.high / known.low < guessed.high / guessed.low
        True
    """
def minutes_per_foil() -> Bounds[float]:
    """Minutes for a foil from parting to closing; assumed until you write down your own.

    Returns:
        ``Bounds`` in min.

    Examples:
        >>> from foilwork.head import minutes_per_foil
        >>> minutes_per_foil().best
        1.3
    """
def take_up(technique: _words._Technique, *, lightens: bool) -> Bounds[float]:
    """How much mixture a gram of hair takes up, in g/g; assumed.

    Args:
        technique: as for ``profile``.
        lightens: whether the mix is a lightener.

    Returns:
        ``Bounds`` in g/g.

    Raises:
        FoilworkError: another technique.

    Source:
        Assumed; ``"liquor-ratio"`` for the laboratory's 1 g on 1 g.

    Examples:
        >>> from foilwork.head import take_up
        >>> take_up("weave", lightens=True).best
        2.5
    """
