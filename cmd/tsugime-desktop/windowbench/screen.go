package main

import (
	"fmt"
	"sync"
	"sync/atomic"
	"time"
)

// A screen is the display as somebody sees it who sits before it: it moves the
// pointer and presses keys and buttons as hardware does (X Test Extension 2.2), and is
// told when something on it is drawn (X Damage Extension 1.1).
type screen struct {
	*wire
	test    byte            // the number of the extension that feigns input
	keycode map[uint32]byte // by keysym

	mu     sync.Mutex
	frames []frame
	news   chan struct{} // has room for one
}

// A frame is one drawing that reached the screen.
type frame struct {
	at         time.Time
	x, y, w, h int
}

// look opens the display and begins to note what is drawn on it.
func look(display string) (*screen, error) {
	s := &screen{news: make(chan struct{}, 1)}
	var drawn atomic.Uint32
	w, err := dial(display, func(p []byte) {
		if first := drawn.Load(); first != 0 && uint32(p[0]&0x7f) == first {
			s.note(frame{time.Now(), int(order.Uint16(p[16:])), int(order.Uint16(p[18:])), int(order.Uint16(p[20:])), int(order.Uint16(p[22:]))})
		}
	})
	if err != nil {
		return nil, err
	}
	s.wire = w
	if s.test, _, err = w.extension("XTEST"); err != nil {
		return nil, err
	}
	damage, event, err := w.extension("DAMAGE")
	if err != nil {
		return nil, err
	}
	if _, err := w.ask(u32(words(damage, 0, 0, 0), 1, 1)); err != nil {
		return nil, err
	}
	if err := s.readKeys(); err != nil {
		return nil, err
	}
	drawn.Store(uint32(event))
	const rawRectangles = 0
	return s, w.send(append(u32(words(damage, 1, 0, 0), w.id(), w.root), rawRectangles, 0, 0, 0))
}

func (s *screen) note(f frame) {
	s.mu.Lock()
	s.frames = append(s.frames, f)
	s.mu.Unlock()
	select {
	case s.news <- struct{}{}:
	default:
	}
}

// since returns the frames after a time.
func (s *screen) since(t time.Time) []frame {
	s.mu.Lock()
	defer s.mu.Unlock()
	i := len(s.frames)
	for i > 0 && s.frames[i-1].at.After(t) {
		i--
	}
	return append([]frame(nil), s.frames[i:]...)
}

// forget drops the frames noted until now.
func (s *screen) forget() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.frames = nil
}

// frameAfter waits for the first frame after a time.
func (s *screen) frameAfter(t time.Time, patience time.Duration) (frame, error) {
	late := time.After(patience)
	for {
		if f := s.since(t); len(f) > 0 {
			return f[0], nil
		}
		select {
		case <-s.news:
		case <-late:
			return frame{}, fmt.Errorf("no frame within %v", patience)
		}
	}
}

// still waits until nothing has been drawn for a while.
func (s *screen) still(quiet, patience time.Duration) error {
	begun := time.Now()
	for time.Since(begun) < patience {
		last := begun
		s.mu.Lock()
		if n := len(s.frames); n > 0 && s.frames[n-1].at.After(last) {
			last = s.frames[n-1].at
		}
		s.mu.Unlock()
		if rest := quiet - time.Since(last); rest > 0 {
			time.Sleep(rest)
			continue
		}
		return nil
	}
	return fmt.Errorf("the screen was not still within %v", patience)
}

// What is fed to the server as if hardware had done it.
const (
	keyDown, keyUp       = 2, 3
	buttonDown, buttonUp = 4, 5
	motion               = 6
)

func (s *screen) feign(kind, detail byte, x, y int) error {
	r := u32(words(s.test, 2, 0, 0, kind, detail, 0, 0), 0, s.root, 0, 0)
	r = u16(r, x, y)
	return s.send(append(r, 0, 0, 0, 0, 0, 0, 0, 0))
}

// moveTo puts the pointer somewhere.
func (s *screen) moveTo(x, y int) error { return s.feign(motion, 0, x, y) }

// The buttons of a pointer; turning the wheel is a press and release of two of them.
const (
	leftButton = 1
	wheelUp    = 4
	wheelDown  = 5
)

func (s *screen) press(button byte) error   { return s.feign(buttonDown, button, 0, 0) }
func (s *screen) release(button byte) error { return s.feign(buttonUp, button, 0, 0) }

func (s *screen) click(button byte) error {
	if err := s.press(button); err != nil {
		return err
	}
	return s.release(button)
}

// Keysyms (X11 keysymdef.h); letters and digits are their own.
const (
	shift   = 0xffe1
	control = 0xffe3
)

// chord presses keys one after the other and lets them go backwards.
func (s *screen) chord(keysyms ...uint32) error {
	for _, k := range keysyms {
		if s.keycode[k] == 0 {
			return fmt.Errorf("the keyboard has no key for keysym %#x", k)
		}
		if err := s.feign(keyDown, s.keycode[k], 0, 0); err != nil {
			return err
		}
	}
	for i := len(keysyms) - 1; i >= 0; i-- {
		if err := s.feign(keyUp, s.keycode[keysyms[i]], 0, 0); err != nil {
			return err
		}
	}
	return nil
}

// readKeys learns which key gives which keysym without a modifier.
func (s *screen) readKeys() error {
	count := s.lastKeycode - s.firstKeycode + 1
	r, err := s.ask(words(101, 0, 0, 0, s.firstKeycode, count, 0, 0))
	if err != nil {
		return err
	}
	each := int(r[1])
	s.keycode = map[uint32]byte{}
	for i := range int(count) {
		if k := order.Uint32(r[32+4*i*each:]); k != 0 && s.keycode[k] == 0 {
			s.keycode[k] = s.firstKeycode + byte(i)
		}
	}
	return nil
}

// pixels returns a part of the screen, four bytes to a pixel.
func (s *screen) pixels(x, y, w, h int) ([]byte, error) {
	const zPixmap = 2
	r, err := s.ask(u32(u16(u32(words(73, zPixmap, 0, 0), s.root), x, y, w, h), 0xffffffff))
	if err != nil {
		return nil, err
	}
	return r[32:], nil
}
