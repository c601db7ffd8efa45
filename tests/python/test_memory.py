"""Arrays that do not fit raise as those of NumPy do; the interpreter lives on.

Each call runs in a process of its own whose address space is limited, so that a call that takes too much would kill
only that process. What is right is what NumPy itself does: ``numpy.multiply.outer`` raises ``MemoryError`` there too.
"""

import subprocess
import sys

import pytest

GIB = 1 << 30

CALLS = {
    "numpy itself": "numpy.multiply.outer(a, a)",
    "outer dilution": "foilwork.peroxide.dilute(a[:, None], a[None, :], 100)",
    "long density": "foilwork.peroxide.density(long)",
    "long lift": "foilwork.colour.lift_needed(long, 5)",
    "long difference": "foilwork.colour.ciede2000(numpy.broadcast_to(1.0, (10**11, 3)), numpy.ones(3))",
    "long conversion": "foilwork.peroxide.convert(long, '% w/w', 'volumes')",
    "long masses": "foilwork.peroxide.mix_strengths([1.0], long)",
}


def run(call: str) -> str:
    program = f"""
import resource
import numpy
import foilwork
resource.setrlimit(resource.RLIMIT_AS, ({4 * GIB}, {4 * GIB}))
a = numpy.linspace(1, 12, 40_000)
long = numpy.broadcast_to(1.0, (10**12,))
many = numpy.ones((1,) * 33)
try:
    {call}
except Exception as error:
    print(type(error).__name__)
else:
    print("fine")
"""
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, timeout=120, check=False)
    assert done.returncode == 0, done.stderr[-300:]
    return done.stdout.strip()


@pytest.mark.skipif(sys.platform != "linux", reason="the limit of the address space is that of Linux")
@pytest.mark.parametrize("call", CALLS.values(), ids=CALLS)
def test_what_does_not_fit_is_a_memory_error(call: str) -> None:
    assert run(call) == "MemoryError"


@pytest.mark.skipif(sys.platform != "linux", reason="the limit of the address space is that of Linux")
@pytest.mark.parametrize(
    "call",
    [
        "foilwork.peroxide.convert(many, '% w/w', 'volumes')",
        "foilwork.peroxide.dilution_table(many, [1.0], 60, 0.1)",
        "foilwork.peroxide.mix_strengths([1.0], many)",
    ],
)
def test_too_many_dimensions_are_refused_in_words(call: str) -> None:
    assert run(call) == "FoilworkError"


@pytest.mark.parametrize(
    "call",
    [
        "foilwork.mix.weigh(range(10**15), 1)",
        "foilwork.mix.as_applied(range(10**15), [6])",
        "foilwork.money.allocate(foilwork.money.Money('10.00', 'EUR'), range(10**15))",
        "foilwork.business.share_tips(foilwork.money.Money('10.00', 'EUR'), range(10**15))",
    ],
)
def test_a_length_that_cannot_be_is_refused_in_words(call: str) -> None:
    assert run(call) == "FoilworkError"
