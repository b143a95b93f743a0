package terminal

import (
	"cmp"
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
	Width int // 0: as wide as it comes
	lines [][]string
}

// Row adds a line of cells.
func (t *Table) Row(cells ...string) {
	for i, c := range cells {
		cells[i] = Clean(strings.ReplaceAll(c, "\n", " "))
	}
	t.lines = append(t.lines, cells)
}

// Pair adds a name and a value, unless there is none.
func (t *Table) Pair(name, value string) {
	if value != "" {
		t.Row(name, value)
	}
}

// Done prints the table.
func (t *Table) Done() error {
	_, err := io.WriteString(t.Out, t.Text())
	return err
}

// Empty reports whether there is no row yet.
func (t *Table) Empty() bool { return len(t.lines) == 0 }

// Text is the table without trailing spaces.
func (t *Table) Text() string {
	var buf strings.Builder
	widths := t.widths(t.Width)
	for _, row := range t.lines {
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
			fmt.Fprintln(&buf, strings.TrimRight(line.String(), " "))
		}
	}
	return buf.String()
}

// widths are those of the columns; the widest give way first.
func (t *Table) widths(most int) (out []int) {
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
