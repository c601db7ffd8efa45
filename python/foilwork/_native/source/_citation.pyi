from typing import final

from foilwork._native import _Answer

__all__ = [
    "Citation",
    "register",
    "resolve",
]

@final
class Citation(_Answer):
    """One published source, or the plain words that there is none; made by :func:`register` and :func:`resolve`."""

    __match_args__ = ("id", "text", "consulted", "is_verified")
    @property
    def id(self) -> str:
        """Short key, unique in the register, as results name it."""
    @property
    def text(self) -> str:
        """Author, title, year, table or clause: enough to find it again."""
    @property
    def consulted(self) -> str:
        """How the cited text was seen: what is ``"from-memory"`` is unverified."""
    @property
    def is_verified(self) -> bool:
        """Whether the source has been seen, so that a finding may rest on it."""
    def to_dict(self) -> dict[str, object]:
        """The fields as a dict: results in it become dicts too, bounds a dict of ``low``, ``best`` and ``high``."""

def register() -> list[Citation]:
    """Every citation that foilwork rests on, in the order of the rooms.

    Returns:
        The citations; no two have one id.

    Examples:
        >>> from foilwork.source import register
        >>> [cited.consulted for cited in register() if cited.id == "common-practice"]
        ['common-practice']
    """
def resolve(id: str) -> Citation:
    """The citation of an id, as results name it.

    Args:
        id: the short key, for example of ``Finding.sources``.

    Returns:
        The citation.

    Raises:
        FoilworkError: for an id that is not in the register, with the nearest one.

    Examples:
        >>> from foilwork.source import resolve
        >>> resolve("common-practice").text
        'common practice of the trade; no published source'
    """
