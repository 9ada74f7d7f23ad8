package document

// A History is a present value, those before each edit and those that were
// undone. The zero History is the zero value without past or future.
//
// A History is itself a value: each method returns a new one, and the two share
// everything that both can reach, so keeping a thousand edits costs no more than
// what the edits changed.
type History[T any] struct {
	now          T
	undone, done *edit[T]
}

// An edit leads from now to value; rest are the edits behind it.
type edit[T any] struct {
	name  string
	value T
	rest  *edit[T]
}

// Begin returns a history that starts at value.
func Begin[T any](value T) History[T] { return History[T]{now: value} }

// Now returns the present value.
func (h History[T]) Now() T { return h.now }

// Do makes next the present value, by an edit that the menu calls name ("Move
// Motif"). What was undone before is forgotten.
func (h History[T]) Do(name string, next T) History[T] {
	return History[T]{now: next, done: &edit[T]{name, h.now, h.done}}
}

// Undo goes back before the last edit, and reports whether there was one.
func (h History[T]) Undo() (History[T], bool) {
	if h.done == nil {
		return h, false
	}
	last := *h.done
	return History[T]{last.value, &edit[T]{last.name, h.now, h.undone}, last.rest}, true
}

// Redo makes the edit again that was undone last, and reports whether there was
// one.
func (h History[T]) Redo() (History[T], bool) {
	if h.undone == nil {
		return h, false
	}
	next := *h.undone
	return History[T]{next.value, next.rest, &edit[T]{next.name, h.now, h.done}}, true
}

// UndoName returns what Undo would take back, "" where nothing.
func (h History[T]) UndoName() string { return h.done.called() }

// RedoName returns what Redo would do again, "" where nothing.
func (h History[T]) RedoName() string { return h.undone.called() }

func (e *edit[T]) called() string {
	if e == nil {
		return ""
	}
	return e.name
}
