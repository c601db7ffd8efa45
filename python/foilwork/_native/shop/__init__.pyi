from foilwork._native.shop._file import *

__all__ = [
    "Shop",
    "read",
    "read_file",
    "shop_schema",
]
