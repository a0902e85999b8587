"""Shapes of a picking season: which share of it is picked by when. Logistic, Gompertz and a steady rate.

Standard forms as in Ratkowsky, D. (1983) Nonlinear Regression Modeling (from memory): logistic A/(1 + exp(b - c t)),
Gompertz A exp(-exp(b - c t)); here middle = b/c, the time of the highest rate, and width = 1/c.
"""

from enum import StrEnum

import numpy as np
import numpy.typing as npt

from growlog.words import mark

Floats = npt.NDArray[np.float64]

_FAR = 50.0  # widths from the middle: beyond this no share changes in double precision


class Shape(StrEnum):
    """How the rate of picking runs over a season."""

    LOGISTIC = "logistic"
    GOMPERTZ = "gompertz"
    STEADY = "steady"


SHAPE_WORDS = {
    Shape.LOGISTIC: mark("logistic curve, its rate rising and falling alike"),
    Shape.GOMPERTZ: mark("Gompertz curve, with an early peak and a long tail"),
    Shape.STEADY: mark("steady rate"),
}

# Numbers fitted to each: height, and where there is a peak its middle and width.
PARAMETERS = {Shape.LOGISTIC: 3, Shape.GOMPERTZ: 3, Shape.STEADY: 1}


def share(shape: Shape, time: npt.ArrayLike, middle: npt.ArrayLike, width: npt.ArrayLike) -> Floats:
    """The share of the whole that is picked by a time, 0 to 1; broadcasts.

    time, middle, width: in one unit, width above 0. A steady season has neither: its share is the time itself, which
    is then counted in seasons since the first pick and may pass 1.
    """
    if shape is Shape.STEADY:
        return np.asarray(time, dtype=np.float64) + 0.0 * np.asarray(middle)
    far = np.clip((np.asarray(time) - np.asarray(middle)) / np.asarray(width), -_FAR, _FAR)
    if shape is Shape.LOGISTIC:
        return np.asarray(1.0 / (1.0 + np.exp(-far)))
    return np.asarray(np.exp(-np.exp(-far)))
