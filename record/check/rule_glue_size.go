package check

import "backleaf/record"

var glueSize = Rule{
	Name: "glue-size",
	Source: "Padfield, Stress, strain and craquelure 7; Daly Hartin, Michalski and Hagan in Conserving Canvas, ch. 19; " +
		"MITRA, Adhesives and Sizes",
	Severity: Information,
	judge:    judgeGlue,
}

// judgeGlue asks of each face what seals it: glue alone keeps no damp out.
func judgeGlue(s *subject) []verdict {
	var vs []verdict
	for _, face := range record.Faces {
		coats := filter(s.on(face), func(f film) bool { return isCoat(f) && f.seals() != record.No })
		if len(coats) == 0 {
			continue
		}
		other := record.Answer(record.No)
		for _, f := range coats {
			bs, known := f.made.Binders()
			a := record.Answer(record.Unknown)
			switch {
			case len(bs) == 1 && known && bs[0] == record.AnimalGlue:
				a = record.No
			case known:
				a = record.Yes
			}
			other = some(other, all(f.seals(), a))
		}
		o := outcome(record.Yes, other)
		vs = append(vs, say(o, filmSeqs(coats...), "glue-alone"+map[Outcome]string{Holds: "-not", NotRecorded: "-open"}[o], record.With("face", face)))
	}
	return orNone(vs, "no-sealing-coat")
}
