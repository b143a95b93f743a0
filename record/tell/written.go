package tell

import (
	"slices"
	"strconv"
	"strings"

	"backleaf/record"
)

// EntrySpan names entries that follow one another: "E3", "E3 to E7".
func (c *Catalogue) EntrySpan(es []record.Entry) string {
	first, last := record.EntryRef(es[0].Seq), record.EntryRef(0)
	if len(es) > 1 {
		last = record.EntryRef(es[len(es)-1].Seq)
	}
	return Say(c, record.Say("entries", record.With("first", first), record.With("last", last)))
}

// A line for each entry is said of at most so many.
const mostLines = 12

// Written says what was written: a line for each entry about panels, and how it
// is taken back.
func (c *Catalogue) Written(es []record.Entry) (out []string) {
	if len(es) == 0 {
		return nil
	}
	first := es[0]
	lines := [][]record.Entry{es}
	if len(first.Panels) > 0 && len(es) <= mostLines {
		lines = slices.Collect(slices.Chunk(es, 1))
	}
	for _, line := range lines {
		var what []string
		for _, e := range line {
			k := e.Kind() // what is new of a studio, and the figures of a material and a recipe follow, or are those of the starter shelf
			what = append(what, c.eventWith(record.Event{Seq: e.Seq, At: e.At, Written: e.Written, Body: e.Body, Panels: e.Panels, Makers: e.Makers}, k != "material" && k != "recipe" && k != "studio"))
		}
		out = append(out, Say(c, record.Say("written", Told("entries", c.EntrySpan(line)), record.With("at", line[0].At),
			record.With("panels", panels(line)), Told("what", c.Clauses(what)))))
	}
	switch k := first.Kind(); {
	case k == "cut":
		out = append(out, Say(c, record.Say("take-back-panels", record.With("panels", panels(es)))))
	case k == "studio" || k.Traits().NotTaken != "":
	default:
		out = append(out, Say(c, c.TakeBack(es)))
	}
	return out
}

// TakeBack says how entries that follow one another are taken back.
func (c *Catalogue) TakeBack(es []record.Entry) record.Said {
	more := ""
	if len(es) > 1 {
		more = c.EntrySpan(es[1:])
	}
	return record.Say("take-back", record.With("number", strconv.FormatInt(es[0].Seq, 10)), Told("more", more))
}

// panels are those that entries are about.
func panels(es []record.Entry) (ns []record.Number) {
	for _, e := range es {
		ns = append(ns, e.Panels...)
	}
	slices.Sort(ns)
	return slices.Compact(ns)
}

// typedAgain names panels as they could be typed: those that follow one another
// as a run, and of these at most so many.
func typedAgain(ns []string, most int) string {
	var runs [][]string
	for _, n := range ns {
		if last := len(runs) - 1; last >= 0 && follows(runs[last][len(runs[last])-1], n) {
			runs[last] = append(runs[last], n)
		} else {
			runs = append(runs, []string{n})
		}
	}
	var out []string
	for _, r := range runs {
		switch {
		case len(out) == most:
			return strings.Join(append(out, "…"), " ")
		case len(r) > 2:
			out = append(out, r[0]+".."+r[len(r)-1])
		default:
			out = append(out, r...)
		}
	}
	return strings.Join(out, " ")
}

func follows(a, b string) bool {
	m, n := record.Number(a), record.Number(b)
	return n.Serial() == m.Serial()+1 && n.Year() == m.Year()
}
