__all__ = [
    "starter",
]

def starter(jurisdiction: str, currency: str) -> dict[str, str]:
    """"""
