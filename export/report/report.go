// Package report makes what leaves the workshop with the stencil: the cut-ready
// drawing, the marking sheets for transfer and for binding, the register sheet,
// the tables and the proof pictures.
//
//	repeat.Work ──► Drawing, Book, text, picture ──► job folder
//
// Every sheet is at true scale and at cut size: what the dry paper is cut to, so
// that the pattern is right when paper and cloth have moved. Pictures show the
// finished cloth. Only JobFolder writes files; the rest are functions of the
// work alone, so the same work gives the same bytes.
package report
