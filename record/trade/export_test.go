package trade

import (
	"maps"
	"slices"
	"strings"

	"backleaf/record"
)

// Holds answers whether a pigment holds a hazard.
func Holds(p record.Pigment, h Hazard) record.Answer {
	return read(p).ask(func(r *pigmentRow) record.Answer { return r.holding(h) })
}

// Has reports that a layer may be of a stratum.
func (ss Strata) Has(s Stratum) bool { return slices.Contains(ss, s) }

// AllAdvice lists every advice of the tables.
func AllAdvice() []Advice {
	var out []Advice
	for _, r := range advices {
		out = append(out, r.advice())
	}
	return out
}

// AllCodes lists every other code that the tables can say: hazards, risks,
// strata, verdicts, conditions, cautions, reasons and cures.
func AllCodes() []record.Code {
	all := map[record.Code]bool{}
	words := func(list string) {
		for s := range strings.FieldsSeq(list) {
			all[record.Code(s)] = true
		}
	}
	for _, r := range pairs() {
		words(r.when)
		words(r.heed)
		words(r.why)
		words(r.cure)
		words(string(r.verdict))
	}
	for _, h := range Hazards {
		words(string(h))
	}
	for _, s := range AllStrata {
		words(string(s))
	}
	for _, r := range []Risk{Stated, OilyRags, Solvents, WoodDust, Formaldehyde} {
		words(string(r))
	}
	return slices.Sorted(maps.Keys(all))
}

// AllStrata are all of them, in no order that means anything but a fixed one.
var AllStrata = append(strataOf("AG AM AP AV PV OG OP AK ET EO CA GS GG GD GU WX SH NR AR HC KR PU EP WD MD HB AL LI CO LO LA"), OtherStratum)
