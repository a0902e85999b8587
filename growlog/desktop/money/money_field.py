"""An amount of money: typed in the currency's main unit, kept in whole minor units."""

from decimal import Decimal

from PySide6.QtCore import QLocale

from growlog.desktop.look.widgets import NumberField
from growlog.records.money import decimals_of, money_of


class MoneyField(NumberField):
    """As many decimals as the currency has. An empty field is no amount, which is not the same as nothing."""

    def __init__(
        self, label: str, currency: str, minor: int | None = None, name: str = "", required: bool = False, per: str = ""
    ) -> None:
        """per: what the amount is for, such as kg, behind the currency."""
        self._currency = currency
        self._decimals_shown = decimals_of(currency)
        super().__init__(
            label, _unit(currency, per), 0, 10_000_000, self._decimals_shown, name=name or "amount", required=required
        )
        self.set_minor(minor)

    def minor(self) -> int | None:
        """The amount in minor units; None where nothing, or nothing acceptable, stands."""
        value = self.value()
        return None if value is None else money_of(Decimal(str(value)), self._currency).minor

    def set_minor(self, minor: int | None) -> None:
        """Shows an amount given in minor units."""
        if minor is None:
            self.clear()
            return
        amount = float(Decimal(minor).scaleb(-self._decimals_shown))
        self.set_value(amount)
        if self._decimals_shown:  # 149.00, as prices are written
            self.line.setText(f"{amount:.{self._decimals_shown}f}".replace(".", QLocale().decimalPoint()))


def _unit(currency: str, per: str) -> str:
    if not per:
        return currency
    return f"{currency}/{per}" if currency else f"/{per}"
