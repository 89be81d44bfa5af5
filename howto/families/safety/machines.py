"""Distances, temperatures and speeds that saws, fuel and batteries are held to."""

START_FROM_FUEL_MM = 3000.0  # 29 CFR 1910.266: 10 ft
LEAST_CHARGE_C, MOST_CHARGE_C = 0.0, 40.0  # US Fire Administration
CHAIN_SPEED_M_PER_S = {"0": 16.0, "1": 20.0, "2": 24.0, "3": 28.0}  # EN ISO 11393, tested within 0.2 m/s
IMPACT_M_PER_S = {"S": 12.0, "F": 45.0, "B": 120.0, "A": 190.0}  # EN 166, a 6 mm ball
IMPACT_WORN_AS = {
    "S": ("spectacles", "goggles", "shield"),
    "F": ("spectacles", "goggles", "shield"),
    "B": ("goggles", "shield"),
    "A": ("shield",),
}


def may_charge(temperature_c: float) -> bool:
    """Tell whether a lithium-ion pack this warm may go on its charger."""
    return LEAST_CHARGE_C <= temperature_c <= MOST_CHARGE_C


def class_for(chain_m_per_s: float) -> str | None:
    """Return the lowest class of chain-saw trousers that covers a chain speed, or None past the highest."""
    return next((name for name, speed in CHAIN_SPEED_M_PER_S.items() if name != "0" and speed >= chain_m_per_s), None)


def covers(class_: str, chain_m_per_s: float) -> bool:
    """Tell whether a class of chain-saw clothing covers a chain speed."""
    return CHAIN_SPEED_M_PER_S[class_] >= chain_m_per_s


def mark_suits(mark: str, worn_as: str) -> bool:
    """Tell whether an impact mark of EN 166 can stand on that kind of eye protection."""
    return worn_as in IMPACT_WORN_AS[mark]
