// Package pattern holds the unit: the smallest drawing that repeats. A unit is a
// lattice and the motifs of one cell; the plain pattern is that cell repeated
// without end in both directions, which is the same as a drawing on a torus.
//
//	  ┌────────┐ A
//	┌─┴──────┬─┘        one cell of the lattice A, B;
//	│ motifs │          what leaves it on one side
//	└────────┘          enters on the other
//	 B
//
// Everything here is in the torus domain: no sheet, no step of the stencil, no
// cloth. Lengths are geom.Length (nanometres).
package pattern
