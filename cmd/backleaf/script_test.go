package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestMain lets scripts run the program as the command "backleaf". Only here
// can its clock be set: TEST_NOW is an RFC 3339 time.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"backleaf": func() {
		a := &app{in: os.Stdin, out: os.Stdout, err: os.Stderr, env: os.Getenv, now: time.Now}
		if s := os.Getenv("TEST_NOW"); s != "" {
			t, err := time.Parse(time.RFC3339, s)
			if err != nil {
				fmt.Fprintln(os.Stderr, "TEST_NOW:", err)
				os.Exit(99)
			}
			a.now = func() time.Time { return t }
		}
		ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt) // as main does
		context.AfterFunc(ctx, stop)
		defer stop()
		os.Exit(a.run(ctx, os.Args[1:]))
	}})
}

// TestScripts runs every script: what a painter would type, and what comes
// back. To read all that is said as it stands on a screen of 80 columns:
// BACKLEAF_COLUMNS=80 go test -v -run TestScripts ./cmd/backleaf.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		ContinueOnError:     os.Getenv("BACKLEAF_COLUMNS") != "", // what is broken into lines is not what a script expects
		Setup: func(e *testscript.Env) error {
			e.Setenv("TEST_NOW", "2026-05-02T16:00:00+03:00")
			e.Setenv("HOME", filepath.Join(e.WorkDir, "home"))
			e.Setenv("COLUMNS", os.Getenv("BACKLEAF_COLUMNS"))
			e.Setenv("GOGC", "400") // processes of a moment
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"exits": exits, "picture": picture},
	})
}

// exits runs a command and demands its exit code: exits 5 backleaf list.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE COMMAND…")
	}
	err := ts.Exec(args[1], args[2:]...)
	code := 0
	if err != nil {
		code = -1
		if x, ok := err.(interface{ ExitCode() int }); ok {
			code = x.ExitCode()
		}
	}
	if fmt.Sprint(code) != args[0] {
		ts.Fatalf("exit code %d, expected %s", code, args[0])
	}
}
