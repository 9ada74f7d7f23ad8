// Package geom holds the plane that everything else is drawn on: lengths,
// points, boxes, discs, outlines, and what can be measured on them.
//
// Frame: x runs across the bolt from the left selvedge, y along the bolt in
// feed direction, so y points down on the screen and on the sheet.
//
//	0 ──► x   across the bolt
//	│
//	▼
//	y         along the bolt, the way the stencil is fed
//
// A Length is a whole number of nanometres. A lattice is then a pair of integer
// vectors, what leaves one edge re-enters at the other to the bit, and two
// places are the same place exactly when == says so. float64 appears only in
// what is derived: areas in square millimetres, angles, distances.
//
// The package knows nothing of patterns, stencils or cloth, and does no input
// or output.
package geom
