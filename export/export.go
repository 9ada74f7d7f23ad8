// Package export is what leaves the program. Everything that can be decided is
// decided before a writer sees it: a writer gets a Drawing, flat and in
// nanometres, so that screen, SVG, DXF, PDF and PNG can't disagree.
//
// A Drawing is one picture at true scale. A Book is pages, each with its own
// furniture and with windows through which shared drawings show. Writers never
// import each other.
package export
