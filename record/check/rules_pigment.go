package check

import (
	"cmp"

	"backleaf/record"
	"backleaf/record/trade"
)

var zincInOil = Rule{
	Name:     "zinc-in-oil",
	Source:   "MITRA, answer QID 688",
	Severity: Advice,
	judge:    judgeZinc,
}

// judgeZinc asks for zinc oxide; zinc bound otherwise is no fault that is known.
func judgeZinc(s *subject) []verdict {
	var vs []verdict
	for _, f := range s.all() {
		oil := all(some(is(isPaint(f)), isGround(f)), isOil(f))
		if oil == record.No {
			continue
		}
		zinc := trade.Among(f.made.Pigments(), func(p record.Pigment) record.Answer { return trade.HoldsZinc(p, trade.ZincOxide) })
		if zinc == record.No && !f.made.Told() {
			zinc = record.Unknown
		}
		o := outcome(oil, not(zinc))
		code := "no-zinc" + suffix[o]
		if o == NotRecorded && f.made.Told() && oil == record.Yes {
			code = "zinc-form-open"
		}
		vs = append(vs, say(o, filmSeqs(f), code, what(f)))
	}
	return orNone(vs, "no-oil-layer")
}

var toxicLayers = Rule{
	Name:     "toxic-layers",
	Source:   "Colour Index names (tables of record/trade, source by source); OSHA limits for lead (50 µg/m³); habits: common practice",
	Severity: Warning,
	judge:    judgeToxic,
}

func judgeToxic(s *subject) []verdict {
	vs := make([]verdict, 0, len(s.films))
	for _, f := range s.all() {
		if !isCloth(f) {
			vs = append(vs, toxic(f))
		}
	}
	return orNone(vs, "no-layer")
}

func toxic(f film) verdict {
	d := f.dangers()
	v := say(outcome(record.Yes, not(d.Harmful)), filmSeqs(f), "harmless", what(f))
	v.said.Code += suffix[v.outcome]
	for _, x := range d.Found {
		if x.Grave && x.Pigment != (record.Pigment{}) && x.Sure == (d.Harmful == record.Yes) && v.outcome != Holds {
			code := map[Outcome]string{FallsShort: "holds-hazard", NotRecorded: "hazard-open"}[v.outcome]
			v.said = record.Say(code, what(f), record.With("hazard", record.Code(x.Risk)), record.With("pigment", cmp.Or(x.Pigment.Name, x.Pigment.Index)))
			break
		}
	}
	return v
}
