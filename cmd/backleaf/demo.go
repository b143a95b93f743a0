package main

import (
	"bytes"
	"context"
	"fmt"
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
	var said bytes.Buffer
	var now time.Time
	d := &app{
		in: strings.NewReader(""), out: &said, err: &said,
		env:    func(string) string { return "" },
		now:    func() time.Time { return now },
		random: &demo.Salts{},
	}
	bookPath := filepath.Join(dir, "studio.sqlite")
	err := demo.Play(dir, func(s demo.Step, at time.Time) error {
		now = at
		if !quietly {
			a.say("%s  backleaf %s", s.At, s)
		}
		said.Reset()
		if code := d.run(ctx, append([]string{"--book", bookPath}, s.Args...)); code != exitDone && !(s.Args[0] == "check" && code == exitFinding) {
			return fmt.Errorf("the demonstration stopped at backleaf %s: %s", s, strings.TrimSpace(said.String()))
		}
		return ctx.Err()
	})
	if err != nil {
		return err
	}
	if !quietly {
		a.say("")
	}
	a.told("demo-made", record.With("file", bookPath), record.With("folder", filepath.Clean(dir)))
	return nil
}
