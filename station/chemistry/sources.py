"""The published works the figures of this package come from: one name each, so that a page can cite them."""

from typing import Final

CODATA_1989: Final = (
    "Cox, J. D., Wagman, D. D., Medvedev, V. A., CODATA Key Values for Thermodynamics, Hemisphere (1989)"
)
SINGH_1976: Final = "Singh, P., Woolley, E. M., McCurdy, K. G., Hepler, L. G., Can. J. Chem. 54, 3315 (1976)"
GOLDBERG_2002: Final = "Goldberg, R. N., Kishore, N., Lennen, R. M., J. Phys. Chem. Ref. Data 31, 231 (2002)"
PARKER_1965: Final = "Parker, V. B., Thermal Properties of Aqueous Uni-univalent Electrolytes, NSRDS-NBS 2 (1965)"
NBS_1982: Final = (
    "Wagman, D. D. et al., NBS Tables of Chemical Thermodynamic Properties, "
    "J. Phys. Chem. Ref. Data 11, suppl. 2 (1982)"
)
APELBLAT_1986: Final = "Apelblat, A., J. Chem. Thermodyn. 18, 351 (1986)"
LALIBERTE_2004: Final = "Laliberté, M., Cooper, W. E., J. Chem. Eng. Data 49, 1141 (2004)"
LALIBERTE_2009: Final = "Laliberté, M., J. Chem. Eng. Data 54, 1725 (2009)"
PATEK_2009: Final = (
    "Pátek, J., Hrubý, J., Klomfar, J., Součková, M., Harvey, A. H., J. Phys. Chem. Ref. Data 38, 21 (2009) "
    "(IAPWS SR6-08)"
)
SILVESTER_1978: Final = "Silvester, L. F., Pitzer, K. S., J. Solution Chem. 7, 327 (1978)"
BRADLEY_1979: Final = "Bradley, D. J., Pitzer, K. S., J. Phys. Chem. 83, 1599 (1979)"
KUSTOV_2010: Final = "Kustov, A. V., Smirnova, N. L., J. Chem. Eng. Data 55, 3055 (2010)"
