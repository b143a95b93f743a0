// Package terminal is the screen and the keyboard of a person: how wide lines
// are, what could steer it, tables, how far long work has come, and words that
// are typed unseen. The scripts of cmd/backleaf hold it (terminal.txtar).
package terminal

import (
	"backleaf/record/accept"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
	"unicode/utf8"

	"golang.org/x/term"
)

// Usual is that of a terminal that does not tell its own, and of the help.
const Usual = 80

// least is how narrow a column may get.
const least = 12

// Columns is the width at which lines for a person are broken: that of the
// terminal, or what $COLUMNS told. 0: they are left whole, since what is not a
// terminal is a file or a program that takes a line for a thing.
func Columns(w io.Writer, told string) int {
	if n, err := strconv.Atoi(told); err == nil && n > 2*least {
		return n
	}
	if o, ok := w.(interface{ Unwrap() io.Writer }); ok {
		w = o.Unwrap()
	}
	f, ok := w.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return 0
	}
	if n, _, err := term.GetSize(int(f.Fd())); err == nil && n > 2*least {
		return n
	}
	return Usual
}

// Wrap makes a text safe for a terminal, and breaks its lines at spaces, but no
// figure from its unit. What goes on is set in by two more than its line is, or
// so far that it stands below what was said first after a word and two spaces.
func Wrap(text string, width int) string {
	text = clean(text)
	if width == 0 {
		return ofPrint.Replace(text)
	}
	var out []string
	for line := range strings.SplitSeq(text, "\n") {
		inner := strings.TrimLeft(line, " ")
		hang := len(line) - len(inner) + 2
		if head, rest, ok := strings.Cut(inner, "  "); ok && len(line)-len(inner)+len(head) <= least {
			hang = utf8.RuneCountInString(line) - utf8.RuneCountInString(strings.TrimLeft(rest, " "))
		}
		out = append(out, Broken(line, width, hang)...)
	}
	return ofPrint.Replace(strings.Join(out, "\n"))
}

// Broken breaks one line; what goes on is set in by hang.
func Broken(line string, width, hang int) (out []string) {
	for utf8.RuneCountInString(line) > width {
		head, rest := breakAt(line, width, hang)
		if head == "" {
			break
		}
		out, line = append(out, head), strings.Repeat(" ", hang)+rest
	}
	return append(out, line)
}

// breakAt parts a line at the last space before a width that lies after its
// hang; empty: there is none, nor later.
func breakAt(line string, width, hang int) (head, rest string) {
	at, n := -1, 0
	for i, r := range line {
		if r == ' ' && n > hang && (n <= width || at < 0) && strings.TrimSpace(line[:i]) != "" {
			at = i
		}
		if n++; n > width && at > 0 {
			break
		}
	}
	if at < 0 {
		return "", line
	}
	return strings.TrimRight(line[:at], " "), strings.TrimLeft(line[at:], " ")
}

// ofPrint puts the keyboard's signs for those of print, so that what is shown
// can be found and typed again.
var ofPrint = strings.NewReplacer("\u00a0×\u00a0", " x ", "\u00a0", " ", "\u202f", " ", "\u2009", " ", "\u2044", "/", "\u2212", "-")

// clean shows what could steer a terminal as a code instead.
func clean(s string) string {
	if !strings.ContainsFunc(s, func(r rune) bool { return r != '\n' && (r < ' ' || r > '~') }) {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		if r != '\n' && accept.CheckLine(string(r)) != nil {
			fmt.Fprintf(&b, "<U+%04X>", r)
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}
