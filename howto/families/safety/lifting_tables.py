"""The printed multipliers of the revised NIOSH lifting equation, two decimals, as its worksheet gives them.

NIOSH, lifting analysis worksheet, tables 1 to 5. The rows of the frequency table over 10 lifts a minute are
from memory of DHHS (NIOSH) 94-110, 1994. Off the grid the formula is rounded to two decimals.
"""

from typing import Literal

System = Literal["metric", "us"]
Grip = Literal["good", "fair", "poor"]

# Hands out from the middle of the ankles: cm, then inches.
REACH = {
    "metric": {
        25: 1.00, 28: 0.89, 30: 0.83, 32: 0.78, 34: 0.74, 36: 0.69, 38: 0.66, 40: 0.63, 42: 0.60, 44: 0.57,
        46: 0.54, 48: 0.52, 50: 0.50, 52: 0.48, 54: 0.46, 56: 0.45, 58: 0.43, 60: 0.42, 63: 0.40,
    },
    "us": {
        10: 1.00, 11: 0.91, 12: 0.83, 13: 0.77, 14: 0.71, 15: 0.67, 16: 0.63, 17: 0.59, 18: 0.56, 19: 0.53,
        20: 0.50, 21: 0.48, 22: 0.46, 23: 0.44, 24: 0.42, 25: 0.40,
    },
}  # fmt: skip
# Height of the hands above the floor: cm, then inches.
HEIGHT = {
    "metric": {
        0: 0.78, 10: 0.81, 20: 0.84, 30: 0.87, 40: 0.90, 50: 0.93, 60: 0.96, 70: 0.99, 80: 0.99, 90: 0.96,
        100: 0.93, 110: 0.90, 120: 0.87, 130: 0.84, 140: 0.81, 150: 0.78, 160: 0.75, 170: 0.72, 175: 0.70,
    },
    "us": {
        0: 0.78, 5: 0.81, 10: 0.85, 15: 0.89, 20: 0.93, 25: 0.96, 30: 1.00, 35: 0.96, 40: 0.93, 45: 0.89,
        50: 0.85, 55: 0.81, 60: 0.78, 65: 0.74, 70: 0.70,
    },
}  # fmt: skip
# How far it travels up or down, cm; no table in inches was read, so there the formula is rounded.
DISTANCE: dict[str, dict[int, float]] = {
    "metric": {
        25: 1.00, 40: 0.93, 55: 0.90, 70: 0.88, 85: 0.87, 100: 0.87, 115: 0.86, 130: 0.86, 145: 0.85, 160: 0.85,
        175: 0.85,
    },
    "us": {},
}  # fmt: skip
TWIST = {0: 1.00, 15: 0.95, 30: 0.90, 45: 0.86, 60: 0.81, 75: 0.76, 90: 0.71, 105: 0.66, 120: 0.62, 135: 0.57}

# Lifts a minute: at most 1 h, 2 h, 8 h; each with the hands below 75 cm (30 in), then at or above it.
FREQUENCY: tuple[tuple[float, tuple[float, ...]], ...] = (
    (0.2, (1.00, 1.00, 0.95, 0.95, 0.85, 0.85)),
    (0.5, (0.97, 0.97, 0.92, 0.92, 0.81, 0.81)),
    (1, (0.94, 0.94, 0.88, 0.88, 0.75, 0.75)),
    (2, (0.91, 0.91, 0.84, 0.84, 0.65, 0.65)),
    (3, (0.88, 0.88, 0.79, 0.79, 0.55, 0.55)),
    (4, (0.84, 0.84, 0.72, 0.72, 0.45, 0.45)),
    (5, (0.80, 0.80, 0.60, 0.60, 0.35, 0.35)),
    (6, (0.75, 0.75, 0.50, 0.50, 0.27, 0.27)),
    (7, (0.70, 0.70, 0.42, 0.42, 0.22, 0.22)),
    (8, (0.60, 0.60, 0.35, 0.35, 0.18, 0.18)),
    (9, (0.52, 0.52, 0.30, 0.30, 0.00, 0.15)),
    (10, (0.45, 0.45, 0.26, 0.26, 0.00, 0.13)),
    (11, (0.41, 0.41, 0.00, 0.23, 0.00, 0.00)),
    (12, (0.37, 0.37, 0.00, 0.21, 0.00, 0.00)),
    (13, (0.00, 0.34, 0.00, 0.00, 0.00, 0.00)),
    (14, (0.00, 0.31, 0.00, 0.00, 0.00, 0.00)),
    (15, (0.00, 0.28, 0.00, 0.00, 0.00, 0.00)),
)
# A good grip, a fair one below the knuckle height of 75 cm (30 in) and above it, a poor one; from memory of 94-110.
GRIP = {"good": (1.00, 1.00), "fair": (0.95, 1.00), "poor": (0.90, 0.90)}
