package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"backleaf/cmd/internal/demo"
	"backleaf/record"
)

func newDemo(a *app) {
	var quietly bool
	a.command("demo", flags{"quiet": &quietly}, func(r *run) error { return a.demo(r.ctx, r.args[0], quietly) })
}

func (a *app) demo(ctx context.Context, dir string, quietly bool) error {
	if old, err := os.ReadDir(dir); err == nil && len(old) > 0 {
		return hinted(fmt.Errorf("%s is not empty", dir), "name a folder that is not there yet")
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("cannot make the folder: %w", err)
	}
	var said bytes.Buffer
	now := time.Time{}
	d := &app{
		in: strings.NewReader(""), out: &said, err: &said,
		env:    func(string) string { return "" },
		now:    func() time.Time { return now },
		random: &demo.Salts{},
	}
	bookPath := filepath.Join(dir, "studio.sqlite")
	if err := demo.Pictures(dir); err != nil {
		return err
	}
	for _, s := range demo.Story(dir) {
		t, err := time.ParseInLocation("2006-01-02 15:04", s.At, demo.Zone)
		if err != nil {
			return err
		}
		now = t
		if !quietly {
			a.say("%s  backleaf %s", s.At, shellWords(s.Args))
		}
		said.Reset()
		if code := d.run(ctx, append([]string{"--book", bookPath}, s.Args...)); code != exitDone && !(s.Args[0] == "check" && code == exitFinding) {
			return errors.New("the demonstration stopped at backleaf " + shellWords(s.Args) + ": " + strings.TrimSpace(said.String()))
		}
		if ctx.Err() != nil {
			return ctx.Err()
		}
	}
	if !quietly {
		a.say("")
	}
	a.told("demo-made", record.With("file", bookPath), record.With("folder", filepath.Clean(dir)))
	return nil
}

// shellWords writes words so that they can be pasted into a shell.
func shellWords(args []string) string {
	var out []string
	for _, s := range args {
		if s == "" || strings.ContainsAny(s, " \"'%$&|<>()*;") {
			s = `"` + strings.NewReplacer(`"`, `\"`, "$", `\$`).Replace(s) + `"`
		}
		out = append(out, s)
	}
	return strings.Join(out, " ")
}
