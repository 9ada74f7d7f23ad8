package main

import (
	"context"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"tsugime/repeat/document"
	"tsugime/repeat/pattern"
)

func runGround(_ context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	list, in := flags.Bool("list", false, ""), flags.String("in", "", "")
	step, width := flags.String("step", "", ""), flags.String("width", "", "")
	seed, ease, again := flags.String("seed", "", ""), flags.Bool("ease", false, ""), flags.Bool("again", false, "")
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
	if (len(words) == 0) != *again {
		return wrongUse("ground: name a ground, or use --list to see them; usage: tsugime ground %s", c.usage)
	}
	o := document.Defaults()
	if *in != "" {
		if o, err = p.readOrder(*in); err != nil {
			return err
		}
	}
	if *again {
		if words = []string{o.Ground.Ground}; words[0] == "" {
			return wrongUse("--again: there is no ground to lay again; name with --in ORDER an order that has one")
		}
	}
	recipe, err := recipeOf(words[0], o.Ground, *again)
	if err != nil {
		return err
	}
	if recipe, err = withSettings(recipe, set, *seed); err != nil {
		return err
	}
	if o.Sheet.Step, err = lengthFlag("step", *step, o.Sheet.Step); err != nil {
		return err
	}
	if *step != "" {
		recipe.Rows = 0
	}
	if *width != "" {
		if recipe.Width, err = widthFlag("width", *width, o); err != nil {
			return err
		}
		recipe.Columns = 0
	}
	if o, err = document.LayGround(o, recipe); err == nil && *ease {
		o, err = document.EaseGround(o)
	}
	if err != nil {
		return wrongUse("%v", err)
	}
	if o.Title == "" {
		o.Title = strings.ToUpper(words[0][:1]) + strings.ReplaceAll(words[0][1:], "-", " ")
	}
	if err := p.save(*out, *force, func(w io.Writer) error { return document.Write(w, o) }); err != nil {
		return err
	}
	return p.tellGround(o)
}

type groundJSON struct {
	Name    string  `json:"name"`
	Width   mm      `json:"width_mm"`
	Columns int     `json:"columns"`
	Rows    int     `json:"rows"`
	StrainX rounded `json:"strain_x_pct"`
	StrainY rounded `json:"strain_y_pct"`
	Bent    rounded `json:"bent_pct"`
}

func groundDocument(r pattern.Recipe, l pattern.Laying) groundJSON {
	return groundJSON{
		r.Ground, mm(r.Width), l.Columns, l.Rows,
		rounded(100 * l.Stretch.X), rounded(100 * l.Stretch.Y), rounded(100 * l.Bent),
	}
}

// groundText tells how the tiles of a ground meet step and width.
func groundText(r pattern.Recipe, l pattern.Laying) string {
	text := fmt.Sprintf("%s, %d in the step", r.Ground, l.Rows)
	if r.Width > 0 {
		text += fmt.Sprintf(" and %d in %s", l.Columns, long(r.Width))
	}
	return text + fmt.Sprintf(": stretched by %+.2f %% across and %+.2f %% along, bent by %.2f %%",
		100*l.Stretch.X+0, 100*l.Stretch.Y+0, 100*math.Abs(l.Bent))
}

// tellGround says on standard error how the order's ground was laid, and warns
// where it is bent.
func (p program) tellGround(o document.Order) error {
	l, err := o.Ground.Laying(o.Sheet.Step)
	if err != nil {
		return err
	}
	fmt.Fprintf(p.err, "tsugime: %s; %.0f cut-outs per square kane sun\n", groundText(o.Ground, l), o.Unit.PerSquareSun())
	if math.Abs(l.Bent) > pattern.MostBent {
		fmt.Fprintf(p.err, "tsugime: that is more than %g %%; with --ease it is laid in the nearest size that meets both\n", 100*pattern.MostBent)
	}
	return nil
}

// recipeOf returns the recipe of a ground as its table has it, or the order's own
// where it is laid again.
func recipeOf(name string, own pattern.Recipe, again bool) (pattern.Recipe, error) {
	if again {
		return own, nil
	}
	g, ok := pattern.GroundNamed(name)
	if !ok {
		return pattern.Recipe{}, wrongUse("ground: there is no ground %q; 'tsugime ground --list' prints their names", name)
	}
	return g.Recipe(), nil
}

// withSettings returns a recipe with settings, KEY=VALUE each, and a seed where one was
// given.
func withSettings(r pattern.Recipe, set []string, seed string) (pattern.Recipe, error) {
	if seed != "" {
		n, err := strconv.ParseUint(seed, 10, 31)
		if err != nil {
			return r, wrongUse("--seed: %s is out of bounds; give a whole number from 0 to %d", seed, math.MaxInt32)
		}
		r.Seed = n
	}
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
