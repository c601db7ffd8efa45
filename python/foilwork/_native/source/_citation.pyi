from typing import final

__all__ = [
    "Citation",
    "register",
    "resolve",
]

@final
class Citation:
    """One published source, or the plain words that there is none."""
    @property
    def id(self) -> str:
        """Short key, unique in the register, as results name it."""
    @property
    def text(self) -> str:
        """Author, title, year, table or clause: enough to find it again."""
    @property
    def consulted(self) -> str:
        """How the cited text was seen, as a code: what is ``"from-memory"`` is unverified."""
    @property
    def is_verified(self) -> bool:
        """Whether the source has been seen, so that a finding may rest on it."""
    def __eq__(self, other: object, /) -> bool: ...
    def __hash__(self) -> int: ...

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
