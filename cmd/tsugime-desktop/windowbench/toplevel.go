package main

import (
	"fmt"
	"time"
)

// child is the largest window on the screen that is shown, zero for none.
func (s *screen) child() (uint32, error) {
	tree, err := s.ask(u32(words(15, 0, 0, 0), s.root))
	if err != nil {
		return 0, err
	}
	var best uint32
	most := 0
	for i := range int(order.Uint16(tree[16:])) {
		id := order.Uint32(tree[32+4*i:])
		looks, err := s.ask(u32(words(3, 0, 0, 0), id))
		if err != nil {
			continue // it has gone meanwhile
		}
		place, err := s.ask(u32(words(14, 0, 0, 0), id))
		const viewable = 2
		if err != nil || looks[26] != viewable {
			continue
		}
		if area := int(order.Uint16(place[16:])) * int(order.Uint16(place[18:])); area > most {
			best, most = id, area
		}
	}
	return best, nil
}

// toplevel waits for the program's window to be shown.
func (s *screen) toplevel(patience time.Duration) (uint32, error) {
	for begun := time.Now(); time.Since(begun) < patience; time.Sleep(5 * time.Millisecond) {
		if id, err := s.child(); id != 0 || err != nil {
			return id, err
		}
	}
	return 0, fmt.Errorf("no window was shown within %v", patience)
}

// place gives a window a place, a size and the focus, as a window manager does.
func (s *screen) place(id uint32, x, y, w, h int) error {
	const placeAndSize = 1 | 2 | 4 | 8
	move := u32(u16(u32(words(12, 0, 0, 0), id), placeAndSize, 0), uint32(x), uint32(y), uint32(w), uint32(h))
	if err := s.send(move); err != nil {
		return err
	}
	return s.focus(id)
}

// focus gives a window the keyboard.
func (s *screen) focus(id uint32) error {
	const toParent = 2
	return s.send(u32(words(42, toParent, 0, 0), id, 0))
}

// askToClose sends a window the message of a window manager that it is to close
// (Inter-Client Communication Conventions Manual 2.0, 4.2.8.1).
func (s *screen) askToClose(id uint32) error {
	protocols, err := s.atom("WM_PROTOCOLS")
	if err != nil {
		return err
	}
	closing, err := s.atom("WM_DELETE_WINDOW")
	if err != nil {
		return err
	}
	const sendEvent, clientMessage, format = 25, 33, 32
	r := u32(words(sendEvent, 0, 0, 0), id, 0)
	r = append(r, clientMessage, format, 0, 0)
	return s.send(u32(r, id, protocols, closing, 0, 0, 0, 0))
}

// atom returns the number of a name.
func (s *screen) atom(name string) (uint32, error) {
	r, err := s.ask(append(u16(words(16, 0, 0, 0), len(name), 0), name...))
	if err != nil {
		return 0, err
	}
	return order.Uint32(r[8:]), nil
}
