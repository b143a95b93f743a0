package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"backleaf/record/toolcheck"
)

// older programs, as changes of the source of this one: what each does not
// know yet, or does otherwise.
var older = map[string]map[string][][2]string{
	// One kind, one field, one word, one unit fewer: what holds them is newer to it.
	"knows less": {
		"record/kinds.go":       {{`"feature":               kindOf`, `"feature-none":          kindOf`}},
		"record/work.go":        {{`func (Feature) Kind() Kind    { return "feature" }`, `func (Feature) Kind() Kind    { return "feature-none" }`}},
		"record/life.go":        {{`json:"edition,omitzero"`, `json:"edition_none,omitzero"`}},
		"record/words.go":       {{`"sanding", "water", `, `"sanding", `}},
		"record/units.go":       {{`{"mil", 254, 10, []string{"mils"}, 0}`, `{"mil-none", 254, 10, nil, 0}`}},
		"record/book/lookup.go": {{`const lookupForm = "`, `const lookupForm = "of-fewer-fields-`}},
	},
	// One rule and one index fewer, acceptance so strict that it refuses every
	// kind, messages worded otherwise: nothing is newer to it.
	"does otherwise": {
		"record/check/rules.go":   {{`(?m)^\t[a-zA-Z]+,\n`, ``}},
		"schema/lookup.sql":       {{`CREATE INDEX panel_year ON panel (year, serial);`, ``}},
		"record/accept/shape.go":  {{`MaxLine = 300`, `MaxLine = 12`}},
		"record/accept/value.go":  {{`case e.Body == nil:`, `case e.Kind() != "":`}, {`"missing"`, `"not there"`}},
		"record/deed/read.go":     {{`not a record that holds together`, `no record that holds`}},
		"record/tell/english.go":  {{`"Untitled"`, `"Without a title"`}},
		"record/accept/refers.go": {{`there is no panel`, `no such panel`}},
		"record/book/lookup.go":   {{`const lookupVersion = 4`, `const lookupVersion = 2`}},
	},
}

// TestOlderPrograms lets older programs read the book, the papers and the
// deposit that this one made: they verify every signature, say "newer" where
// it is, print and issue nothing there, and never speak of damage.
func TestOlderPrograms(t *testing.T) {
	toolcheck.Long(t)    // two programs are built for it
	all, v1 := frozen(t) // it holds most kinds
	dir := t.TempDir()
	t.Chdir(dir)
	for _, args := range [][]string{
		{"studio", "new", "--maker", "Ilze Paraugs", "--mark", "DM", "--zone", "UTC", "--demonstration"},
		{"studio", "key", "new", "--demonstration"},
		{"material", "starter", "acrylic-sealer", "birch-ply-3mm"},
		{"panel", "add", "--count", "2", "--batch", "may", "--size", "8 x 10 x 1/8 in", "--board", "birch-ply-3mm"},
		{"coat", "batch:may", "--with", "acrylic-sealer", "--as", "sealer", "--on", "all", "--amount", "40 g"},
		{"paint", "batch:may", "--medium", "oil"},
		{"panel", "describe", "batch:may", "--title", "A title of more than twelve characters"},
		{"certificate", "1", "-o", "sound.pdf"},
	} {
		says(t, exitDone, "", args...)
	}
	entries := `{"backleaf":"entries","v":1,"entries":[
		{"kind":"feature","what":"knot","face":"back","panels":["DM26-0002-P"]},
		{"kind":"described","edition":"2 of 3","panels":["DM26-0002-P"]},
		{"kind":"coat","faces":["back"],"wet_film":"4 mil","panels":["DM26-0002-P"]},
		{"kind":"removed","what":"paint","extent":"reduced","means":["water"],"panels":["DM26-0002-P"]}]}`
	list, _ := typedAt(time.Date(2027, 1, 1, 12, 0, 0, 0, time.UTC), "list")
	number, sound := regexp.MustCompile(`DM[0-9]{2}-0002-.`).FindString(list), regexp.MustCompile(`DM[0-9]{2}-0001-.`).FindString(list)
	if err := os.WriteFile("later.json", []byte(strings.ReplaceAll(entries, "DM26-0002-P", number)), 0o666); err != nil {
		t.Fatal(err)
	}
	says(t, exitDone, "", "import", "later.json")
	says(t, exitDone, "", "certificate", "2", "-o", "later.pdf")
	says(t, exitDone, "", "deposit", "deposit")
	for name, changes := range older {
		t.Run(name, func(t *testing.T) {
			program := buildOlder(t, changes)
			less := name == "knows less"
			for _, c := range []struct {
				newer bool // to a program that knows less
				args  []string
			}{
				{true, []string{"verify"}}, {false, []string{"verify", "sound.pdf"}}, {true, []string{"verify", "later.pdf"}}, {true, []string{"verify", "deposit"}},
				{false, []string{"verify", "deposit/data/panels/" + sound}}, {true, []string{"verify", "deposit/data/panels/" + number}},
				{false, []string{"show", "1"}}, {true, []string{"show", "2"}}, {false, []string{"list"}}, {false, []string{"find", "twelve"}},
				{false, []string{"label", "1", "-o", name + "1.pdf"}}, {true, []string{"label", "2", "-o", name + "2.pdf"}},
				{true, []string{"dossier", "2", "--text"}}, {true, []string{"ask", "2", "size"}}, {true, []string{"certificate", "2", "-o", name + "3.pdf"}},
				{false, []string{"backup", name + ".sqlite"}},
				{false, []string{"verify", "--book", v1}}, {false, []string{"show", "1", "--book", v1}},
				{false, []string{"verify", all + "/record", "--book", v1}}, {false, []string{"verify", all + "/deposit", "--book", v1}}, {false, []string{"ask", all + "/record/record.json", "size", "--book", v1}},
			} {
				out, err := exec.Command(program, append(c.args, "--clock-is-right")...).CombinedOutput() // what it reads was written in 2027
				code := 0
				if x, ok := err.(*exec.ExitError); ok {
					code = x.ExitCode()
				} else if err != nil {
					t.Fatal(err)
				}
				said := string(out)
				if code != exitDone && code != exitNewer {
					t.Errorf("%v: exit code %d\n%s", c.args, code, said)
				}
				// Look-up tables of a newer program are never written to.
				writes := !less && len(c.args) == 4 && c.args[2] == "-o"
				if newer := strings.Contains(said, "newer"); newer != (c.newer && less || writes) {
					t.Errorf("%v says \"newer\": %v\n%s", c.args, newer, said)
				}
				if strings.Contains(said, "does not hold:") {
					t.Errorf("%v speaks of damage\n%s", c.args, said)
				}
			}
			again := name + "-again.pdf"
			if out, err := exec.Command(program, "certificate", "1", "-o", again, "--as-issued").CombinedOutput(); err != nil || !bytes.Equal(must(os.ReadFile(again)), must(os.ReadFile("sound.pdf"))) {
				t.Errorf("the certificate is not handed out as it was issued: %v\n%s", err, out)
			}
			says(t, exitDone, "the book holds", "verify")
		})
	}
}

// sourceDir is the top of this source, whatever folder a test goes to.
var sourceDir = func() string {
	wd, err := os.Getwd()
	if err != nil {
		panic(err)
	}
	return filepath.Join(wd, "..", "..")
}()

// buildOlder builds the program with some of its source changed.
func buildOlder(t *testing.T, changes map[string][][2]string) string {
	t.Helper()
	root, dir := sourceDir, t.TempDir()
	overlay := struct{ Replace map[string]string }{map[string]string{}}
	for file, subs := range changes {
		data, err := os.ReadFile(filepath.Join(root, file))
		if err != nil {
			t.Fatal(err)
		}
		text := string(data)
		for _, s := range subs {
			pattern := s[0]
			if !strings.HasPrefix(pattern, "(?m)") {
				pattern = regexp.QuoteMeta(pattern)
			}
			loc := regexp.MustCompile(pattern).FindStringIndex(text)
			if loc == nil {
				t.Fatalf("%s has no %q any more", file, s[0])
			}
			text = text[:loc[0]] + s[1] + text[loc[1]:]
		}
		to := filepath.Join(dir, fmt.Sprintf("%d", len(overlay.Replace))+filepath.Ext(file))
		if err := os.WriteFile(to, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
		overlay.Replace[filepath.Join(root, file)] = to
	}
	list := filepath.Join(dir, "overlay.json")
	data, err := json.Marshal(overlay)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(list, data, 0o666); err != nil {
		t.Fatal(err)
	}
	program := filepath.Join(dir, "older")
	cmd := exec.Command("go", "build", "-overlay", list, "-o", program, "./cmd/backleaf")
	cmd.Dir = root
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return program
}
