package main

import (
	"context"
	"fmt"
	"runtime"
	"runtime/debug"
)

func runVersion(_ context.Context, p program, _ command, args []string) error {
	if len(args) > 0 {
		return wrongUse("version: takes no words")
	}
	version, revision := "(unknown)", ""
	if info, ok := debug.ReadBuildInfo(); ok {
		version = info.Main.Version
		for _, s := range info.Settings {
			switch {
			case s.Key == "vcs.revision":
				revision = " " + s.Value
			case s.Key == "vcs.modified" && s.Value == "true":
				revision += " (modified)"
			}
		}
	}
	_, err := fmt.Fprintf(p.out, "tsugime %s%s, %s %s/%s\n", version, revision, runtime.Version(), runtime.GOOS, runtime.GOARCH)
	return err
}
