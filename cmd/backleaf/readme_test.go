package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"backleaf/cmd/internal/demo"
)

var update = flag.Bool("update", false, "write the real output into README.md")

var clockMark = regexp.MustCompile(`^<!-- clock ([0-9]{4}-[0-9]{2}-[0-9]{2} [0-9]{2}:[0-9]{2}) -->$`)

// TestReadme runs every command of the README's walk and holds what it prints
// against what the README shows. A line "…" stands for any number of lines.
// The clock of the walk is set by comments in the page.
func TestReadme(t *testing.T) {
	page := filepath.Join("..", "..", "README.md")
	page, err := filepath.Abs(page)
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(page)
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	if err := demo.Pictures("."); err != nil {
		t.Fatal(err)
	}
	var out []string
	now := time.Now()
	lines := strings.Split(string(data), "\n")
	ran := 0
	for i := 0; i < len(lines); i++ {
		out = append(out, lines[i])
		if m := clockMark.FindStringSubmatch(lines[i]); m != nil {
			if now, err = time.ParseInLocation("2006-01-02 15:04", m[1], demo.Zone()); err != nil {
				t.Fatal(err)
			}
		}
		if lines[i] != "```console" {
			continue
		}
		for i++; lines[i] != "```"; {
			typed := lines[i]
			out = append(out, typed)
			for i++; strings.HasSuffix(typed, "\\"); i++ {
				out = append(out, lines[i])
				typed = strings.TrimSuffix(typed, "\\") + lines[i]
			}
			var want []string
			for ; !strings.HasPrefix(lines[i], "$ ") && lines[i] != "```"; i++ {
				want = append(want, lines[i])
			}
			got := typeCommand(t, now, strings.TrimPrefix(typed, "$ backleaf "))
			ran++
			switch {
			case matches(want, got):
				out = append(out, want...)
			case *update:
				out = append(out, got...)
			default:
				t.Errorf("%s\nprints\n%s\nthe README shows\n%s", typed, strings.Join(got, "\n"), strings.Join(want, "\n"))
				out = append(out, want...)
			}
		}
		out = append(out, lines[i])
	}
	if ran < 10 {
		t.Errorf("only %d commands found in the README", ran)
	}
	if *update {
		if err := os.WriteFile(page, []byte(strings.Join(out, "\n")), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func typeCommand(t *testing.T, now time.Time, typed string) []string {
	var said bytes.Buffer
	a := &app{in: strings.NewReader(""), out: &said, err: &said, env: func(string) string { return "" }, now: func() time.Time { return now }}
	a.run(t.Context(), splitWords(typed))
	text := strings.TrimRight(said.String(), "\n")
	if text == "" {
		return nil
	}
	return strings.Split(text, "\n")
}

// splitWords splits a line as a shell does, with double quotes only.
func splitWords(s string) []string {
	var words []string
	var b strings.Builder
	quoted, any := false, false
	for _, r := range s {
		switch {
		case r == '"':
			quoted, any = !quoted, true
		case r == ' ' && !quoted:
			if any {
				words = append(words, b.String())
			}
			b.Reset()
			any = false
		default:
			b.WriteRune(r)
			any = true
		}
	}
	if any {
		words = append(words, b.String())
	}
	return words
}

// matches compares lines; "…" in want stands for any number of lines.
func matches(want, got []string) bool {
	if len(want) == 0 {
		return len(got) == 0
	}
	if want[0] == "…" {
		for i := range len(got) + 1 {
			if matches(want[1:], got[i:]) {
				return true
			}
		}
		return false
	}
	return len(got) > 0 && want[0] == got[0] && matches(want[1:], got[1:])
}
