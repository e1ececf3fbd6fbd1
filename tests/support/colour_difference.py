"""How far apart two colours are to the eye: CIEDE2000 (ISO/CIE 11664-6:2014), under D65."""

from __future__ import annotations

from math import atan2, cos, degrees, exp, hypot, radians, sin, sqrt

WHITE = (0.95047, 1.0, 1.08883)
TO_XYZ = (
    (0.4124564, 0.3575761, 0.1804375),
    (0.2126729, 0.7151522, 0.0721750),
    (0.0193339, 0.1191920, 0.9503041),
)

Triple = tuple[float, float, float]


def lab(rgb: Triple) -> Triple:
    """CIELAB of an sRGB colour, 0 to 255 each."""
    linear = [v / 12.92 if v <= 0.04045 else ((v + 0.055) / 1.055) ** 2.4 for v in (c / 255 for c in rgb)]
    xyz = [sum(a * b for a, b in zip(row, linear, strict=True)) for row in TO_XYZ]
    x, y, z = (
        t ** (1 / 3) if t > 216 / 24389 else (24389 / 27 * t + 16) / 116
        for t in (value / white for value, white in zip(xyz, WHITE, strict=True))
    )
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def difference(one: Triple, other: Triple) -> float:
    """CIEDE2000 of two CIELAB colours."""
    (l1, a1, b1), (l2, a2, b2) = one, other
    mean = (hypot(a1, b1) + hypot(a2, b2)) / 2
    g = 0.5 * (1 - sqrt(mean**7 / (mean**7 + 25**7)))
    a1, a2 = a1 * (1 + g), a2 * (1 + g)
    c1, c2 = hypot(a1, b1), hypot(a2, b2)
    h1, h2 = degrees(atan2(b1, a1)) % 360, degrees(atan2(b2, a2)) % 360
    dh = 0.0 if not c1 * c2 else (h2 - h1 + 180) % 360 - 180
    hue = h1 + h2 if not c1 * c2 else (h1 + dh / 2) % 360
    dl, dc, dhh = l2 - l1, c2 - c1, 2 * sqrt(c1 * c2) * sin(radians(dh / 2))
    light, chroma = (l1 + l2) / 2, (c1 + c2) / 2
    t = (
        1
        - 0.17 * cos(radians(hue - 30))
        + 0.24 * cos(radians(2 * hue))
        + 0.32 * cos(radians(3 * hue + 6))
        - 0.20 * cos(radians(4 * hue - 63))
    )
    sl = 1 + 0.015 * (light - 50) ** 2 / sqrt(20 + (light - 50) ** 2)
    sc, sh = 1 + 0.045 * chroma, 1 + 0.015 * chroma * t
    turn = -2 * sqrt(chroma**7 / (chroma**7 + 25**7)) * sin(radians(60 * exp(-(((hue - 275) / 25) ** 2))))
    return sqrt((dl / sl) ** 2 + (dc / sc) ** 2 + (dhh / sh) ** 2 + turn * dc / sc * dhh / sh)
