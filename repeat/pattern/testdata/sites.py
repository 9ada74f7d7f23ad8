"""Prints the Wyckoff letter that spglib gives to places under the 17 plane groups.

Needs the Debian packages python3-gemmi and python3-spglib. The argument is a JSON
file with {group: [[x, y], ...]} in units of the conventional cell. A plane group is
the space group of the same name along c whose operations leave z alone
(International Tables for Crystallography, volume A). A crystal of seven atoms in
general places, each a kind of its own, has no symmetry but the group's; an eighth
atom stands at the place. spglib may set the origin elsewhere, where the group looks
the same: the place is printed as it lies there, [x, y, letter].
"""
import json
import sys
import warnings

import gemmi
import numpy as np
import spglib

warnings.simplefilter("ignore")

SPACE_GROUPS = {
    "p1": "P 1", "p2": "P 1 1 2", "pm": "P m 1 1", "pg": "P b 1 1", "cm": "C m 1 1",
    "p2mm": "P m m 2", "p2mg": "P m a 2", "p2gg": "P b a 2", "c2mm": "C m m 2",
    "p4": "P 4", "p4mm": "P 4 m m", "p4gm": "P 4 b m", "p3": "P 3", "p3m1": "P 3 m 1",
    "p31m": "P 3 1 m", "p6": "P 6", "p6mm": "P 6 m m",
}


def cell_of(group):
    if group in ("p1", "p2"):
        return [[9, 0, 0], [2.3, 7, 0], [0, 0, 11]]
    if group.startswith(("p3", "p6")):
        return [[8, 0, 0], [-4, 4 * 3**0.5, 0], [0, 0, 11]]
    return [[8, 0, 0], [0, 8 if "4" in group else 7, 0], [0, 0, 11]]


def hall_number(hall):
    for n in range(1, 531):
        if spglib.get_spacegroup_type(n)["hall_symbol"].replace("=", '"') == hall.replace("=", '"'):
            return n
    raise SystemExit(f"spglib has no {hall}")


def orbit(ops, place):
    seen = []
    for op in ops:
        p = [v % 1 for v in op.apply_to_xyz(place)]
        if not any(all(abs((a - b + 0.5) % 1 - 0.5) < 1e-6 for a, b in zip(p, q)) for q in seen):
            seen.append(p)
    return seen


def letter(group, hall, ops, place):
    atoms, kinds = [], []
    for kind in range(7):
        general = [0.031 + 0.123 * kind, 0.071 + 0.093 * ((3 * kind) % 7), 0.05 + 0.131 * ((2 * kind) % 7)]
        for p in orbit(ops, general):
            atoms.append(p)
            kinds.append(kind + 1)
    at = len(atoms)
    for p in orbit(ops, [place[0], place[1], 0.4567]):
        atoms.append(p)
        kinds.append(9)
    d = spglib.get_symmetry_dataset((cell_of(group), atoms, kinds), symprec=1e-5, hall_number=hall)
    p = d["transformation_matrix"] @ np.array(atoms[at]) + d["origin_shift"]
    return [float(p[0]), float(p[1]), d["wyckoffs"][at]]


with open(sys.argv[1]) as asked:
    places = json.load(asked)
told = {}
for group, points in places.items():
    space = gemmi.find_spacegroup_by_name(SPACE_GROUPS[group])
    ops = list(space.operations())
    hall = hall_number(space.hall)
    told[group] = [letter(group, hall, ops, p) for p in points]
print(json.dumps(told))
