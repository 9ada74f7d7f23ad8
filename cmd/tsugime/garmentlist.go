package main

import (
	"fmt"
	"strings"

	"tsugime/repeat/cloth"
)

// listGarments prints the forms or, of one, all that it asks for and allows.
func (p program) listGarments(words []string) error {
	var b strings.Builder
	for _, kind := range cloth.GarmentKinds() {
		f, err := cloth.FormOf(kind)
		if err != nil {
			return fmt.Errorf("form %s: %w", kind, err)
		}
		if len(words) == 0 {
			fmt.Fprintf(&b, "%-15s %s; takes %s\n", kind, f.Title, asked(f))
		} else if words[0] == string(kind) {
			return p.listForm(f)
		}
	}
	if len(words) > 0 {
		return wrongUse("garment: there is no garment %q; 'tsugime garment --list' prints their names", words[0])
	}
	_, err := fmt.Fprint(p.out, b.String())
	return err
}

// asked lists what a form asks for with its bounds.
func asked(f *cloth.Form) string {
	var all []string
	for _, a := range f.Asks {
		all = append(all, askKey(a)+" "+askRange(a))
	}
	return strings.Join(all, ", ")
}

// askKey is where an order gives what a form asks for.
func askKey(a cloth.Ask) string {
	switch {
	case a.Counted:
		return "counts." + a.Name
	case a.Name == "height":
		return "height_mm"
	}
	return "sizes_mm." + a.Name
}

func askRange(a cloth.Ask) string {
	if a.Counted {
		return fmt.Sprintf("%d to %d", a.Fewest, a.Many)
	}
	return fmt.Sprintf("%s to %s", a.Least, a.Most)
}

func (p program) listForm(f *cloth.Form) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n%s\n\nIt takes:\n", f.Name, f.Title, f.About)
	for _, a := range f.Asks {
		usual := a.Usual.String()
		if a.Counted {
			usual = fmt.Sprint(a.Common)
		}
		fmt.Fprintf(&b, "  %-22s %s, %s (usual %s)\n  %22s source: %s\n", askKey(a), a.Title, askRange(a), usual, "", a.Source)
	}
	b.WriteString("\nAllowances:\n")
	for _, a := range f.Allowances {
		fmt.Fprintf(&b, "  %-30s %s, %s\n  %30s source: %s\n", "allowances_mm."+a.Name, a.Title, a.Text(), "", a.Source)
	}
	_, err := fmt.Fprint(p.out, b.String())
	return err
}
