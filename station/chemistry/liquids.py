"""The Laliberté model: density and specific heat capacity of water with any number of solutes.

Density: Laliberté and Cooper, J. Chem. Eng. Data 49, 1141 (2004); heat capacity: Laliberté, J. Chem. Eng. Data
54, 1725 (2009). Outside the fitted range of a solute its own terms are held at the edge of the range, which is
why ``Terms`` says how far outside it was asked. A solute without coefficients gets generic ones: the mean of
those in the table, with their spread as uncertainty.
"""

import math
from types import MappingProxyType
from typing import Final, NamedTuple

from station.words import say

# Coefficients of the Laliberté model for the solutes a school cup can hold.
#
# Density: Laliberté and Cooper, J. Chem. Eng. Data 49, 1141 (2004), as revised in Laliberté, J. Chem. Eng. Data
# 54, 1725 (2009); heat capacity: the latter. Solutes are named by their ions, the cation first. The numbers are
# those of the supporting information to nine digits, taken from the data files of the ``chemicals`` package; the
# tests hold them against independent density tables and measured heat capacities. A heat capacity that the author
# fitted to fewer than eight points (lithium nitrate, sodium phosphate, copper sulfate …) is left out.


class Range(NamedTuple):
    """Where the coefficients were fitted: temperatures in °C and the largest mass fraction of the solute."""

    lowest_c: float
    highest_c: float
    largest_mass_fraction: float


class Coefficients(NamedTuple):
    """c0 to c4 of the density and a1 to a6 of the heat capacity, each with its range; None where unknown."""

    density: tuple[float, float, float, float, float]
    density_range: Range
    heat_capacity: tuple[float, float, float, float, float, float] | None = None
    heat_capacity_range: Range | None = None


LALIBERTE: Final = MappingProxyType(
    {
        "HCl": Coefficients(
            (0.00028387226, 0.00394946957, 2.85020048, -0.0157747013, -3766.20869),
            Range(5, 98.82, 0.375699),
            (-1.44373411, -0.0162261453, 0.760145625, -0.251793705, -0.0853885966, -0.37397241),
            Range(5, 130, 0.0650746),
        ),
        "HNO3": Coefficients(
            (0.272070788, -0.399605969, -2.33691978, 0.00662112384, -3089.01794),
            Range(-10, 95, 0.7011),
            (-0.337794278, -0.0435222748, 1.76713519, -2.09327974, 3.34739334, 0.739891955),
            Range(5, 120, 0.0654545),
        ),
        "H2SO4": Coefficients(
            (70.8395152, 142.352694, 0.687794596, 0.00649299683, 1667.23865),
            Range(-11.15, 75, 0.782),
            (18891038.7, 0.228318384, -17.38657, -2.46930193, 1.54426653, 1.5736424),
            Range(-20, 55, 0.9389),
        ),
        "H3PO4": Coefficients(
            (1288.25499, -4126.67487, -4.64682626, 0.00466168017, -944.459686),
            Range(15.85, 81.4, 0.85),
            (-295.001661, -2.4859825e-05, 0.000815232854, -0.00368569997, 295.592796, -0.000861839866),
            Range(24.704, 101.09, 0.9863),
        ),
        "HCH3COO": Coefficients(
            (647.289244, -1054.58226, -1.74610769, 0.000365566433, -822.999507),
            Range(5, 85, 1),
            (-1.52110367, -0.00399791831, 0.0132852947, 0.915636482, 4.28631441, 0.0058231236),
            Range(0, 120, 0.152564),
        ),
        "NaOH": Coefficients(
            (319.020509, 528.592358, -0.102197897, 0.000350420706, 765.97047),
            Range(4, 120, 0.502886),
            (-0.922780765, -0.0412353462, 1.87225246, -5.94223565, 3.13007618, 0.141040806),
            Range(4, 120, 0.303471),
        ),
        "KOH": Coefficients(
            (821.119043, 1043.20173, 0.11287333, 0.00124023636, 539.630388),
            Range(4, 95, 0.51861),
            (-0.61270953, -0.0454225317, 1.87598006, -5.62731017, 2.42547036, 1.24500823),
            Range(4, 120, 0.465314),
        ),
        "LiOH": Coefficients(
            (3.558238, 0.988986357, -0.0697252979, -6.3998667e-05, -2513.09471),
            Range(20, 75, 0.1133),
            (-2.61619983, -0.0271669313, 1.26345023, -4.13228724, 7.29139659, 0.111323824),
            Range(25, 25, 0.0516235),
        ),
        "NH3": Coefficients(
            (0.0637631726, 0.0681799829, 1.23759953, -0.00599852494, -3078.57767),
            Range(20, 140.65, 0.521892),
            (-4.05675619, -0.0281870627, 0.852985661, -4.91044706, 4.55479085, -0.174339325),
            Range(-13.22, 100.43, 1),
        ),
        "NaCl": Coefficients(
            (-0.00324112224, 0.0636354336, 1.01371399, 0.0145951015, 3317.34854),
            Range(0, 140, 0.265899),
            (-0.0693559669, -0.0782134167, 3.84798479, -11.2762109, 8.73187699, 1.8124593),
            Range(1.5, 120, 0.261058),
        ),
        "NaNO3": Coefficients(
            (22.3499265, 66.4478689, 0.989888302, 0.00947165098, 1971.55146),
            Range(0, 100, 0.489193),
            (-0.0420888209, -0.0862083521, 4.04836454, -8.15845129, 1.57362106, 0.239559673),
            Range(2, 120, 0.45994),
        ),
        "Na2SO4": Coefficients(
            (4.45025449e-06, 9.1208652e-06, 0.084035837, 0.00465767525, 4349.50514),
            Range(0, 125, 0.325191),
            (-0.12894006, -0.079100785, 3.22204907, -15.6934251, 5.80544717, 1.18362567),
            Range(25, 140.38, 0.211407),
        ),
        "Na3PO4": Coefficients(
            (155.804085, 251.218167, -0.163160741, 0.000301220797, 1298.06957),
            Range(25, 80, 0.3),
        ),
        "NaCH3COO": Coefficients(
            (1732.57048, 83.5413523, 0.040042968, 4.71569683e-05, -274.927413),
            Range(5, 95, 0.3171),
            (-9449.26291, 0.052044763, -8.88529159, -2.70833743, 2.25038206, 0.121149417),
            Range(5, 120, 0.0383123),
        ),
        "Na2C2O4": Coefficients(
            (-193.619996, 293.768565, 0.119104208, 0.00199891482, 1092.31619),
            Range(0, 50, 0.0324165),
        ),
        "Na2CO3": Coefficients(
            (5.45486543e-07, 1.72154929e-07, -0.0825850207, 0.0016882295, 4705.39822),
            Range(0, 100.14, 0.209376),
            (-0.536815212, -0.0271669313, 1.26345023, -9.17050072, 5.65550238, 0.828013458),
            Range(25, 25, 0.209376),
        ),
        "NaHCO3": Coefficients(
            (0.0377378061, 0.00710029652, 0.0735733389, 0.00168369766, 3291.38382),
            Range(0, 125, 0.126442),
            (-0.0306885808, -0.0271669313, 1.26345023, -0.352415251, 4.15847941, 0.682203311),
            Range(25, 25, 0.0833529),
        ),
        "KCl": Coefficients(
            (-0.855928946, 6.04073571, 2.81787416, 0.0253924646, 2681.61723),
            Range(5, 125, 0.26428),
            (-1.63952918, -0.00779461705, 0.328422657, -3.76872441, 0.34049805, -0.147984783),
            Range(5, 140, 0.257918),
        ),
        "KNO3": Coefficients(
            (1.4906871, 6.67292355, 1.47150749, 0.0155872679, 2539.22687),
            Range(5, 95, 0.283966),
            (-0.0231553427, -0.0942883949, 4.38938623, -15.6963876, 2.2513809, 0.939359066),
            Range(5, 120, 0.19952),
        ),
        "K2SO4": Coefficients(
            (7.10599369e-06, 4.65558663e-05, 0.349566841, 0.00751053642, 4200.09378),
            Range(0, 98.67, 0.1515),
            (-0.240046438, -0.0528238567, 2.36974214, -9.72716114, -20.0642801, 2.1901955),
            Range(25, 100, 0.0796505),
        ),
        "K3PO4": Coefficients(
            (-1.36808308, 1335.04871, -0.268093449, 0.0174393508, 1046.1203),
            Range(24.85, 25, 0.20941),
        ),
        "KCH3COO": Coefficients(
            (-12939.1226, 69601.6518, 116.599325, 0.382632586, 1096.80905),
            Range(15, 55, 0.595486),
            (-7.62511462, -1.29055807, -1.53844996, -1.91047308, 1.59368748, 0.299722878),
            Range(35.5, 35.5, 0.5),
        ),
        "K2CO3": Coefficients(
            (2290.10868, 1038.77364, 0.109769327, 0.000497783341, -74.0786862),
            Range(5, 95, 0.360581),
            (-2.21452944, -0.0307733245, 0.337197867, -6.97645706, -0.238470455, 0.461227249),
            Range(5, 120, 0.0652705),
        ),
        "KHCO3": Coefficients(
            (0.0458479254, 0.0749127808, 0.505766905, 0.00643951864, 3163.65176),
            Range(5, 95, 0.343779),
            (-0.794017905, -0.0271669313, 1.26345023, -2.42961056, 1.81052003, 0.0103420926),
            Range(5, 120, 0.0950762),
        ),
        "LiCl": Coefficients(
            (1777.71169, 208.095676, 0.0924032897, -9.65138195e-05, -303.212122),
            Range(-5, 127.05, 0.4539),
            (-0.113836282, -0.0584080777, 2.7078733, -6.80384597, -0.153027431, -0.234095092),
            Range(5, 130, 0.160209),
        ),
        "LiNO3": Coefficients(
            (-1.12683535, 38.4341981, 13.4680811, -0.048427813, -2594.07413),
            Range(0, 110, 0.6236),
        ),
        "Li2SO4": Coefficients(
            (0.00711493013, 0.00869246385, 0.15164935, 0.00360862647, 3458.25185),
            Range(0, 65, 0.2603),
            (-50.9977719, -3.74835982, 13.1959839, 21.3930235, -0.0428077143, -0.871184059),
            Range(25, 25, 0.0937481),
        ),
        "LiCH3COO": Coefficients(
            (-1.58993663, 1.92713799, 2.1306029, 0.0166992375, 2808.50354),
            Range(15, 45, 0.0473715),
        ),
        "NH4Cl": Coefficients(
            (16.8882196, 318.560293, 5.08655607, -0.0150616503, -1769.12237),
            Range(12.5, 100, 0.4),
            (-0.000133512241, -0.155637962, 9.88327138, -12.1193859, 68.380884, 3.10989254),
            Range(10, 40, 0.14128),
        ),
        "NH4NO3": Coefficients(
            (1412.5632, 1214.07575, 0.705071278, 0.00117760862, 107.08178),
            Range(25, 95, 0.787404),
            (-0.0656252332, 0.00881204607, 1.36895244, 0.713981953, 2.87257103, 0.404159375),
            Range(25, 25, 0.642285),
        ),
        "(NH4)2SO4": Coefficients(
            (618.240751, 966.128116, 0.602706203, 0.00162790268, 667.573421),
            Range(15, 55, 0.429189),
        ),
        "CaCl2": Coefficients(
            (-9.72893747, 14.7005353, 4.19033341, 0.0397403624, 2708.12779),
            Range(15, 126.7, 0.5132),
            (-1.38922714, -0.0142491342, 0.57824743, -0.785339472, 4.39895342, 1.12685594),
            Range(25, 100, 0.417753),
        ),
        "Ca(NO3)2": Coefficients(
            (57.3363375, 538.054269, 1.0000867, 0.00720231361, 1438.41365),
            Range(25, 60, 0.76815),
        ),
        "Ca(CH3COO)2": Coefficients(
            (1544.12282, 430.989302, 0.209138589, 0.000350015686, 245.772514),
            Range(15, 45, 0.0876595),
        ),
        "BaCl2": Coefficients(
            (1.0159812, -1.43556547, -2123.85893, -34.1256526, 4048.83006),
            Range(15, 140, 0.252555),
            (-0.692187282, -0.0396454669, 1.2635328, -0.007647588, 2.5481568, 0.960792441),
            Range(25, 25, 0.248237),
        ),
        "Ba(NO3)2": Coefficients(
            (-0.000619011901, 0.00210174347, 0.421060993, 0.00868484487, 3761.83935),
            Range(5, 95, 0.0838065),
            (-0.0224651865, -0.0883957012, 4.15892639, -20.6795845, -0.00150414134, -1.0201754),
            Range(5, 120, 0.0472742),
        ),
        "MgCl2": Coefficients(
            (-0.0215001423, 0.0441202084, 1.53227587, -0.00980785061, -3478.36497),
            Range(0, 98.67, 0.323756),
            (-1.34606864, -0.0185542567, 0.846522211, -3.54621764, 6.64217196, 3.38082843),
            Range(5, 120, 0.344648),
        ),
        "MgSO4": Coefficients(
            (98.1201663, 59.2657647, -0.0303404982, 0.000503619229, 1763.75942),
            Range(0, 125, 0.26817),
            (-7.6299193, 0.0108473553, -1.48616716, -1.89782546, 1.72007169, 0.456774745),
            Range(25, 130, 0.275699),
        ),
        "CuSO4": Coefficients(
            (-1.12078294e-06, 6.06850591e-07, -0.118863232, 0.00378050076, 4763.96074),
            Range(10, 60, 0.2844),
        ),
    }
)


# Density and specific heat capacity of liquid water at 0.1 MPa.
#
# The equations and coefficients are those of the IAPWS Revised Supplementary Release on Properties of Liquid
# Water at 0.1 MPa, SR6-08 (2011), published as Pátek, Hrubý, Klomfar, Součková and Harvey, J. Phys. Chem. Ref.
# Data 38, 21 (2009). They stand in for the full IAPWS-95 formulation, from which they differ by less than a
# millionth in density and 0.004 % in heat capacity between 0 and 80 °C.


GAS_CONSTANT_J_G_K: Final = 0.46151805
"""Specific gas constant of water used by the release."""

_SCALE_K: Final = 10.0
_PRESSURE_KPA: Final = 100.0
_LOWEST_C: Final = 0.0
_HIGHEST_C: Final = 100.0

# (coefficient, power) of 10 K / (593 K - T), then of 10 K / (T - 232 K).
_VOLUME_CONSTANT: Final = 1.93763157e-2
_VOLUME_HOT: Final = (
    (6.74458446e3, 4),
    (-2.22521604e5, 5),
    (1.00231247e8, 7),
    (-1.63552118e9, 8),
    (8.32299658e9, 9),
)
_VOLUME_COLD: Final = (
    (5.78545292e-3, 1),
    (-1.53195665e-2, 2),
    (3.11337859e-2, 3),
    (-4.23546241e-2, 4),
    (3.38713507e-2, 5),
    (-1.19946761e-2, 6),
)
_HEAT_CONSTANT: Final = -8.983025854
_HEAT_HOT: Final = ((-1.661470539e5, 4), (2.708781640e6, 5), (-1.557191544e8, 7))
_HEAT_COLD: Final = ((-8.237426256e-1, 2), (1.908956353, 3), (-2.017597384, 4), (8.546361348e-1, 5))


def water_density_g_cm3(temperature_c: float) -> float:
    """Density of water in g/cm³, 0 to 100 °C, at 0.1 MPa.

    Raises ``ValueError`` outside that range. Source: IAPWS SR6-08 (2011), equation for v.
    """
    hot, cold = _reduced(temperature_c)
    volume = _VOLUME_CONSTANT
    volume += sum(factor * hot**power for factor, power in _VOLUME_HOT)
    volume += sum(factor * cold**power for factor, power in _VOLUME_COLD)
    return _PRESSURE_KPA / (GAS_CONSTANT_J_G_K * _SCALE_K * volume) / 1000.0


def water_heat_capacity_j_g_k(temperature_c: float) -> float:
    """Specific heat capacity of water in J/(g K), 0 to 100 °C, at 0.1 MPa.

    Raises ``ValueError`` outside that range. Source: IAPWS SR6-08 (2011), equation for cp.
    """
    hot, cold = _reduced(temperature_c)
    total = sum(power * (power + 1) * factor * hot ** (power + 2) for factor, power in _HEAT_HOT)
    total += sum(power * (power + 1) * factor * cold ** (power + 2) for factor, power in _HEAT_COLD)
    tau = (temperature_c + 273.15) / _SCALE_K
    return -GAS_CONSTANT_J_G_K * (_HEAT_CONSTANT + tau * total)


def water_volumetric_heat_capacity_j_cm3_k(temperature_c: float) -> float:
    """Heat capacity of a cubic centimetre of water in J/(cm³ K); the product of the two above."""
    return water_density_g_cm3(temperature_c) * water_heat_capacity_j_g_k(temperature_c)


def _reduced(temperature_c: float) -> tuple[float, float]:
    if not _LOWEST_C <= temperature_c <= _HIGHEST_C:
        raise ValueError(say("problem-water-range", temperature_c=f"{temperature_c:g}"))
    kelvin = temperature_c + 273.15
    return _SCALE_K / (593.0 - kelvin), _SCALE_K / (kelvin - 232.0)


class Generic(NamedTuple):
    """Stand-in terms of a solute without coefficients, with their standard uncertainties, per gram."""

    volume_cm3_g: float
    u_volume_cm3_g: float
    heat_capacity_j_g_k: float
    u_heat_capacity_j_g_k: float


GENERIC_SALT: Final = Generic(0.29, 0.19, -0.4, 0.8)
"""Mean and standard deviation over the salts of the table, at a mass fraction of 0.05 and 25 °C."""

GENERIC_MOLECULE: Final = Generic(0.67, 0.28, 2.0, 1.0)
"""The same over its two weak acids, ethanoic and phosphoric."""


def generic(solute: str) -> Generic:
    """The stand-in for a solute: a molecule when hydrogen (an acid) or carbon (urea) comes first, else a salt."""
    return GENERIC_MOLECULE if solute.startswith(("H", "CH")) else GENERIC_SALT


class Terms(NamedTuple):
    """What one gram of a solute adds to a solution.

    ``volume_cm3_g``, ``heat_capacity_j_g_k``: apparent specific volume and heat capacity. ``outside_c``: kelvins
    between the asked temperature and the heat capacity's range; ``outside_mass_fraction`` likewise.
    ``known_volume``, ``known_heat_capacity``: False when the generic figure stands in.
    """

    volume_cm3_g: float
    heat_capacity_j_g_k: float
    outside_c: float
    outside_mass_fraction: float
    known_volume: bool
    known_heat_capacity: bool


def terms(solute: str, temperature_c: float, solutes_mass_fraction: float) -> Terms:
    """Terms of one solute in a solution whose solutes together make up that mass fraction.

    ``solute`` is named by its ions (``"NaCl"``); an unknown one gets the generic terms, never an error.
    """
    found = LALIBERTE.get(solute)
    stand_in = generic(solute)
    if found is None:
        return Terms(stand_in.volume_cm3_g, stand_in.heat_capacity_j_g_k, 0.0, 0.0, False, False)
    volume = _volume(found, temperature_c, solutes_mass_fraction)
    if found.heat_capacity is None or found.heat_capacity_range is None:
        return Terms(volume, stand_in.heat_capacity_j_g_k, 0.0, 0.0, True, False)
    bounds = found.heat_capacity_range
    held_c, held_fraction = _hold(bounds, temperature_c, solutes_mass_fraction)
    a1, a2, a3, a4, a5, a6 = found.heat_capacity
    exponent = a2 * held_c + a3 * math.exp(0.01 * held_c) + a4 * held_fraction
    return Terms(
        volume,
        a1 * math.exp(exponent) + a5 * held_fraction**a6,
        abs(temperature_c - held_c),
        max(0.0, solutes_mass_fraction - bounds.largest_mass_fraction),
        True,
        True,
    )


def _volume(found: Coefficients, temperature_c: float, solutes_mass_fraction: float) -> float:
    held_c, held_fraction = _hold(found.density_range, temperature_c, solutes_mass_fraction)
    c0, c1, c2, c3, c4 = found.density
    density_kg_m3 = (c0 * held_fraction + c1) * math.exp(1e-6 * (held_c + c4) ** 2)
    return 1000.0 * (held_fraction + c2 + c3 * held_c) / density_kg_m3


_SMALLEST_FRACTION: Final = 0.002
"""Below this the terms per gram are kept: some fits run away towards nothing, where nobody measured."""


def _hold(bounds: Range, temperature_c: float, fraction: float) -> tuple[float, float]:
    held_c = min(max(temperature_c, bounds.lowest_c), bounds.highest_c)
    return held_c, min(max(fraction, _SMALLEST_FRACTION), bounds.largest_mass_fraction)
