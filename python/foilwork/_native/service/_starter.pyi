from foilwork import _words

__all__ = [
    "starter",
]

def starter(jurisdiction: _words._Jurisdiction, currency: str) -> dict[str, str]:
    """Files to begin with, for a jurisdiction and a currency: a service, its shop and a list of services.

    All they say is an example of an invented salon; each has a remark at what is to be written. The command
    ``foilwork start`` writes the same.

    Args:
        jurisdiction: whose law is checked: ``"EU"``, ``"GB"``, ``"US"``, ``"CA"``, ``"AU"``, ``"NZ"``, ``"CN"``,
            ``"JP"``, ``"ASEAN"`` or ``"PL"``.
        currency: the ISO 4217 code of the prices.

    Returns:
        The texts by the names of their files: ``service.toml``, ``shop.toml`` and ``services.csv``.

    Raises:
        FoilworkError: the jurisdiction or the currency is not known.

    Examples:
        >>> import foilwork
        >>> files = foilwork.service.starter("EU", "EUR")
        >>> shop = foilwork.shop.read(files["shop.toml"])
        >>> foilwork.plan(files["service.toml"], shop=shop).blocked
        False
    """
