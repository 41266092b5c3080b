"""Letters of five rows of beads, our own, for ropes on which no other letters can be read.

Each is told as five rows of marks, parted by slashes; letters that look alike in Latin, Greek and Cyrillic share one.
Marks above a letter take a row of their own, and those below it another.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from unicodedata import normalize

HIGH, ABOVE, BELOW = 5, 1, 1

_TOLD = """
A .X./X.X/XXX/X.X/X.X
B XX./X.X/XX./X.X/XX.
C .XX/X../X../X../.XX
D XX./X.X/X.X/X.X/XX.
E XXX/X../XX./X../XXX
F XXX/X../XX./X../X..
G .XX/X../X.X/X.X/.XX
H X.X/X.X/XXX/X.X/X.X
I X/X/X/X/X
J ..X/..X/..X/X.X/.X.
K X.X/X.X/XX./X.X/X.X
L X../X../X../X../XXX
M X...X/XX.XX/X.X.X/X...X/X...X
N X..X/XX.X/X.XX/X..X/X..X
O .X./X.X/X.X/X.X/.X.
P XX./X.X/XX./X../X..
Q .XX./X..X/X..X/X.X./.X.X
R XX./X.X/XX./X.X/X.X
S .XX/X../.X./..X/XX.
T XXX/.X./.X./.X./.X.
U X.X/X.X/X.X/X.X/.X.
V X.X/X.X/X.X/.X./.X.
W X...X/X...X/X.X.X/XX.XX/X...X
X X.X/X.X/.X./X.X/X.X
Y X.X/X.X/.X./.X./.X.
Z XXX/..X/.X./X../XXX
0 .X./X.X/X.X/X.X/.X.
1 .X/XX/.X/.X/.X
2 XX./..X/.X./X../XXX
3 XX./..X/.X./..X/XX.
4 X.X/X.X/XXX/..X/..X
5 XXX/X../XX./..X/XX.
6 .XX/X../XX./X.X/.X.
7 XXX/..X/.X./.X./.X.
8 .X./X.X/.X./X.X/.X.
9 .X./X.X/.XX/..X/XX.
. ./././X/X
! X/X/X/./X
? XX./..X/.X./.../.X.
- ../../XX/../..
+ .../.X./XXX/.X./...
& .X../X.X./.X../X.X./.X.X
' X/X/././.
, ./././X/X
: ./X/./X/.
♥ .X.X./XXXXX/XXXXX/.XXX./..X..
Б XXX/X../XX./X.X/XX.
Г XXX/X../X../X../X..
Д .XX./.X.X/.X.X/XXXX/X..X
Ж X.X.X/X.X.X/.XXX./X.X.X/X.X.X
И X..X/X..X/X.XX/XX.X/X..X
Л .XX/X.X/X.X/X.X/X.X
П XXX/X.X/X.X/X.X/X.X
У X.X/X.X/.XX/..X/XX.
Ф .X./XXX/X.X/XXX/.X.
Ц X.X./X.X./X.X./XXXX/...X
Ч X.X/X.X/.XX/..X/..X
Ш X.X.X/X.X.X/X.X.X/X.X.X/XXXXX
Щ X.X.X./X.X.X./X.X.X./XXXXXX/.....X
Ъ XX../.X../.XX./.X.X/.XX.
Ы X..X/X..X/XX.X/X.XX/XX.X
Ь X../X../XX./X.X/XX.
Э XX./..X/.XX/..X/XX.
Ю X.XX/XX.X/XX.X/XX.X/X.XX
Я .XX/X.X/.XX/X.X/X.X
Є .XX/X../XX./X../.XX
Δ ..X../.X.X./.X.X./X...X/XXXXX
Θ .X./X.X/XXX/X.X/.X.
Λ ..X../.X.X./.X.X./X...X/X...X
Ξ XXX/.../.X./.../XXX
Σ XXX/X../.X./X../XXX
Ψ X.X.X/X.X.X/.XXX./..X../..X..
Ω .XX./X..X/X..X/.XX./X..X
Ґ ..X/XXX/X../X../X..
Ђ XXX../.X.../.XXX./.X..X/.X.X.
Ћ XXX../.X.../.XXX./.X..X/.X..X
Љ .XX../X.X../X.XX./X.X.X/X.XX.
Њ X.X../X.X../XXXX./X.X.X/X.XX.
Џ X.X/X.X/X.X/XXX/.X.
Æ .XXXX/X.X../XXXX./X.X../X.XXX
Œ .XXXX/X.X../X.XX./X.X../.XXXX
Ø .XXX./X..XX/X.X.X/XX..X/.XXX.
Ł X../X.X/XX./X../XXX
Đ .XX./.X.X/XXXX/.X.X/.XX.
ẞ .X./X.X/XX./X.X/XX.
Þ X../XX./X.X/XX./X..
/ ..X/..X/.X./X../X..
( .X/X./X./X./.X
) X./.X/.X/.X/X.
= .../XXX/.../XXX/...
* .../X.X/.X./X.X/...
; ./X/./X/X
"""
ALIKE: Mapping[str, str] = MappingProxyType(
    {
        **dict(zip("АВЕЗКМНОРСТХІЅЈ", "AB" "E3KMHOPCTXISJ", strict=True)),
        **dict(zip("ΑΒΓΕΖΗΙΚΜΝΟΠΡΤΥΦΧ", "ABГEZHIKMNOПPTYФX", strict=True)),
        "Ð": "Đ", "’": "'", "–": "-", "—": "-",
    }
)  # fmt: skip
PIXELS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {line[0]: tuple(line[2:].split("/")) for line in _TOLD.strip().splitlines()}
)
# marks on a row of their own, by their combining sign
MARKS: Mapping[str, str] = MappingProxyType(
    {
        "\u0300": "X.",
        "\u0301": ".X",
        "\u0302": ".X.",
        "\u0303": "XX",
        "\u0304": "XX",
        "\u0306": "X.X",
        "\u0307": "X",
        "\u0308": "X.X",
        "\u030a": "X",
        "\u030b": "XX",
        "\u030c": "X.X",
    }
)


MARKS_BELOW: Mapping[str, str] = MappingProxyType(
    {
        "\u0323": "X",
        "\u0326": ".X",
        "\u0327": ".X",
        "\u0328": "..X",
        "\u0331": "XX",
    }
)


def pixels(letter: str) -> tuple[str, ...] | None:
    """Seven rows of a letter with its marks, the first for those above and the last for those below.

    None for a letter or a mark that we have not drawn.
    """
    told = normalize("NFD", "ẞ" if letter == "ß" else letter.upper())
    base, signs = told[:1], told[1:]
    drawn = PIXELS.get(ALIKE.get(base, base))
    if drawn is None or any(sign not in MARKS and sign not in MARKS_BELOW for sign in signs):
        return None
    above = next((MARKS[sign] for sign in signs if sign in MARKS), "")
    below = next((MARKS_BELOW[sign] for sign in signs if sign in MARKS_BELOW), "")
    wide = max(map(len, (above, drawn[0], below)))
    return tuple(row.center(wide, ".") for row in (above, *drawn, below))
