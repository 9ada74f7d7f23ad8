package main

import (
	"encoding/binary"
	"fmt"
	"io"
	"net"
	"os"
	"strings"
)

// A wire speaks the X11 protocol (X Window System Protocol, version 11, X.Org) with a
// server on this machine, as far as an onlooker needs it. One goroutine asks; the
// events come on another one.
type wire struct {
	conn    net.Conn
	sent    uint16 // the number of the last request
	replies chan reply
	event   func(packet []byte)

	root         uint32
	ids          uint32 // the next free one
	firstKeycode byte
	lastKeycode  byte
}

// A reply is what the server answers to a request: a packet of 32 bytes and what
// follows, or an error.
type reply struct {
	number uint16
	packet []byte
	err    error
}

var order = binary.LittleEndian

// mostReplies is how many answers may lie unread: errors of requests that have no
// reply lie until the next one that has.
const mostReplies = 64

// dial opens the display of the environment. Events go to a function that must
// not ask anything itself.
func dial(display string, event func(packet []byte)) (*wire, error) {
	number, ok := strings.CutPrefix(display, ":")
	if !ok {
		return nil, fmt.Errorf("the display %q is not on this machine; give one like :0", display)
	}
	number, _, _ = strings.Cut(number, ".")
	conn, err := net.Dial("unix", "/tmp/.X11-unix/X"+number)
	if err != nil {
		return nil, fmt.Errorf("open display %s: %w", display, err)
	}
	w := &wire{conn: conn, replies: make(chan reply, mostReplies), event: event}
	if err := w.greet(); err != nil {
		return nil, fmt.Errorf("open display %s: %w", display, err)
	}
	go w.listen()
	return w, nil
}

// greet agrees on the protocol and reads what the server says of itself.
func (w *wire) greet() error {
	hello := make([]byte, 12)
	hello[0] = 'l'
	order.PutUint16(hello[2:], 11)
	if _, err := w.conn.Write(hello); err != nil {
		return err
	}
	head := make([]byte, 8)
	if _, err := io.ReadFull(w.conn, head); err != nil {
		return err
	}
	body := make([]byte, 4*int(order.Uint16(head[6:])))
	if _, err := io.ReadFull(w.conn, body); err != nil {
		return err
	}
	if head[0] != 1 {
		return fmt.Errorf("the server refuses: %s", strings.TrimRight(string(body), "\x00\n"))
	}
	vendor, formats := int(order.Uint16(body[16:])), int(body[21])
	w.ids = order.Uint32(body[4:])
	w.firstKeycode, w.lastKeycode = body[26], body[27]
	w.root = order.Uint32(body[32+(vendor+3)/4*4+8*formats:])
	return nil
}

// listen takes what the server sends.
func (w *wire) listen() {
	for {
		packet := make([]byte, 32)
		if _, err := io.ReadFull(w.conn, packet); err != nil {
			close(w.replies)
			return
		}
		const isError, isReply, isLong = 0, 1, 35
		if kind := packet[0] & 0x7f; kind == isReply || kind == isLong {
			rest := make([]byte, 4*int(order.Uint32(packet[4:])))
			if _, err := io.ReadFull(w.conn, rest); err != nil {
				close(w.replies)
				return
			}
			packet = append(packet, rest...)
		}
		switch packet[0] {
		case isError:
			w.replies <- reply{order.Uint16(packet[2:]), nil, fmt.Errorf("the display answers error %d to request %d.%d", packet[1], packet[10], order.Uint16(packet[8:]))}
		case isReply:
			w.replies <- reply{order.Uint16(packet[2:]), packet, nil}
		default:
			w.event(packet)
		}
	}
}

// send sends a request; its length in words is filled in.
func (w *wire) send(request []byte) error {
	for len(request)%4 != 0 {
		request = append(request, 0)
	}
	order.PutUint16(request[2:], uint16(len(request)/4))
	w.sent++
	_, err := w.conn.Write(request)
	return err
}

// ask sends a request and returns its reply.
func (w *wire) ask(request []byte) ([]byte, error) {
	if err := w.send(request); err != nil {
		return nil, err
	}
	for r := range w.replies {
		if r.number == w.sent {
			return r.packet, r.err
		}
		if r.err != nil {
			return nil, r.err
		}
	}
	return nil, fmt.Errorf("the display has gone: %w", os.ErrClosed)
}

// id returns a free number for a thing of the server.
func (w *wire) id() uint32 { w.ids++; return w.ids - 1 }

// extension returns the number of an extension and of its first event.
func (w *wire) extension(name string) (major, event byte, err error) {
	r, err := w.ask(append(words(98, 0, 0, 0, byte(len(name)), 0, 0, 0), name...))
	if err != nil {
		return 0, 0, err
	}
	if r[8] == 0 {
		return 0, 0, fmt.Errorf("the display lacks the extension %s", name)
	}
	return r[9], r[10], nil
}

// words is a request of single bytes.
func words(b ...byte) []byte { return b }

// u16 and u32 add numbers to a request.
func u16(b []byte, v ...int) []byte {
	for _, n := range v {
		b = order.AppendUint16(b, uint16(n))
	}
	return b
}

func u32(b []byte, v ...uint32) []byte {
	for _, n := range v {
		b = order.AppendUint32(b, n)
	}
	return b
}
