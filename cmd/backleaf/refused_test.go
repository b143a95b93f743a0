package main

import (
	"bytes"
	"context"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/record/book"
	"backleaf/record/pattern"
	"backleaf/record/sheet"
	"backleaf/record/studio/exchange"
	"backleaf/record/toolcheck"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// wordOf is what stands for a word in the use of a command, in the book of the test.
var wordOf = map[string]string{"NUMBERS…": "1", "[NUMBERS…]": "1", "[FILE]…": "mark.png", "[FILE]": "mark.png", "NUMBER": "1", "PANEL|FILE": "1", "WORDS…": "varnish", "ENTRY": "9", "KEY": "birch", "LOT…": "sealer-1", "MATERIAL": "sealer",
	"FILE": "mark.png", "DIR": "folder", "OLD": "mark.png", "TEXT": "dust"}

// givenTo are the flags that a command is given in the test, beside those it needs.
var givenTo = map[string][]string{"amend": {"--set", "at=2026-05-01"}, "coat": {"--with", "sealer-1", "--on", "front"}, "bare": {"--on", "front"}, "climate": {"--temp", "20 °C"},
	"inspect": {"--edges", "sound"}, "panel add": {"2 of 20x25 cm"}, "panel resize": {"--to", "18 x 20 cm"}, "plan": {"2 of 20x25 cm", "--board", "birch", "--sheet", "1 x 1 m"}, "sand": {"--grit", "P180"},
	"panel describe": {"--title", "Low water"}, "find": {"linen"}, "material add": {"--use", "ground"}, "treat": {"--text", "dust"}, "condition": {"--text", "dust"},
	"label": {"--sheet-label", "60 x 30 mm", "--sheet-rows", "2", "--sheet-columns", "2"}, "restore": {"--to", "new.sqlite"}, "remove": {"--extent", "whole", "--not-on-record"}}

// needs are values of flags that must be given.
var needs = map[string]string{"because": "x", "by": "A. Invented, conservator", "how": "sale", "cloth": "yes", "what": "dent", "kerf": "3 mm", "output": "new.pdf", "name": "N", "recipe": "usual", "as": "usual"}

// mistyped are values that some flag or word cannot take: no unit, none of its
// kind, no word of a list, less than nothing, no day.
var mistyped = []string{"x", "3", "-3", "3 kg", "ä=y", "batch:no", "2031", "yesterday 25:00", ""}

// nothings are words that a shell leaves empty; no command may break over them.
var nothings = [][]string{{""}, {"", ""}, {"28", ""}, {"E1", ""}, {"1", "", "x"}}

// What a refusal must not hold: a path in an entry, a library's own words.
var (
	innerPath = pattern.Of(`^[a-z_]+(/[a-z0-9]+)*: |[a-z]/[a-z0-9]+: |[a-z]_[a-z]`)
	thing     = pattern.Of(`^(E[0-9]+|[A-Z]{2}26-[0-9]{4}-.)`) // which an error may begin with
	foreign   = pattern.Of(`strconv|jsontext|invalid|syntax|flag needs|^open |^stat |\bparse|EOF|\bsql\b|<nil>|%!`)
)

// TestAsTyped types into every flag and every word of every command what it
// cannot take. Each refusal names what was typed, no path of an entry, in words
// of this program, in lower case, with one hint. Of a flag that several commands
// share one is tried: three values where all is run, else one value of every other flag.
func TestAsTyped(t *testing.T) {
	t.Chdir(t.TempDir())
	now := time.Date(2026, 5, 2, 13, 0, 0, 0, time.UTC)
	do := func(ctx context.Context, args ...string) (said string, code int) {
		var errs bytes.Buffer
		a := &app{in: strings.NewReader(""), out: &bytes.Buffer{}, err: &errs, env: func(string) string { return "" }, now: func() time.Time { return now }}
		code = a.run(ctx, args)
		return errs.String(), code
	}
	ready := [][]string{{"studio", "new", "--maker", "Anna", "--mark", "KB", "--units", "cm"}, {"material", "starter", "birch-ply-3mm", "acrylic-sealer"},
		{"material", "add", "birch", "--like", "birch-ply-3mm"}, {"material", "add", "sealer", "--like", "acrylic-sealer"}, {"lot", "add", "sealer-1", "sealer"},
		{"panel", "add", "4 of 20x25 cm", "--board", "birch"}, {"coat", "1", "--with", "sealer-1", "--on", "front"}, {"recipe", "from", "1", "--as", "usual"}}
	for _, l := range ready {
		if said, code := do(t.Context(), l...); code != exitDone {
			t.Fatalf("%q: %s", l, said)
		}
	}
	there, _ := os.ReadDir(".")
	try := func(args ...string) (said string, code int) {
		said, code = do(book.Trial(t.Context()), args...)
		for _, f := range files(t) {
			if !slices.ContainsFunc(there, func(d os.DirEntry) bool { return strings.HasPrefix(f, d.Name()) }) {
				os.RemoveAll(f)
			}
		}
		return said, code
	}
	tries, seen := 0, map[string]bool{}
	refuses := func(what, value string, plain, args []string) {
		tries++
		said, code := try(args...)
		why := unlike(said, what, value)
		if code == exitDone || code == exitFinding || why == "" {
			return
		}
		if other, _ := try(plain...); other != said { // else it is not refused for that
			t.Errorf("backleaf %q: %s\n%s", args, why, said)
		}
	}
	some := func(of string) []string { // of what is typed wrong, all or one
		first := !seen[of]
		seen[of] = true
		switch {
		case first && toolcheck.Thorough():
			return slices.Concat(mistyped, mistyped)[len(seen)%len(mistyped):][:3]
		case first && len(seen)%2 == 0:
			return mistyped[len(seen)/2%len(mistyped):][:1]
		}
		return nil
	}
	var walk func(*cobra.Command)
	walk = func(c *cobra.Command) {
		for _, sub := range c.Commands() {
			walk(sub)
		}
		name := strings.TrimPrefix(c.CommandPath(), "backleaf ")
		if helps()[name] == nil || c.HasSubCommands() || name == "bench" || name == "demo" {
			return
		}
		for _, words := range nothings {
			if said, code := try(append(strings.Fields(name), words...)...); said == "" && (code == exitUsage || code == exitError) {
				t.Errorf("backleaf %s %q is refused without a word", name, words)
			}
		}
		args, first := asAsked(c, name)
		for _, v := range some(c.Use[strings.LastIndex(c.Use, " ")+1:] + args[0]) {
			if first > 0 {
				refuses("", v, args, slices.Concat(args[:first], []string{v}, args[first+1:]))
			}
		}
		c.Flags().VisitAll(func(f *pflag.Flag) {
			if f.Hidden {
				return
			}
			for _, v := range some(f.Name + f.Usage) {
				rest := slices.Clone(args)
				if i := slices.Index(rest, "--"+f.Name); i > 0 {
					rest = slices.Delete(rest, i, min(i+2, len(rest)))
				}
				refuses("--"+f.Name, v, args, append(rest, "--"+f.Name+"="+v))
			}
		})
	}
	walk(newRoot(&app{env: func(string) string { return "" }, out: &bytes.Buffer{}}))
	t.Logf("%d lines were typed", tries)
}

func files(t *testing.T) (names []string) {
	fs, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range fs {
		names = append(names, f.Name())
	}
	return names
}

// asAsked is a line by which a command could be asked, and where its words begin.
func asAsked(c *cobra.Command, name string) (args []string, first int) {
	args = strings.Fields(name)
	for _, w := range strings.Fields(c.Use)[1:] {
		if v := wordOf[w]; v != "" {
			if first == 0 {
				first = len(args)
			}
			args = append(args, v)
		}
	}
	for _, n := range slices.Sorted(maps.Keys(helps()[name]().missing)) {
		args = append(args, "--"+n, needs[n])
	}
	return append(args, givenTo[name]...), first
}

// unlike says what is wrong with a refusal of what was typed.
func unlike(said, what, value string) string {
	var err string
	hints := 0
	for l := range strings.Lines(said) {
		if e, ok := strings.CutPrefix(l, "backleaf: "); ok {
			err = e
		}
		if strings.HasPrefix(l, "hint: ") && len(l) > 10 {
			hints++
		}
	}
	named := value == "" || strings.HasPrefix(what, "--sheet-") && strings.Contains(err, "--sheet-") || what != "" && strings.Contains(err, what)
	rest := err
	for _, w := range append(strings.FieldsFunc(value, func(r rune) bool { return strings.ContainsRune(" =:-", r) }), value) {
		if w != "" && strings.Contains(strings.ToLower(said), strings.ToLower(w)) {
			named, rest = true, strings.ReplaceAll(rest, w, "")
		}
	}
	switch {
	case !named:
		return "what was typed is not named"
	case !strings.HasPrefix(err, "--") && innerPath().MatchString(err) && !strings.Contains(err, value+": "):
		return "a path of an entry"
	case foreign().MatchString(rest):
		return "the words of a library"
	case hints != 1:
		return fmt.Sprint(hints, " hints")
	case strings.ToLower(err[:1]) != err[:1] && !thing().MatchString(err):
		return "a capital"
	}
	return ""
}

// Three hundred cells wrong in two ways are two lines.
func TestRefusedByKind(t *testing.T) {
	x := &exchange.Sheet{}
	for i := range 300 {
		x.Refused = append(x.Refused, sheet.Refusal{Line: i + 2, Column: "Year", Value: "98", Why: "not a date"}, sheet.Refusal{Line: i + 2, Column: "Support", Value: "ply", Why: `no material "ply"`})
	}
	var out bytes.Buffer
	(&app{err: &out, env: func(string) string { return "" }}).sayRefused(x, sheetFlags{file: "a.csv"})
	want := "a.csv, line 2, Year, \"98\": not a date (and 299 more like it)\na.csv, line 2, Support, \"ply\": no material \"ply\" (and 299 more like it)\n"
	if out.String() != want {
		t.Errorf("%s", out.String())
	}
}
