package main

import (
	"cmp"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"golang.org/x/term"
)

// usualWidth is that of a terminal that does not tell its own, and of the help.
const usualWidth = 80

// least is how narrow a column may get.
const least = 12

// columns is the width at which lines for a person are broken: that of the
// terminal, or what $COLUMNS says. 0: they are left whole, since what is not a
// terminal is a file or a program that takes a line for a thing.
func (a *app) columns(w io.Writer) int {
	if n, err := strconv.Atoi(a.env("COLUMNS")); err == nil && n > 2*least {
		return n
	}
	if o, ok := w.(*outlet); ok {
		w = o.Writer
	}
	f, ok := w.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return 0
	}
	if n, _, err := term.GetSize(int(f.Fd())); err == nil && n > 2*least {
		return n
	}
	return usualWidth
}

// wrap breaks the lines of a text at spaces. What goes on is set in by two more
// than its line is, or so far that it stands below what was said first after a
// word and two spaces.
func wrap(text string, width int) string {
	if width == 0 {
		return text
	}
	var out []string
	for line := range strings.SplitSeq(text, "\n") {
		inner := strings.TrimLeft(line, " ")
		hang := len(line) - len(inner) + 2
		if head, rest, ok := strings.Cut(inner, "  "); ok && len(line)-len(inner)+len(head) <= least {
			hang = utf8.RuneCountInString(line) - utf8.RuneCountInString(strings.TrimLeft(rest, " "))
		}
		out = append(out, broken(line, width, hang)...)
	}
	return strings.Join(out, "\n")
}

// broken breaks one line; what goes on is set in by hang.
func broken(line string, width, hang int) (out []string) {
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

// table aligns columns of text, and breaks the widest ones where a line would
// be wider than the terminal.
type table struct {
	a     *app
	lines [][]string
}

func (a *app) table() *table { return &table{a: a} }

// row adds a line of cells.
func (t *table) row(cells ...string) {
	for i, c := range cells {
		cells[i] = clean(strings.ReplaceAll(c, "\n", " "))
	}
	t.lines = append(t.lines, cells)
}

// pair adds a name and a value, unless there is none.
func (t *table) pair(name, value string) {
	if value != "" {
		t.row(name, value)
	}
}

// done prints the table.
func (t *table) done() error {
	_, err := io.WriteString(t.a.out, t.text(t.a.columns(t.a.out)))
	return err
}

// text is the table without trailing spaces, at most so wide.
func (t *table) text(width int) string {
	var buf strings.Builder
	widths := t.widths(width)
	for _, row := range t.lines {
		cells, most := make([][]string, len(row)), 0
		for i, c := range row {
			cells[i] = strings.Split(wrap(c, widths[i]), "\n")
			most = max(most, len(cells[i]))
		}
		for n := range most {
			var line strings.Builder
			for i := range row {
				cell := ""
				if n < len(cells[i]) {
					cell = cells[i][n]
				}
				line.WriteString(cell)
				if i < len(row)-1 {
					line.WriteString(strings.Repeat(" ", max(0, widths[i]-utf8.RuneCountInString(cell))+2))
				}
			}
			fmt.Fprintln(&buf, strings.TrimRight(line.String(), " "))
		}
	}
	return buf.String()
}

// widths are those of the columns; the widest give way first.
func (t *table) widths(most int) (out []int) {
	for _, row := range t.lines {
		for i, c := range row {
			if i == len(out) {
				out = append(out, 0)
			}
			out[i] = max(out[i], utf8.RuneCountInString(c))
		}
	}
	for all := sum(out); most > 0 && all > most; all-- {
		i := slices.Index(out, slices.MaxFunc(out, cmp.Compare))
		if out[i] <= least {
			break
		}
		out[i]--
	}
	return out
}

func sum(widths []int) (n int) {
	for _, w := range widths {
		n += w + 2
	}
	return n - 2
}
