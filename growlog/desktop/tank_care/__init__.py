"""Tank care: topping up, correcting, moving the pH, and what the plants took up."""

from growlog.desktop.tank_care.tank_care_dialog import TankCareDialog

__all__ = ["TankCareDialog"]
