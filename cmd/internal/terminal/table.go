package terminal

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"
)

// Table aligns columns of text, and breaks the widest ones where a line would
// be wider than the terminal.
type Table struct {
	Out   io.Writer
	Width int      // 0: as wide as it comes
	lines []string // cells parted by a sign that none holds: a list of all panels stays small
	most  []int    // of each column
	word  []int    // the longest that cannot be broken, of each column
}

// Row adds a line of cells.
func (t *Table) Row(cells ...string) {
	for i, c := range cells {
		cells[i] = clean(strings.ReplaceAll(c, "\n", " "))
		if i == len(t.most) {
			t.most, t.word = append(t.most, 0), append(t.word, least)
		}
		if w := longest(cells[i]); i == 0 || i < len(cells)-1 || t.Width == 0 || 2*w <= t.Width { // else it stands below
			t.most[i], t.word[i] = max(t.most[i], utf8.RuneCountInString(cells[i])), max(t.word[i], w)
		}
	}
	t.lines = append(t.lines, strings.Join(cells, "\x00"))
}

// Pair adds a name and a value, unless there is none.
func (t *Table) Pair(name, value string) {
	if value != "" {
		t.Row(name, value)
	}
}

// Done prints the table.
func (t *Table) Done() error {
	buf := bufio.NewWriter(t.Out)
	t.write(buf)
	return buf.Flush()
}

// Empty reports whether there is no row yet.
func (t *Table) Empty() bool { return len(t.lines) == 0 }

// Text is the table without trailing spaces.
func (t *Table) Text() string {
	var buf strings.Builder
	t.write(&buf)
	return buf.String()
}

func (t *Table) write(to io.Writer) {
	widths := t.widths(t.Width)
	for _, l := range t.lines {
		row := strings.Split(l, "\x00")
		last, below := len(row)-1, ""
		if t.Width > 0 && last > 0 && longest(row[last]) > widths[last] {
			row, below = append(row[:last:last], ""), row[last]
		}
		cells, most := make([][]string, len(row)), 0
		for i, c := range row {
			cells[i] = strings.Split(Wrap(c, widths[i]), "\n")
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
			fmt.Fprintln(to, strings.TrimRight(line.String(), " "))
		}
		if below != "" {
			fmt.Fprintln(to, "  "+strings.ReplaceAll(Wrap(below, t.Width-2), "\n", "\n  "))
		}
	}
}

// longest is how long the longest word of a cell is.
func longest(cell string) (n int) {
	for w := range strings.SplitSeq(cell, " ") {
		n = max(n, utf8.RuneCountInString(w))
	}
	return n
}

// widths are those of the columns; the widest that can be broken give way first.
func (t *Table) widths(most int) (out []int) {
	out = slices.Clone(t.most)
	for all := sum(out); most > 0 && all > most; all-- {
		at := -1
		for i, w := range out {
			if w > t.word[i] && (at < 0 || w > out[at]) {
				at = i
			}
		}
		if at < 0 {
			break
		}
		out[at]--
	}
	return out
}

func sum(widths []int) (n int) {
	for _, w := range widths {
		n += w + 2
	}
	return n - 2
}
