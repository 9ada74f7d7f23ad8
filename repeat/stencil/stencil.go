// Package stencil lays the plain pattern on a sheet of paper and says what the
// paper does: where two placements meet (the joint line), how thin it gets
// (webs), what falls out (islands), where the register stars go, and how large
// all of it must be cut so that it is right when paper and cloth have moved.
//
//	┌───────────────────────┐  paper
//	│  ★  ~~~~~~~~~~~~~  ★  │  joint line, leading stars
//	│    · · · · · · · ·    │
//	│    ·  cut field  ·    │  one step of the pattern, whole motifs only
//	│    · · · · · · · ·    │
//	│  ★  ~~~~~~~~~~~~~  ★  │  the joint line one step on, trailing stars
//	└───────────────────────┘
//
// Webs and islands of the pattern are measured on the torus, the joint on the
// cloth (periodic along by the step), holding on the sheet. Lengths are at
// finished size until Scale takes them to the paper.
package stencil
