package main

import (
	"context"
	"fmt"
	"strings"
)

// A command is one word of the command line. The table of them feeds help,
// completion and the choice of what to run.
type command struct {
	name    string
	usage   string // what follows the name
	about   string // one line
	example string
	flags   []flagHelp
	run     func(ctx context.Context, p program, c command, args []string) error
}

// A flagHelp is one flag as help and completion show it.
type flagHelp struct {
	name, value, about string
}

var (
	jsonFlag   = flagHelp{"json", "", "print one JSON document (schema 1) instead of words"}
	forceFlag  = flagHelp{"force", "", "overwrite what is there"}
	outFlag    = flagHelp{"o", "FILE", "where to write; - for standard output"}
	failOnFlag = flagHelp{"fail-on", "SEVERITY", "exit 1 at findings of note, warning or fault and above, or never (default fault)"}
)

// commands lists every command in the order of the work.
func commands() []command {
	return []command{
		{"start", "KIND -o ORDER | --list", "begin a new order from a starter",
			"tsugime start small-dot -o coat.tsugime",
			[]flagHelp{outFlag, {"list", "", "print the names of the starters, one a line"}, forceFlag}, runStart},
		{"ground", "NAME -o ORDER | --again --in ORDER -o ORDER | --list [NAME]", "draw a traditional ground that meets the step",
			"tsugime ground hemp-leaf -o leaf.tsugime",
			[]flagHelp{
				{"list", "", "print the grounds, or what can be set on one"},
				{"set", "KEY=VALUE", "set one value, as often as needed"},
				{"seed", "N", "seed of what chance decides (default 1)"},
				{"step", "LENGTH", "the step to meet (default: the order's)"},
				{"width", "LENGTH", "a width to meet as well; seam for that between the back seams"},
				{"ease", "", "change the size of the ground a little, so that it meets both unbent"},
				{"in", "ORDER", "lay it in this order in the place of its unit"},
				{"again", "", "lay the ground of --in again, with what is set here changed"}, outFlag, forceFlag,
			}, runGround},
		{"bring", "FILE -o ORDER", "take the outlines of an SVG or DXF file as motifs, at their size",
			"tsugime bring leaf.svg --in coat.tsugime --size 18 -o leaf.tsugime",
			[]flagHelp{
				{"in", "ORDER", "add to this order (default: a new one)"},
				{"as", "WAY", "each (outline a motif), one (all as one motif) or shelf (default each)"},
				{"at", "X,Y", "where their middle comes to stand (default: as in the file)"},
				{"size", "LENGTH", "how wide they are together (default: as in the file)"},
				{"unit", "UNIT", "what a DXF file measures in, where it doesn't say or says it wrongly"},
				{"lines", "", "take strokes of an SVG file as lines to cut along, not as bands"},
				{"layer", "NAME", "take only this layer or named group, as often as needed"}, outFlag, forceFlag,
			}, runBring},
		{"check", "ORDER", "measure the order and say what needs a look",
			"tsugime check coat.tsugime --json",
			[]flagHelp{jsonFlag, failOnFlag, rackFlag}, runCheck},
		{"fit", "ORDER", "list ways to make the pattern meet step, width and seams, with the strain of each",
			"tsugime fit coat.tsugime --step \"6 kane sun\"",
			[]flagHelp{
				{"step", "LENGTH", "the step to fit to (default: the order's)"},
				{"width", "LENGTH", "a width to fit to as well; seam is the same as --seam"},
				{"seam", "", "fit to the distance between the back seams too, exactly"},
				{"apply", "N", "write the order with fit N of the list to -o"},
				{"snap", "", "with --apply: give every dot the size of the nearest punch of the rack"}, outFlag, forceFlag, jsonFlag,
			}, runFit},
		{"hold", "ORDER -o FILE", "place ties so that nothing falls out, or part the design into two sheets",
			"tsugime hold rings.tsugime --by split -o rings-two.tsugime",
			[]flagHelp{
				{"by", "WAY", "as-drawn, ties or split (default ties)"},
				{"width", "LENGTH", "of each tie (default: the order's)"},
				{"second", "CUT", "what the second sheet opens: tie-places or whole (default: the order's)"},
				{"lap", "LENGTH", "by which the second reaches over the first (default: the order's)"},
				outFlag, forceFlag,
			}, runHold},
		{"joint", "ORDER", "list joint lines: clearance against length",
			"tsugime joint coat.tsugime",
			[]flagHelp{jsonFlag}, runJoint},
		{"bolt", "ORDER", "lay the stencil along the bolt: placements, board, drift, what helps",
			"tsugime bolt coat.tsugime --csv",
			[]flagHelp{jsonFlag, {"csv", "", "print the placements as comma-separated values"},
				{"bolts", "N", "how many bolts are laid by chance (default 10000)"}, {"seed", "N", "seed of that chance (default 1)"}}, runBolt},
		{"garment", "ORDER | --list [KIND]", "lay the garment on the bolt: sizes, panels, seams, extra cloth",
			"tsugime garment coat.tsugime",
			[]flagHelp{{"list", "", "print the garments with what sizes each takes, or all of one"}, jsonFlag}, runGarment},
		{"bench", "ORDER", "plan the cutting: methods, tools, passes, pile, days",
			"tsugime bench coat.tsugime --rack rack.csv",
			[]flagHelp{rackFlag, jobsFlag, dayFlag, jsonFlag}, runBench},
		{"sheets", "ORDER -o FOLDER", "write the whole job folder at true scale",
			"tsugime sheets coat.tsugime -o job --paper A3",
			[]flagHelp{
				{"o", "FOLDER", "the folder to write into"},
				{"paper", "PAGE", "A4, A3, B4 or letter (default: the order's)"},
				{"units", "UNITS", "mm or sun (default: the order's)"},
				{"language", "LANGUAGE", "en or ja, English or Japanese (default: the order's)"},
				{"only", "NAMES", "write only these files, by name, with commas"},
				{"printed-across", "LENGTH", "what 100 mm along the paper's short edge measured when printed at 100 %: pages are corrected for it"},
				{"printed-along", "LENGTH", "the same along the paper's long edge"},
				{"marks", "HOW", "what is cut on the transfer: filled, outline or centres (default: the order's)"},
				{"mirrored", "", "draw the transfer for the back of the paper"},
				{"keep", "FILE", "write the order with these ways of printing"},
				rackFlag, jobsFlag, dayFlag, offsetFlag, overcutFlag,
				forceFlag, {"q", "", "say nothing while writing"},
			}, runSheets},
		{"picture", "ORDER --of WHAT -o FILE.png", "draw the unit, sheet, joint, bolt or garment, or the sheets of a split",
			"tsugime picture coat.tsugime --of joint -o joint.png",
			[]flagHelp{
				{"of", "WHAT", "unit, sheet, joint, bolt, garment; of a split sheet-second, set"},
				{"width", "PIXELS", "width of the picture (default 1600)"}, outFlag, forceFlag,
			}, runPicture},
		{"version", "", "print the version", "tsugime version", nil, runVersion},
		{"completion", "SHELL", "print completions for bash, zsh, fish or powershell",
			"tsugime completion bash > ~/.local/share/bash-completion/completions/tsugime", nil, runCompletion},
		{"help", "[COMMAND]", "explain a command", "tsugime help sheets", nil, runHelp},
	}
}

// moreHelp is what help tells of a command beside its flags.
var moreHelp = map[string]string{"bolt": boltKeys, "garment": garmentKeys}

func commandNamed(name string) (command, bool) {
	for _, c := range commands() {
		if c.name == name {
			return c, true
		}
	}
	return command{}, false
}

func shortHelp() string {
	var b strings.Builder
	b.WriteString("Tsugime measures repeat stencils before the first hole is cut.\n\n" +
		"    tsugime start small-dot -o coat.tsugime\n" +
		"    tsugime check coat.tsugime\n" +
		"    tsugime sheets coat.tsugime -o job\n\nCommands:\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "    %-11s %s\n", c.name, c.about)
	}
	b.WriteString("\n'tsugime help COMMAND' tells more.\n")
	return b.String()
}

// help is the full text on one command, its example first.
func (c command) help() string {
	var b strings.Builder
	fmt.Fprintf(&b, "tsugime %s: %s\n\n    %s\n\nUsage: tsugime %s\n", c.name, c.about, c.example,
		strings.TrimSpace(c.name+" "+c.usage))
	if len(c.flags) > 0 {
		b.WriteString("\nFlags:\n")
		for _, f := range c.flags {
			fmt.Fprintf(&b, "    %-20s %s\n", strings.TrimSpace(f.dashed()+" "+f.value), f.about)
		}
	}
	if more, ok := moreHelp[c.name]; ok {
		b.WriteString("\n" + more)
	}
	b.WriteString("\nORDER may be - for standard input. Lengths are in mm unless they say otherwise:\n" +
		"12, 1.2cm, 1/2 in, \"6 kane sun\", \"3 sun 5 bu\".\n" +
		"Exit: 0 fine, 1 findings at or above --fail-on, 2 wrong use, 3 can't read or write, 130 interrupted.\n")
	return b.String()
}

func (f flagHelp) dashed() string {
	if len(f.name) == 1 {
		return "-" + f.name
	}
	return "--" + f.name
}

func runHelp(_ context.Context, p program, _ command, args []string) error {
	if len(args) == 0 {
		fmt.Fprint(p.out, shortHelp())
		return nil
	}
	c, ok := commandNamed(args[0])
	if !ok {
		return wrongUse("help: there is no command %q%s", args[0], didYouMean(args[0]))
	}
	fmt.Fprint(p.out, c.help())
	return nil
}
