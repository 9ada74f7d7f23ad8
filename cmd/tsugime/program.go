package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"
)

// What the process exits with.
const (
	exitFine        = 0
	exitFindings    = 1   // done, with findings at or above --fail-on
	exitWrongUse    = 2   // the command line is wrong
	exitUnreadable  = 3   // something can't be read or written
	exitInterrupted = 130 // stopped by the user
)

// A program is the command line with its streams: results on out, messages on
// err.
type program struct {
	in       io.Reader
	out, err io.Writer
}

// A usageError is a command line that can't be followed.
type usageError struct{ text string }

func (e usageError) Error() string { return e.text }

func wrongUse(format string, args ...any) error { return usageError{fmt.Sprintf(format, args...)} }

// errFindings says that the command did its work and found what --fail-on asks
// to be told of.
var errFindings = errors.New("findings")

// run follows the arguments and returns what to exit with.
func (p program) run(ctx context.Context, args []string) int {
	if len(args) == 0 {
		fmt.Fprint(p.out, shortHelp())
		return exitFine
	}
	name, rest := args[0], args[1:]
	switch name {
	case "-h", "--help", "-help":
		name = "help"
	case "--version", "-version":
		name = "version"
	}
	c, ok := commandNamed(name)
	if !ok {
		return p.report(wrongUse("there is no command %q%s; 'tsugime help' lists them", name, didYouMean(name)))
	}
	return p.report(c.run(ctx, p, c, rest))
}

// report writes an error, if there is one, and returns what to exit with.
func (p program) report(err error) int {
	var usage usageError
	switch {
	case err == nil, errors.Is(err, flag.ErrHelp):
		return exitFine
	case errors.Is(err, errFindings):
		return exitFindings
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(p.err, "tsugime: stopped; nothing half-written was left")
		return exitInterrupted
	case errors.As(err, &usage):
		fmt.Fprintf(p.err, "tsugime: %v\n", err)
		return exitWrongUse
	}
	fmt.Fprintf(p.err, "tsugime: %v\n", err)
	return exitUnreadable
}

// parse reads a command's flags, which may stand before and after its other
// words, and returns those words: at least least and at most most.
func (p program) parse(c command, flags *flag.FlagSet, args []string, least, most int) ([]string, error) {
	flags.SetOutput(io.Discard)
	var words []string
	for {
		if err := flags.Parse(args); err != nil {
			if errors.Is(err, flag.ErrHelp) {
				fmt.Fprint(p.out, c.help())
				return nil, err
			}
			return nil, wrongUse("%s: %v; 'tsugime help %s' lists the flags", c.name, err, c.name)
		}
		args = flags.Args()
		if len(args) == 0 {
			break
		}
		words, args = append(words, args[0]), args[1:]
	}
	if len(words) < least || len(words) > most {
		return nil, wrongUse("%s: give %s; usage: tsugime %s %s", c.name, c.wants(least, most), c.name, c.usage)
	}
	return words, nil
}

// wants says how many words a command takes.
func (c command) wants(least, most int) string {
	switch {
	case least == most && most == 0:
		return "no more words"
	case least == most && most == 1:
		return "one word after the command"
	case least == most:
		return fmt.Sprintf("%d words after the command", least)
	}
	return fmt.Sprintf("%d to %d words after the command", least, most)
}

// didYouMean names the command that is nearest to a mistyped one.
func didYouMean(name string) string {
	best, least := "", 3
	for _, c := range commands() {
		if d := typos(name, c.name); d < least {
			best, least = c.name, d
		}
	}
	if best == "" {
		return ""
	}
	return fmt.Sprintf(" (did you mean %q?)", best)
}

// typos counts the letters to insert, drop or change to make b of a
// (Levenshtein distance).
func typos(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		before := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := before
			if a[i] != b[j] {
				cost++
			}
			before = row[j+1]
			row[j+1] = min(cost, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}

// oneOf checks a flag whose value must be one of a few.
func oneOf(flagName, value string, allowed ...string) error {
	if slices.Contains(allowed, value) {
		return nil
	}
	return wrongUse("--%s: %q is not one of %s", flagName, value, strings.Join(allowed, ", "))
}
