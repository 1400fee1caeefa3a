"""Pressure of a shell and rating of a thinned joint (RULES.md 1.2, 1.4, 4.3, 7, 9; section 11 item 12)."""

from mpmath import findroot

from .model import number


def thickness_metric(pressure, diameter, stress, efficiency, allowance):
    """P D/(2 sigma eta) + allowance (RULES.md 1.4, "shell t")."""
    return number(pressure) * number(diameter) / (2 * number(stress) * number(efficiency)) + number(allowance)


def pressure_metric(t, diameter, stress, efficiency, allowance):
    """The same solved for the pressure (RULES.md 1.4)."""
    return 2 * number(stress) * number(efficiency) * (number(t) - number(allowance)) / number(diameter)


def pressure_british(t_32nds, tensile_tons, percent, c, diameter_in):
    """Reg. 176 Eq. 1: (T - 2) S J/(C D), lb/in2 (RULES.md 1.2)."""
    return (number(t_32nds) - 2) * number(tensile_tons) * number(percent) / (number(c) * number(diameter_in))


def pressure_us(tensile, t, efficiency, radius, safety):
    """TS t E/(R FS) (RULES.md section 7, MAWP)."""
    return number(tensile) * number(t) * number(efficiency) / (number(radius) * number(safety))


def thickness_german(diameter_mm, atm, k, x, z):
    """s = D p x/(200 K z) + 1 mm, Land III.1 of 1908 (RULES.md 4.3)."""
    return number(diameter_mm) * number(atm) * number(x) / (200 * number(k) * number(z)) + 1


def pressure_german(s_mm, diameter_mm, k, x, z):
    """p = 200 K z (s - 1)/(D x) (RULES.md 4.3)."""
    return 200 * number(k) * number(z) * (number(s_mm) - 1) / (number(diameter_mm) * number(x))


def pressure_of_joint(least_cut, pitch, radius, safety):
    """Least cut per length over R FS: the same as TS t E/(R FS) with every mode recomputed (section 11 item 12)."""
    return number(least_cut) / (number(pitch) * number(radius) * number(safety))


def years_to(pressure_at, t, rate, pressure):
    """Years until the joint, thinning by `rate` a year, rates at `pressure` (RULES.md section 11 item 12)."""
    t, rate = number(t), number(rate)
    if pressure_at(t) < pressure:
        return number(0)
    end = t / rate
    return findroot(lambda years: pressure_at(t - rate * years) - number(pressure), (0, end * number("0.999")),
                    solver="anderson")
