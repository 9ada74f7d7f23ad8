// Package bench says how a sheet is cut: which of the five methods each cut-out
// gets and which tool of the cutter's rack, in what order, and how long it takes.
//
//	sheet, rack ──► Assign ──► choices ──► PlanSheet ──► passes, pile, days
//
// The rack is the cutter's own and kept apart from any order. The package
// measures and proposes; the cutter may name another method for any motif.
package bench
