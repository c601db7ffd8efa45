"""Time grows with the length of a list as the list does, for every list that foilwork reads."""

import pytest

import growth

# Log over log. A list read in quadratic time has 2; a busy machine adds a tenth to one that is linear.
STEEPEST = 1.2


def steepness(grows: growth.List) -> float:
    """The least slope of three tries, for another program may take the processor's caches at any time."""
    short = max(5, min(grows.most // 16, 300))
    lengths = short, min(grows.most, short * 8)
    return min(growth.slope(grows, lengths) for _ in range(3))


@pytest.mark.parametrize("name", growth.LISTS)
def test_time_grows_as_the_list(name: str) -> None:
    assert steepness(growth.LISTS[name]) < STEEPEST


def test_a_list_read_in_quadratic_time_is_noticed() -> None:
    def work(count: int) -> growth.Work:
        names = [f"name {number}" for number in range(count)]
        return lambda: [name for at, name in enumerate(names) if name in names[:at]]

    assert steepness(growth.List(work, 5_000)) > STEEPEST
