// Package document is the saved order: what a person decided, and nothing that
// can be computed from it.
//
// An Order is a value. Edits are functions from one order to the next; what an
// edit doesn't touch is shared, never copied, and never written again. History
// keeps the orders before and after. The file is JSON with units in its keys.
package document
