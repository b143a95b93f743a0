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

	"github.com/spf13/cobra"

	"backleaf/cmd/internal/demo"
	"backleaf/record"
)

func newDemo(a *app) *cobra.Command {
	var quietly bool
	c := &cobra.Command{
		Use: "demo DIR", Short: "build an invented studio in a folder: book, labels, certificate",
		Long: `Build an invented studio in a new folder: two batches of panels worked over several
days with the usual mishaps, one panel finished and sold, and the pages of three. The clock is fixed: two
runs give the same papers, byte for byte. Its papers are signed with a key that is
public, and say so.`,
		Example: `  backleaf demo panels-demo
  backleaf demo /tmp/panels-demo --quiet`,
		Args: wanted(1, 1, "one folder, which must not be there yet or be empty"),
		RunE: func(c *cobra.Command, args []string) error { return a.demo(c.Context(), args[0], quietly) },
	}
	c.Flags().BoolVar(&quietly, "quiet", false, "do not print the commands as they run")
	return c
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
	a.say("%s", bookPath)
	a.told("demo-book")
	a.say("%s", filepath.Join(dir, "labels.pdf"))
	a.told("demo-labels")
	a.say("%s", filepath.Join(dir, "certificate.pdf"))
	a.told("demo-certificate")
	a.say("%s", filepath.Join(dir, "site"))
	a.told("demo-site")
	a.told("demo-look", record.With("file", bookPath))
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
