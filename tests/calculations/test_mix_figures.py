"""Figures of the mixer say how they are worked out."""

from growlog.calculations.conductivity import EcEstimate
from growlog.calculations.mix_figures import dose_figure, ec_figure, element_figure


def test_every_figure_carries_its_inputs_method_and_source() -> None:
    ec = ec_figure(EcEstimate(2.0, 1.8, 2.2), {"K": 235})
    assert (ec.value, ec.low, ec.high, ec.unit) == (2.0, 1.8, 2.2, "mS/cm")
    for figure in (ec, element_figure("K", 235, {"water": 5, "salt": 230}), dose_figure("salt", 0.5, "g", {"K": 235})):
        assert figure.inputs[0].unit == "mg/L"
        assert figure.method
        assert figure.source[-4:].isdigit()
