package main

import (
	"context"
	"fmt"
	"io"

	"tsugime/assets"
)

func runStart(_ context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	out, list, force := flags.String("o", "", ""), flags.Bool("list", false, ""), flags.Bool("force", false, "")
	words, err := p.parse(c, flags, args, 0, 1)
	if err != nil {
		return err
	}
	if *list {
		for _, s := range assets.Starters() {
			if _, err := fmt.Fprintln(p.out, s.Name); err != nil {
				return err
			}
		}
		return nil
	}
	if len(words) == 0 {
		return wrongUse("start: name a starter, or use --list to see them; usage: tsugime start %s", c.usage)
	}
	text, ok := assets.Starter(words[0])
	if !ok {
		return wrongUse("start: there is no starter %q; 'tsugime start --list' prints their names", words[0])
	}
	return p.save(*out, *force, func(w io.Writer) error {
		_, err := w.Write(text)
		return err
	})
}
