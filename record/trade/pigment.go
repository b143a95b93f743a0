package trade

import (
	"slices"
	"strings"

	"backleaf/record"
)

// A reading is what the tables know a pigment to be: its parts, each of which
// is one of several mixtures of rows.
type reading struct {
	parts []part
	named bool // from a name alone, which says yes and never no
	all   bool // nothing else can be in it
}

type part struct {
	maybe [][]*pigmentRow
	open  bool // it may be something else again
}

// read looks a pigment up: by its Colour Index names, those in the field for
// them or else those in its name, and by its name only where the tables know
// none of them.
func read(p record.Pigment) reading {
	found, rest := findIndexes(p.Index)
	if r := listedAs(found, len(spelled(rest)) == 0); len(r.parts) > 0 {
		return r
	}
	all := true
	for _, s := range parted(p.Name) {
		one, _ := findIndexes(s)
		all = all && len(one) > 0
	}
	found, _ = findIndexes(p.Name)
	if r := listedAs(found, all); len(r.parts) > 0 {
		return r
	}
	r := reading{named: true}
	for _, s := range parted(p.Name) {
		if words := spelled(s); !cancelled(words) {
			r.parts = append(r.parts, namedIn(words)...)
		}
	}
	return r
}

func listedAs(found []Index, all bool) reading {
	r := reading{all: all}
	for _, i := range found {
		if row, ok := byIndex()[i.base()]; ok {
			r.parts = append(r.parts, part{maybe: [][]*pigmentRow{{row}}})
		} else {
			r.all = false
		}
	}
	return r
}

// namedIn finds the longest names of the tables in the words of a name, then
// the metals that the words left over name outright.
func namedIn(words []string) []part {
	var out []part
	for len(words) > 0 {
		n := min(len(words), longestName())
		for ; n > 0; n-- {
			if p, ok := byName()[strings.Join(words[:n], " ")]; ok {
				out = append(out, p)
				break
			}
		}
		if n == 0 {
			if row := stemmed(words[0]); row != nil {
				out = append(out, part{maybe: [][]*pigmentRow{{row}}})
			}
		}
		words = words[max(n, 1):]
	}
	return out
}

// ask puts one question to a reading.
func (r reading) ask(q func(*pigmentRow) record.Answer) record.Answer {
	out := record.No
	for _, p := range r.parts {
		out = Some(out, p.ask(q))
	}
	if out == record.No && (r.named || !r.all || len(r.parts) == 0) {
		return record.Unknown
	}
	return out
}

func (p part) ask(q func(*pigmentRow) record.Answer) record.Answer {
	var as []record.Answer
	for _, mixture := range p.maybe {
		as = append(as, mixed(mixture, q))
	}
	if p.open {
		as = append(as, record.Unknown)
	}
	return agreed(as)
}

func mixed(rows []*pigmentRow, q func(*pigmentRow) record.Answer) record.Answer {
	out := record.No
	for _, r := range rows {
		out = Some(out, q(r))
	}
	return out
}

// possible reports that something in a reading speaks for yes.
func (r reading) possible(q func(*pigmentRow) record.Answer) bool {
	return slices.ContainsFunc(r.parts, func(p part) bool {
		return slices.ContainsFunc(p.maybe, func(m []*pigmentRow) bool { return mixed(m, q) != record.No })
	})
}

// Told reports that a pigment is given by Colour Index names that the tables
// know, all of it: only then can anything be ruled out.
func Told(p record.Pigment) bool { r := read(p); return !r.named && r.all }

// HazardsOf lists what a pigment holds, and what it may hold besides: in some
// grades, or as one of the things that its name stands for. Neither list says
// that there is nothing else; [Told] does.
func HazardsOf(p record.Pigment) (holds, may []Hazard) {
	r := read(p)
	for _, h := range Hazards {
		q := func(row *pigmentRow) record.Answer { return row.holding(h) }
		switch {
		case r.ask(q) == record.Yes:
			holds = append(holds, h)
		case r.possible(q):
			may = append(may, h)
		}
	}
	return holds, may
}

// HarmfulDust answers whether dust of a film with this pigment would harm: of
// lead, cadmium, mercury, arsenic, chromium VI, antimony or soluble barium that
// is not locked in a lattice.
func HarmfulDust(p record.Pigment) record.Answer { return read(p).ask((*pigmentRow).grave) }

// HoldsZinc answers whether a pigment holds zinc in one of some forms; in any
// form where none is named.
func HoldsZinc(p record.Pigment, forms ...Zinc) record.Answer {
	return read(p).ask(func(r *pigmentRow) record.Answer { return r.zincIn(forms...) })
}

// Fugitive answers whether a pigment fades in the light of a room. It is
// general knowledge and no rating of a paint.
func Fugitive(p record.Pigment) record.Answer { return read(p).ask((*pigmentRow).fugitive) }

// Among asks one question of several pigments: yes if one says so, no only if
// each of them does and there is at least one.
func Among(ps []record.Pigment, ask func(record.Pigment) record.Answer) record.Answer {
	if len(ps) == 0 {
		return record.Unknown
	}
	out := record.No
	for _, p := range ps {
		out = Some(out, ask(p))
	}
	return out
}
