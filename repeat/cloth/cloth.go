// Package cloth follows the stencil along the bolt: where each placement falls,
// on which face of the board, how far it may walk, and which of it lands on
// which panel and seam of the garment.
//
//	left selvedge ──────────────────────────────► x
//	│ ┌───────────────┐ placement 0   face A
//	│ ├───────────────┤ placement 1
//	│ ├─ ─ ─ turn ─ ─ ┤               the board's end
//	│ ├───────────────┤ placement n   face B
//	▼ y along the bolt
//
// Bolt and board are measured on the cloth as it lies on the board; panels and
// seams on the finished cloth, after it has changed by Bolt.ChangeAcross and
// ChangeAlong. The package knows no paper: it is told the step, the lattice and
// the star baseline.
package cloth
