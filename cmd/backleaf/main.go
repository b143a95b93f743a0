// Command backleaf keeps the record of painting panels made by hand and
// prints what has to travel with them.
package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"
	"time"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	context.AfterFunc(ctx, stop) // a second signal ends the program at once
	a := &app{
		in: os.Stdin, out: os.Stdout, err: os.Stderr,
		env: os.Getenv, now: time.Now,
	}
	os.Exit(a.run(ctx, os.Args[1:]))
}
