package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"backleaf/record/deed"
	"backleaf/record/toolcheck"
)

// demoDir builds the demonstration.
func demoDir(t *testing.T) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "demo")
	a := &app{in: strings.NewReader(""), out: io.Discard, err: io.Discard, env: func(string) string { return "" }, now: time.Now}
	if code := a.run(context.Background(), []string{"demo", dir, "--quiet"}); code != exitDone {
		t.Fatalf("the demonstration ends with %d", code)
	}
	return dir
}

var recipe = regexp.MustCompile("(?ms)^```sh\n(.*?)^```$")

// recipes are the shell recipes by which a stranger checks a certificate.
func recipes(t *testing.T) []string {
	t.Helper()
	data, err := os.ReadFile("testdata/recipes.md")
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, m := range recipe.FindAllStringSubmatch(string(data), -1) {
		out = append(out, m[1])
	}
	if len(out) != 7 {
		t.Fatalf("%d recipes", len(out))
	}
	return out
}

func shell(dir, script string) error {
	c := exec.Command("sh", "-e", "-c", script)
	c.Dir = dir
	if out, err := c.CombinedOutput(); err != nil {
		return fmt.Errorf("%w: %s", err, out)
	}
	return nil
}

// The recipes find the demonstration's certificate good, and find every file
// of it in which one byte was changed. The photograph is the page rasterised
// as a camera or an office scanner sees it.
func TestRecipes(t *testing.T) {
	toolcheck.Require(t, "sh", "pdfdetach", "pdftoppm", "zbarimg", "openssl", "sha256sum", "base64", "sed", "python3")
	dir := demoDir(t)
	if err := shell(dir, "pdftoppm -r 200 -gray -png -singlefile certificate.pdf photo"); err != nil {
		t.Fatal(err)
	}
	const record, paper, fits, head, proof = 1, 3, 4, 5, 6
	all := recipes(t)
	for i, script := range all {
		if err := shell(dir, script); err != nil {
			t.Errorf("recipe %d:\n%s%v", i, script, err)
		}
	}
	for _, tt := range []struct {
		file    string
		recipes []int  // of which each must refuse the file
		after   string // where changes begin
		step    int
	}{
		{deed.RecordName, []int{record, fits}, "", 1997},
		{deed.SignatureName, []int{record}, "", 13},
		{deed.KeyName, []int{record, fits, head}, "MCowBQYDK2VwAyEA", 9},
		{deed.HeadName, []int{head}, "", 11}, // its name, size and root
		{deed.ProofName, []int{proof}, `{"leaf":"`, 1499},
		{"statement.body", []int{fits}, "record: ", 12},
	} {
		path := filepath.Join(dir, tt.file)
		good, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		from := bytes.Index(good, []byte(tt.after)) + len(tt.after)
		for i := from; i < len(good) && i < from+tt.step*5; i += tt.step {
			bad := bytes.Clone(good)
			bad[i] ^= 1
			if err := os.WriteFile(path, bad, 0o600); err != nil {
				t.Fatal(err)
			}
			for _, r := range tt.recipes {
				if shell(dir, all[r]) == nil {
					t.Errorf("recipe %d takes %s with byte %d changed (%q for %q)", r, tt.file, i, bad[i], good[i])
				}
			}
		}
		if err := os.WriteFile(path, good, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	// A statement that says something else than was signed.
	symbols, err := os.ReadFile(filepath.Join(dir, "symbols.txt"))
	if err != nil {
		t.Fatal(err)
	}
	_, rest, _ := strings.Cut(all[paper], "\n")
	for _, change := range [][2]string{{"title: L", "title: l"}, {"made: 2", "made: 1"}, {"record: ", "record:  "}} {
		bad := strings.Replace(string(symbols), change[0], change[1], 1)
		if bad == string(symbols) {
			t.Errorf("nothing to change: %q", change[0])
		}
		if err := os.WriteFile(filepath.Join(dir, "symbols.txt"), []byte(bad), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := shell(dir, rest); err == nil {
			t.Errorf("a statement with %q for %q passes", change[1], change[0])
		}
	}
}
