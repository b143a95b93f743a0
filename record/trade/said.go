package trade

import (
	"maps"
	"slices"
	"strings"

	"backleaf/record"
)

// Said is an advice as a code with its figures: "care-" and its own code.
func (a Advice) Said() record.Said {
	var vs []record.Value
	add := func(name string, v any, told bool) {
		if told {
			vs = append(vs, record.With(name, v))
		}
	}
	add("cold", a.Cold, !a.Cold.IsZero())
	add("warm", a.Warm, !a.Warm.IsZero())
	add("dry", a.Dry, !a.Dry.IsZero())
	add("damp", a.Damp, !a.Damp.IsZero())
	add("lux", a.Lux, a.Lux > 0)
	add("uv", a.UV, a.UV > 0)
	add("gap", a.Gap, !a.Gap.IsZero())
	add("temperature-change", a.TempDay, a.TempDay > 0)
	add("humidity-change", a.DampDay, a.DampDay > 0)
	return record.Say("care-"+a.Code, vs...)
}

// AllAdvice lists every advice of the tables, for whoever has to know all the
// codes.
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
