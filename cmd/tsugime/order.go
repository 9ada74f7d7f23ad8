package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// newFlags returns a flag set for a command.
func newFlags(c command) *flag.FlagSet { return flag.NewFlagSet(c.name, flag.ContinueOnError) }

// readOrder reads an order from a file or, for "-", from standard input. Its
// errors name the file and the place in it.
func (p program) readOrder(name string) (document.Order, error) {
	in, shown := p.in, "standard input"
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return document.Order{}, fmt.Errorf("open %s: %w; give the name of an order file", name, cause(err))
		}
		defer f.Close()
		in, shown = f, name
	}
	o, err := document.Read(in)
	if err != nil {
		return document.Order{}, fmt.Errorf("%s: %w", shown, cause(err))
	}
	return o, nil
}

// cause drops the words that the operating system's error says again.
func cause(err error) error {
	var path *os.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	return err
}

// build reads an order and carries it along the line.
func (p program) build(ctx context.Context, name string) (repeat.Work, error) {
	o, err := p.readOrder(name)
	if err != nil {
		return repeat.Work{}, err
	}
	w, err := repeat.Build(ctx, o)
	if err != nil {
		return repeat.Work{}, fmt.Errorf("%s: %w", name, err)
	}
	return w, nil
}

// save writes to a file atomically, or to standard output for "-".
func (p program) save(name string, force bool, write func(io.Writer) error) error {
	if name == "" {
		return wrongUse("say where to write: -o FILE, or -o - for standard output")
	}
	if name == "-" {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			return err
		}
		if _, err := p.out.Write(b.Bytes()); err != nil {
			return fmt.Errorf("write to standard output: %w", err)
		}
		return nil
	}
	return export.Save(name, force, write)
}

// widthFlag reads a flag that is a width: a length, or "seam" for that between the
// back seams of the order; "" is none.
func widthFlag(flagName, text string, o document.Order) (geom.Length, error) {
	if text == "seam" {
		return o.SeamWidth(), nil
	}
	return lengthFlag(flagName, text, 0)
}

// lengthFlag reads a flag that is a length; "" gives the fallback.
func lengthFlag(flagName, text string, fallback geom.Length) (geom.Length, error) {
	if text == "" {
		return fallback, nil
	}
	l, err := geom.ParseLength(text, geom.MMUnit)
	if err != nil {
		return 0, wrongUse("--%s: %v", flagName, err)
	}
	if l <= 0 {
		return 0, wrongUse("--%s: %s must be more than zero", flagName, text)
	}
	return l, nil
}
