// Command tsugime measures an order for a repeat stencil and writes its sheets,
// without a window.
package main

import (
	"context"
	"os"
	"os/signal"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	// The first interrupt cancels; after it the default is back, so that a second
	// one kills.
	context.AfterFunc(ctx, stop)
	os.Exit(program{in: os.Stdin, out: os.Stdout, err: os.Stderr}.run(ctx, os.Args[1:]))
}
