package trade

import (
	"strings"

	"backleaf/record"
)

// pigmentRow is one line of the pigment tables: Colour Index generic names of
// one substance, and what is known of it. C.I. figures and light are general
// and mostly from memory: light says nothing of one paint in one binder.
type pigmentRow struct {
	index string // generic names, separated by commas; empty where none is assigned
	names string // English, German and French names that mean this substance, separated by |
	holds string // hazards it has
	some  string // hazards that some grades or ages of it have
	bound bool   // locked in a spinel or rutile lattice
	light string // general behaviour in light, and the worse one that some grades or tints show
	zinc  string // the form in which it holds zinc; ? after it: some grades do
	from  string // works
}

// Zinc is the form in which a pigment holds zinc. What is described of zinc in
// oil is described for the oxide.
type Zinc string

// Forms of zinc.
const (
	ZincOxide    Zinc = "oxide"
	ZincSulfide  Zinc = "sulfide"
	ZincChromate Zinc = "chromate"
	ZincBound    Zinc = "bound"
	ZincMetal    Zinc = "metal"
)

// zincForms lists them.
var zincForms = []Zinc{ZincOxide, ZincSulfide, ZincChromate, ZincBound, ZincMetal}[:5:5]

// Behaviour in light that is not excellent, good or fair. Changes means that it
// darkens, greys or turns.
const (
	lightPoor    = "poor"
	lightChanges = "changes"
)

func (r *pigmentRow) holding(h Hazard) record.Answer { return listed(string(h), r.holds, r.some) }

// grave answers whether it has a hazard that a label warns of.
func (r *pigmentRow) grave() record.Answer {
	out := record.No
	for _, h := range grave {
		if !r.bound {
			out = Some(out, r.holding(h))
		}
	}
	return out
}

// zincIn answers whether it holds zinc in one of some forms; in any where none
// is named.
func (r *pigmentRow) zincIn(forms ...Zinc) record.Answer {
	out := record.No
	if len(forms) == 0 {
		forms = append(zincForms, "some-form")
	}
	for _, z := range forms {
		out = Some(out, listed(string(z), r.zinc, strings.ReplaceAll(r.zinc, "?", " ")))
	}
	return out
}

// fugitive answers whether it fades in the light of a room.
func (r *pigmentRow) fugitive() record.Answer {
	light, worse, _ := strings.Cut(r.light, " ")
	switch {
	case light == lightPoor:
		return record.Yes
	case light == "", light == lightChanges, worse == lightPoor:
		return record.Unknown
	}
	return record.No
}

// listed is yes for a word of the first list, unknown for one of the second.
func listed(word, sure, some string) record.Answer {
	for w := range strings.FieldsSeq(sure) {
		if w == word {
			return record.Yes
		}
	}
	for w := range strings.FieldsSeq(some) {
		if w == word {
			return record.Unknown
		}
	}
	return record.No
}
