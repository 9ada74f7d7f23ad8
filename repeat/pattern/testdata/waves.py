# What numpy's fft2 says of coverage sampled on a grid of the cell: for each unit the
# lattice, motifs (disc: x y d; square: x y side, upright) in mm, and waves m n re im.
# `waves.py > waves.json` renews the test data, from 2048² samples; `waves.py 512` is
# coarser and quick. Needs the Debian package python3-numpy.
import json
import random
import sys

import numpy as np

N = int(sys.argv[1]) if len(sys.argv) > 1 else 2048
random.seed(5)
units = []
for case in range(4):
    a, b = (6.0, 1.5 * (case % 2)), (-2.0 * (case // 2), 5.0)
    discs = [[random.uniform(0, 6), random.uniform(0, 5), random.uniform(.3, 1.6)] for _ in range(9)]
    squares = [[random.uniform(0, 6), random.uniform(0, 5), random.uniform(.3, 1.5)] for _ in range(case)]
    u, v = np.meshgrid((np.arange(N) + .5) / N, (np.arange(N) + .5) / N, indexing="ij")
    x, y = u * a[0] + v * b[0], u * a[1] + v * b[1]
    cut = np.zeros((N, N), bool)
    for i in range(-3, 4):
        for j in range(-3, 4):
            px, py = x + i * a[0] + j * b[0], y + i * a[1] + j * b[1]
            for cx, cy, d in discs:
                cut |= (px - cx) ** 2 + (py - cy) ** 2 < d * d / 4
            for cx, cy, s in squares:
                cut |= np.maximum(abs(px - cx), abs(py - cy)) < s / 2
    c = np.fft.fft2(cut) / N**2
    waves = []
    for m in range(-4, 5):
        for n in range(-4, 5):
            w = c[m, n] * np.exp(-1j * np.pi * (m + n) / N)
            waves.append([m, n, round(w.real, 6), round(w.imag, 6)])
    units.append({"a": a, "b": b, "discs": discs, "squares": squares, "waves": waves})
x = [[random.gauss(0, 1), random.gauss(0, 1)] for _ in range(64)]
f = np.fft.fft(np.array([complex(*p) for p in x]))
print(json.dumps({"units": units, "line": x, "fft": [[v.real, v.imag] for v in f]}))
