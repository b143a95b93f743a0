package main

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"backleaf/record/tell"
)

// namedCommand is a command as a message or a help names it, in quotes or
// after a colon, up to where it ends.
var namedCommand = regexp.MustCompile("(?:[\"“`(]|: )backleaf((?: [^\\s\";,)”’`]+)+)")

// TestNamedCommandsExist reads every text of the catalogues, the help and the
// rooms below: a command that one of them names is there, and takes the flags
// that stand with it.
func TestNamedCommandsExist(t *testing.T) {
	a := &app{in: strings.NewReader(""), out: io.Discard, err: io.Discard, env: func(string) string { return "" }}
	root := newRoot(a)
	found := 0
	for place, text := range allTexts(t) {
		for _, m := range namedCommand.FindAllStringSubmatch(text, -1) {
			one, _, _ := strings.Cut(m[1], ". ")
			at, words := root, strings.Fields(strings.TrimSuffix(one, "."))
			if words[0] == "--book" && len(words) > 2 {
				words = words[2:]
			}
			if words[0] != strings.ToLower(words[0]) || strings.ContainsAny(words[0], "/%…{") {
				continue // "backleaf COMMAND"
			}
			for i, w := range words {
				flag, isFlag := strings.CutPrefix(w, "--")
				flag, _, _ = strings.Cut(flag, "=")
				sub, _, err := at.Find([]string{w})
				switch {
				case isFlag && flag != "help" && at.Flag(flag) == nil && root.Flag(flag) == nil:
					t.Errorf("%s: %q names --%s, which %q does not take", place, m[0], flag, at.CommandPath())
				case isFlag:
				case err == nil && sub != at:
					at = sub
				case i == 0 || at.HasSubCommands() && at.Args(at, []string{"nosuch"}) != nil:
					t.Errorf("%s: %q names a command that is not there", place, m[0])
				}
			}
			found++
		}
	}
	if found < 200 {
		t.Errorf("only %d commands are named", found)
	}
}

// allTexts are the string literals of what is said, and the help.
func allTexts(t *testing.T) map[string]string {
	t.Helper()
	out := map[string]string{}
	for _, glob := range []string{"*.go", "../../record/tell/*.go", "../../record/studio/*/*.go", "../internal/demo/*.go"} {
		files, err := filepath.Glob(glob)
		if err != nil || files == nil {
			t.Fatal(glob, err)
		}
		for _, file := range files {
			if strings.HasSuffix(file, "_test.go") {
				continue
			}
			fset := token.NewFileSet()
			f, err := parser.ParseFile(fset, file, nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			ast.Inspect(f, func(n ast.Node) bool {
				if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
					if s, err := strconv.Unquote(lit.Value); err == nil {
						out[fset.Position(lit.Pos()).String()] = s
					}
				}
				return true
			})
		}
	}
	for name, read := range allHelp() {
		h := read()
		out["help of "+name] = h.long
		for i, line := range strings.Split(strings.ReplaceAll(h.example, "\\\n", " "), "\n") {
			out["example of "+name+strconv.Itoa(i)] = ": " + strings.TrimSpace(line)
		}
	}
	return out
}

// TestHintsAreShort holds every hint to one shape: it begins with no capital,
// ends without a full stop, is read in three lines of a terminal, and has no word
// of a programmer's.
func TestHintsAreShort(t *testing.T) {
	jargon := regexp.MustCompile(`(?i)\b(argument|flag|invalid|parse|payload|checksum|stdin|stdout|EOF|byte|null|pointer|Merkle|base64|digest|regular file|UTF-?8|schema|token|enum|integer|exception|fatal|abort)s?\b`)
	for code, m := range tell.English().Hints {
		text := string(m)
		plain := regexp.MustCompile(`\{[a-z_]+(:[a-z]+)?\}`).ReplaceAllString(text, "KB26-0001-K")
		if n := utf8.RuneCountInString("hint: " + plain); n > 3*76 {
			t.Errorf("the hint of %q has %d characters", code, n)
		}
		if first, _ := utf8.DecodeRuneInString(text); first >= 'A' && first <= 'Z' || strings.HasSuffix(text, ".") {
			t.Errorf("the hint of %q has not the shape of one: %s", code, text)
		}
		if w := jargon.FindString(text); w != "" {
			t.Errorf("the hint of %q says %q", code, w)
		}
	}
}

// A word of the trade leads to what exists; none of them hides a command or a
// flag, and a command one level down is named whole.
func TestWordsOfTheTrade(t *testing.T) {
	a := &app{in: strings.NewReader(""), out: io.Discard, err: io.Discard, env: func(string) string { return "" }}
	root := newRoot(a)
	taken := func(flag string) (is bool) {
		for _, c := range a.tree {
			is = is || c.Flags().Lookup(flag) != nil
		}
		return is
	}
	root.InitDefaultVersionFlag()
	leads := map[string]string{}
	for word, to := range tell.English().Meant {
		if flag, is := strings.CutPrefix(word, "--"); is {
			if to = strings.TrimPrefix(to, "--"); !taken(to) || flag == to {
				t.Errorf("%s: there is no --%s", word, to)
			}
			continue
		}
		c, rest, _ := root.Find(strings.Fields(to)[1:])
		for _, w := range rest {
			if flag, is := strings.CutPrefix(w, "--"); c == root && !is || is && c.Flags().Lookup(flag) == nil {
				t.Errorf("%s: there is no %s", word, to)
			}
		}
		leads[word] = to
	}
	for _, c := range root.Commands() {
		if tell.English().Meant[c.Name()] != "" {
			t.Errorf("%s is a command", c.Name())
		}
		for _, below := range c.Commands() {
			if one, _, _ := root.Find([]string{below.Name()}); one == root && c.Name() != "completion" {
				leads[below.Name()] = below.CommandPath()
			}
		}
	}
	for _, far := range []string{"frobnicate", "xx", "banana", "retun0", "studio key last", "studio key los", "studio key retires", "handover forge", "head print"} {
		leads[far] = "" // of the last ones: no slip leads to what cannot be undone
	}
	for word, to := range map[string]string{"studio key list": "show", "maker show": "list", "recover": "studio key recover", "panel sell": "handover"} {
		leads[word] = to
	}
	for word, to := range leads {
		f, ok := errors.AsType[*failure](noSuchCommand(root, append(strings.Fields(word), "1")))
		if guessed := ok && strings.HasPrefix(f.hint, "did you mean "); !ok || guessed != (to != "") || !strings.Contains(f.hint, to) {
			t.Errorf("%s: %v, want %q", word, f, to)
		}
	}
}
