package main

import (
	"cmp"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var writeNotices = flag.Bool("notices", false, "write notices.txt anew")

var isNotice = regexp.MustCompile(`(?i)^(licen[cs]e|copying|notice|patents|authors)`)

// The notices are those of the modules that the program is linked with, of
// their versions in go.mod, and of the faces in them.
func TestNotices(t *testing.T) {
	readme, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	_, licence, ok := strings.Cut(string(readme), "\n## Licence\n")
	if !ok {
		t.Fatal("the README has no licence")
	}
	want := "backleaf\n\n" + strings.TrimSpace(licence) + "\n"
	args := []string{"list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}} {{.Dir}}{{end}}{{end}}", "."}
	lines := map[string]bool{}
	for _, system := range []string{"linux", "windows", "darwin"} {
		c := exec.Command("go", args...)
		c.Env = append(os.Environ(), "GOOS="+system, "CGO_ENABLED=0")
		out, err := c.Output()
		if err != nil {
			t.Fatal(err)
		}
		for l := range strings.Lines(string(out)) {
			lines[strings.TrimSpace(l)] = true
		}
	}
	// The standard library is linked too; its licence is that of golang.org/x/sys, where it stands in full.
	modules := []string{}
	for l := range lines {
		if l != "" {
			modules = append(modules, l)
		}
	}
	slices.SortFunc(modules, func(a, b string) int { return cmp.Compare(a, b) })
	for _, l := range modules {
		f := strings.SplitN(l, " ", 3)
		found := 0
		entries, err := os.ReadDir(f[2])
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			if !isNotice.MatchString(e.Name()) || e.IsDir() {
				continue
			}
			data, err := os.ReadFile(filepath.Join(f[2], e.Name()))
			if err != nil {
				t.Fatal(err)
			}
			found++
			want += "\n" + strings.Repeat("-", 72) + "\n" + f[0] + " " + f[1] + ", " + e.Name() + "\n\n" + strings.TrimSpace(strings.ReplaceAll(string(data), "\r\n", "\n")) + "\n"
		}
		if found == 0 {
			t.Errorf("%s has no licence", f[0])
		}
	}
	if *writeNotices {
		if err := os.WriteFile("notices.txt", []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
	} else if notices != want {
		t.Error("notices.txt is not what the program is linked with: go test -run TestNotices -notices ./cmd/backleaf")
	}
	for _, face := range []string{"Bitstream Vera", "SIL OPEN FONT LICENSE"} {
		if !strings.Contains(want, face) {
			t.Errorf("there is no notice of %s", face)
		}
	}
}
