package dossier

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"backleaf/record/paper"
)

const textColumns = 80

// Text writes the dossier as plain text of at most 80 columns. A drawing is
// told in words.
func (d *Document) Text() (string, error) {
	w := &textWriter{}
	w.line(d.Kind)
	w.line("")
	w.wrap(d.Title, "")
	w.wrap(d.By, "")
	w.line("")
	for _, l := range d.Lead {
		w.wrap(l, "")
	}
	for i, s := range append([]Section{d.Glance}, d.Sections...) {
		w.line("")
		head := fmt.Sprintf("%d  %s", i, plain(s.Title))
		if i == 0 {
			head = plain(s.Title)
		}
		w.line(head)
		w.line(strings.Repeat("-", utf8.RuneCountInString(head)))
		for k, item := range s.Items {
			if k > 0 && !(short(s.Items[k-1]) && short(item)) {
				w.line("")
			}
			if err := w.item(item); err != nil {
				return "", fmt.Errorf("cannot write the dossier: %w", err)
			}
		}
	}
	return w.b.String(), nil
}

// short reports a paragraph of one line: several of them are a list.
func short(i Item) bool {
	t, ok := i.(Text)
	return ok && !t.Small && !t.Strong && utf8.RuneCountInString(t.Text) <= textColumns
}

type textWriter struct{ b strings.Builder }

func (w *textWriter) line(s string) { w.b.WriteString(strings.TrimRight(s, " ") + "\n") }

// ordinary puts the signs of a keyboard in the place of those of print, so
// that text can be searched and shown anywhere.
var ordinary = strings.NewReplacer(paper.ThinSpace, " ", paper.NoBreakSpace, " ", "\u2044", "/", "\u2002", " ")

// plain makes text from outside harmless: one line, nothing that steers a
// terminal.
func plain(s string) string { return ordinary.Replace(paper.OneLine(s)) }

// wrapped breaks text at spaces; a longer word is broken where it must.
func wrapped(s string, width int) []string {
	var out []string
	for _, para := range strings.Split(paper.Clean(s), "\n") {
		line := ""
		for _, word := range strings.Fields(ordinary.Replace(para)) {
			for utf8.RuneCountInString(word) > width {
				if line != "" {
					out, line = append(out, line), ""
				}
				r := []rune(word)
				out, word = append(out, string(r[:width])), string(r[width:])
			}
			switch {
			case line == "":
				line = word
			case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) <= width:
				line += " " + word
			default:
				out, line = append(out, line), word
			}
		}
		out = append(out, line)
	}
	return out
}

func (w *textWriter) wrap(s, indent string) {
	for _, l := range wrapped(s, textColumns-len(indent)) {
		w.line(indent + l)
	}
}

func (w *textWriter) item(i Item) error {
	switch i := i.(type) {
	case Text:
		w.wrap(i.Text, "")
	case Pairs:
		for _, p := range i {
			w.columns([]int{24, textColumns - 26}, []string{p.Name, p.Value})
		}
	case Table:
		w.table(i)
	case Figure:
		w.wrap(i.Caption, "")
		all, err := i.Draw(163, 240)
		if err != nil {
			return err
		}
		for _, d := range all {
			w.wrap(d.Desc, "  ")
		}
	}
	return nil
}

func (w *textWriter) table(t Table) {
	total := 0.0
	for _, c := range t.Columns {
		total += c.Share
	}
	widths := make([]int, len(t.Columns))
	head := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		widths[i] = int(c.Share / total * float64(textColumns-2*(len(t.Columns)-1)))
		head[i] = c.Head
	}
	for i, h := range head { // whole words, at the cost of the widest
		for widths[i] < utf8.RuneCountInString(h) && !strings.Contains(h, " ") {
			widths[slices.Index(widths, slices.Max(widths))]--
			widths[i]++
		}
	}
	w.columns(widths, head)
	for i := range head {
		head[i] = strings.Repeat("-", widths[i])
	}
	w.columns(widths, head)
	for _, r := range t.Rows {
		w.columns(widths, r)
	}
}

// columns sets cells side by side.
func (w *textWriter) columns(widths []int, cells []string) {
	var cols [][]string
	rows := 0
	for i, c := range cells {
		cols = append(cols, wrapped(c, widths[i]))
		rows = max(rows, len(cols[i]))
	}
	for r := range rows {
		var b strings.Builder
		for i, c := range cols {
			text := ""
			if r < len(c) {
				text = c[r]
			}
			b.WriteString(text)
			if i+1 < len(cols) {
				b.WriteString(strings.Repeat(" ", widths[i]-utf8.RuneCountInString(text)+2))
			}
		}
		w.line(b.String())
	}
}
