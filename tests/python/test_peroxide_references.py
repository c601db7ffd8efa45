"""Peroxide against general-purpose reference libraries: SciPy, periodictable, molmass, chemicals, pint."""

import math

import molmass
import numpy as np
import periodictable
import pint
import pytest
from chemicals.iapws import iapws95_rho
from scipy import constants

from foilwork.peroxide import (
    convert,
    density,
    density_interval,
    loss_rate,
    loss_rate_from_half_life,
    molar_volumes,
    permanganate_strength,
    strength_after,
    strength_units,
)


def test_molar_mass() -> None:
    """Source: IUPAC abridged weights in periodictable; molmass has older ones, 2e-5 away."""
    found = convert(1.0, "mol/L", "g/L")
    assert found == pytest.approx(periodictable.formula("H2O2").mass, rel=1e-12)
    assert found == pytest.approx(molmass.Formula("H2O2").mass, rel=3e-5)


def test_active_oxygen() -> None:
    """Source: one oxygen atom of each peroxide, atomic weights in periodictable."""
    share = periodictable.formula("O").mass / periodictable.formula("H2O2").mass
    assert convert(100.0, "% w/w", "% active oxygen") == pytest.approx(100 * share, rel=1e-12)


@pytest.mark.parametrize(("name", "pressure"), [("ideal-1atm", constants.atm), ("ideal-1bar", constants.bar)])
def test_molar_volume(name: str, pressure: float) -> None:
    """Source: CODATA constants in SciPy."""
    want = constants.R * constants.zero_Celsius / pressure * 1000
    assert molar_volumes()[name] == pytest.approx(want, rel=1e-14)
    assert convert(2.0, "mol/L", "volumes", molar_volume=name) == pytest.approx(want, rel=1e-14)


def test_water_density() -> None:
    """Source: IAPWS-95 in chemicals, at 1 atm. Tolerance 5e-6 g/mL, that of the older formula for water."""
    for celsius in np.linspace(0.0, 50.0, 26):
        want = iapws95_rho(celsius + 273.15, constants.atm) / 1000
        low, best, high = density_interval(0.0, float(celsius))
        assert best == pytest.approx(want, abs=5e-6)
        assert low < want < high


def test_units_without_a_density_against_pint() -> None:
    """Source: pint's unit registry, with the molar mass of periodictable."""
    units: pint.UnitRegistry[float] = pint.UnitRegistry()
    molar_mass = units.Quantity(periodictable.formula("H2O2").mass, "g/mol")
    strength = units.Quantity(6.0, "g") / units.Quantity(100.0, "mL")
    assert convert(6.0, "% w/v", "g/L") == pytest.approx(strength.m_as("g/L"), rel=1e-14)
    assert convert(6.0, "% w/v", "mol/L") == pytest.approx((strength / molar_mass).m_as("mol/L"), rel=1e-12)
    oxygen = (
        strength / molar_mass / 2 * units.molar_gas_constant * units.Quantity(273.15, "K") / units.Quantity(1, "atm")
    )
    assert convert(6.0, "% w/v", "volumes") == pytest.approx(oxygen.m_as(""), rel=1e-12)
    water = units.Quantity(94.0, "g")
    molality = units.Quantity(6.0, "g") / molar_mass / water
    assert convert(6.0, "% w/w", "mol/kg") == pytest.approx(molality.m_as("mol/kg"), rel=1e-12)


def test_mass_to_volume_with_a_density_of_ones_own() -> None:
    """Source: the definition, w/v = w/w times density, in plain NumPy."""
    strengths = np.linspace(0.0, 70.0, 141)
    assert np.allclose(convert(strengths, "% w/w", "% w/v"), strengths * density(strengths), rtol=1e-14, atol=0)
    assert np.allclose(
        convert(strengths, "% w/w", "g/L", density_g_per_ml=1.02), 10.0 * strengths * 1.02, rtol=1e-14, atol=0
    )


def test_round_trips_to_twelve_figures() -> None:
    rng = np.random.default_rng(20)
    start = rng.uniform(1e-6, 70.0, 2000)
    celsius = rng.uniform(0.0, 50.0, 2000)
    for unit in strength_units():
        there = convert(start, "% w/w", unit, temperature_c=celsius)
        back = convert(there, unit, "% w/w", temperature_c=celsius)
        assert np.max(np.abs(back / start - 1.0)) < 1e-12, unit


def test_titration_against_the_equation() -> None:
    """Source: 5 moles of peroxide for 2 of permanganate; British Pharmacopoeia, 1 mL of 0.02 mol/L is 1.701 mg."""
    _, best, _ = permanganate_strength(1.0, 1.0, 0.02)
    assert best == pytest.approx(5 / 2 * 0.02, rel=1e-15)
    assert best * periodictable.formula("H2O2").mass == pytest.approx(1.701, abs=0.0005)


def test_ageing_against_the_exponential() -> None:
    """Source: first-order decay in plain NumPy; OpenStax, Chemistry 2e: half in 6 h at 40 C is 3.21e-5 per s."""
    days = np.linspace(0.0, 365.0, 50)
    assert np.allclose(strength_after(1.76, "mol/L", 0.002, days), 1.76 * np.exp(-0.002 * days), rtol=1e-14)
    assert loss_rate_from_half_life(0.25) / 86_400 == pytest.approx(3.21e-5, abs=5e-8)
    assert loss_rate(1.0, 0.25, "volumes", 2.0) == pytest.approx(math.log(2.0), rel=1e-14)
