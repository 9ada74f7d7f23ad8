package document

// locate returns line and column of the value at path, or of the nearest value
// around it. It reads data, which is sound, a second time, so that reading
// without a fault need not remember where anything stood.
func locate(data []byte, path string) (line, column int) {
	s := scan{data: data}
	best, at := -1, 0
	var look func()
	enter := func() {
		here := string(s.path)
		if !leads(here, path) {
			s.skip()
			return
		}
		if len(here) > best {
			best, at = len(here), s.at
		}
		look()
	}
	look = func() {
		switch s.peek() {
		case '{':
			s.object(func([]byte) { enter() })
		case '[':
			s.list(func(int) { enter() })
		default:
			s.skip()
		}
	}
	look()
	return place(data, at)
}

// leads reports whether path is here or lies within it.
func leads(here, path string) bool {
	if len(path) < len(here) || path[:len(here)] != here {
		return false
	}
	return len(path) == len(here) || path[len(here)] == '.' || path[len(here)] == '['
}
