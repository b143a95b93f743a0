package trade

import "backleaf/record"

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
	add("humidity", []record.Percent{a.Dry, a.Damp}, !a.Dry.IsZero() && !a.Damp.IsZero())
	add("lux", a.Lux, a.Lux > 0)
	add("uv", a.UV, a.UV > 0)
	add("gap", a.Gap, !a.Gap.IsZero())
	add("temperature-change", a.TempDay, a.TempDay > 0)
	add("humidity-change", a.DampDay, a.DampDay > 0)
	return record.Say("care-"+a.Code, vs...)
}
