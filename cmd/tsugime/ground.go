package main

import (
	"context"
	"fmt"
	"io"
	"math"
	"strings"

	"tsugime/repeat/document"
	"tsugime/repeat/pattern"
)

func runGround(_ context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	list, in := flags.Bool("list", false, ""), flags.String("in", "", "")
	step, width := flags.String("step", "", ""), flags.String("width", "", "")
	seed := flags.Int64("seed", 1, "")
	out, force := flags.String("o", "", ""), flags.Bool("force", false, "")
	var set []string
	flags.Func("set", "", func(v string) error {
		set = append(set, v)
		return nil
	})
	words, err := p.parse(c, flags, args, 0, 1)
	if err != nil {
		return err
	}
	if *list {
		return p.listGrounds(words)
	}
	if len(words) == 0 {
		return wrongUse("ground: name a ground, or use --list to see them; usage: tsugime ground %s", c.usage)
	}
	recipe, err := recipeOf(words[0], set, *seed)
	if err != nil {
		return err
	}
	o := document.Defaults()
	if *in != "" {
		if o, err = p.readOrder(*in); err != nil {
			return err
		}
	}
	if o.Sheet.Step, err = lengthFlag("step", *step, o.Sheet.Step); err != nil {
		return err
	}
	w, err := lengthFlag("width", *width, 0)
	if err != nil {
		return err
	}
	if o, err = document.LayGround(o, recipe, w); err != nil {
		return wrongUse("ground: %v", err)
	}
	if o.Title == "" {
		o.Title = strings.ToUpper(words[0][:1]) + strings.ReplaceAll(words[0][1:], "-", " ")
	}
	return p.save(*out, *force, func(w io.Writer) error { return document.Write(w, o) })
}

// recipeOf reads a ground's name and its settings, KEY=VALUE each.
func recipeOf(name string, set []string, seed int64) (pattern.Recipe, error) {
	g, ok := pattern.GroundNamed(name)
	if !ok {
		return pattern.Recipe{}, wrongUse("ground: there is no ground %q; 'tsugime ground --list' prints their names", name)
	}
	if seed < 0 || seed > math.MaxInt32 {
		return pattern.Recipe{}, wrongUse("--seed: %d is out of bounds; give 0 to %d", seed, math.MaxInt32)
	}
	r := g.Recipe()
	r.Seed = uint64(seed)
	for _, s := range set {
		key, value, ok := strings.Cut(s, "=")
		if !ok {
			return r, wrongUse("--set: %q is no setting; write KEY=VALUE, such as pitch=1.2", s)
		}
		var err error
		if r, err = r.With(strings.TrimSpace(key), value); err != nil {
			return r, wrongUse("--set: %v", err)
		}
	}
	return r, nil
}

// listGrounds prints the grounds or, for one of them, what can be set.
func (p program) listGrounds(words []string) error {
	var b strings.Builder
	if len(words) == 0 {
		for _, g := range pattern.Grounds() {
			fmt.Fprintf(&b, "%-20s %-14s %s\n", g.Name, g.Trade, g.About)
		}
		_, err := fmt.Fprint(p.out, b.String())
		return err
	}
	g, ok := pattern.GroundNamed(words[0])
	if !ok {
		return wrongUse("ground: there is no ground %q; 'tsugime ground --list' prints their names", words[0])
	}
	fmt.Fprintf(&b, "%s (%s)\n%s\n\n", g.Name, g.Trade, g.About)
	for _, q := range g.Params {
		bounds := q.Text(q.Least) + " to " + q.Text(q.Most)
		if q.Kind == pattern.ChoiceParam {
			bounds = strings.Join(q.Choices, ", ")
		}
		fmt.Fprintf(&b, "  --set %s=%s   %s: %s (%s)\n", q.Key, strings.ReplaceAll(q.Text(q.Default), " ", ""), q.Name, q.Help, bounds)
	}
	_, err := fmt.Fprint(p.out, b.String())
	return err
}
