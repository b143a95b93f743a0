package main

import (
	"backleaf/cmd/internal/terminal"
	"io"
	"maps"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// reads names the commands that read the book, which all take --json.
var reads = []string{"studio show", "studio key show", "material list", "material show", "lot list", "lot trace", "panel list", "panel show",
	"show", "list", "journal", "check", "due", "cost", "find", "ask", "verify", "handover show"}

// allHelp is the help of all commands and of the program.
func allHelp() map[string]func() *help {
	all := maps.Clone(helps())
	all["backleaf"] = ofProgram()["backleaf"]
	return all
}

// TestHelpIsWhole holds the help files to the commands: each section is of a
// command, each flag of it is there, and what must be given has a question.
func TestHelpIsWhole(t *testing.T) {
	a := &app{in: strings.NewReader(""), out: io.Discard, err: io.Discard, env: func(string) string { return "" }}
	root := newRoot(a)
	hidden := 0
	a.tree["backleaf"] = root
	for name, read := range allHelp() {
		h := read()
		c, ok := a.tree[name]
		if !ok {
			t.Errorf("the help of %q is of no command", name)
			continue
		}
		for n := range 5 { // however many words are typed
			least, most := h.takes()
			if err := c.ValidateArgs(make([]string, n)); name != "backleaf" && c.Runnable() && !c.HasSubCommands() && (err == nil) != (n >= least && (most < 0 || n <= most)) {
				t.Errorf("%s with %d words: %v", name, n, err)
			}
		}
		for _, names := range []map[string]string{h.flags, h.missing} {
			for f, words := range names {
				if c.Flag(f) == nil {
					t.Errorf("%s: the help tells of --%s, which it does not take", name, f)
				}
				if words == "" {
					hidden++
				}
			}
		}
		c.LocalFlags().VisitAll(func(f *pflag.Flag) {
			if _, own := h.flags[f.Name]; !own && f.Usage == "" {
				t.Errorf("%s: no word of help for --%s", name, f.Name)
			}
		})
	}
	if hidden != 4 { // two of the demonstration, two that a change of the studio refuses with its reason
		t.Errorf("%d flags are not shown", hidden)
	}
}

// TestHelp holds every command to what the help promises: a group, a short
// line, two real examples that begin with its name, and --json where it reads.
func TestHelp(t *testing.T) {
	a := &app{in: strings.NewReader(""), out: io.Discard, err: io.Discard, env: func(string) string { return "" }}
	root := newRoot(a)
	seen := map[string]bool{}
	var look func(c *cobra.Command)
	look = func(c *cobra.Command) {
		name := strings.TrimSpace(strings.TrimPrefix(c.CommandPath(), "backleaf"))
		for _, sub := range c.Commands() {
			look(sub)
		}
		for line := range strings.Lines(c.UsageString()) {
			if n := utf8.RuneCountInString(strings.TrimRight(line, "\n")); n > terminal.Usual {
				t.Errorf("%q: %d columns: %s", name, n, line)
			}
		}
		if name == "" || name == "help" || strings.HasPrefix(name, "completion") {
			return
		}
		seen[name] = true
		if c.Parent() == root && c.GroupID == "" {
			t.Errorf("%s stands in no group of the help", name)
		}
		for line := range strings.Lines(c.Short + "\n" + c.Long + "\n" + c.UsageString()) {
			if n := utf8.RuneCountInString(strings.TrimSpace(line)) + len(line) - len(strings.TrimLeft(line, " ")); n > terminal.Usual {
				t.Errorf("%s: %d columns: %s", name, n, line)
			}
		}
		if c.Short == "" || strings.HasSuffix(c.Short, ".") || len(c.Short) > 85 {
			t.Errorf("%s: short line %q", name, c.Short)
		}
		if c.HasSubCommands() && c.Example == "" {
			return
		}
		examples := 0
		for _, l := range strings.Split(c.Example, "\n") {
			if l = strings.TrimSpace(l); strings.Contains(l, "backleaf") {
				examples++
				if !strings.Contains(l, name) {
					t.Errorf("%s: the example %q is of another command", name, l)
				}
			}
		}
		if examples < 2 {
			t.Errorf("%s has %d examples, not two", name, examples)
		}
	}
	look(root)
	for _, name := range reads {
		c, _, err := root.Find(strings.Fields(name))
		if err != nil || !seen[name] {
			t.Errorf("there is no command %q", name)
			continue
		}
		if c.Flags().Lookup("json") == nil {
			t.Errorf("%s reads, and has no --json", name)
		}
	}
}
