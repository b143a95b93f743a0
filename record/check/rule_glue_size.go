package check

import "backleaf/record"

var glueSize = Rule{
	Name:     "glue-size",
	Title:    "No film of animal glue swings with the damp.",
	Reason:   "Glue takes up and gives off water with the air: it pulls hard when dry and lets go when damp.",
	Source:   "Padfield, Stress, strain and craquelure 7; Daly Hartin, Michalski and Hagan in Conserving Canvas, ch. 19",
	Severity: Information,
	Judged:   "Binders of all coats, paints and varnishes.",
	Remedy:   "Nothing is wrong with it. Keep the panel in steady air, below 65 % RH.",
	Judge:    judgeGlue,
}

func judgeGlue(s *Subject) []Verdict {
	var vs []Verdict
	for _, f := range filter(s.Films, isCoat) {
		at := []int64{f.Layer.Seq}
		switch s.has(f, record.AnimalGlue) {
		case record.Yes:
			vs = append(vs, verdict(FallsShort, at, "the %s is animal glue", name(f)))
		case record.No:
			vs = append(vs, verdict(Holds, at, "no animal glue"))
		default:
			vs = append(vs, verdict(NotRecorded, at, "the binder of the %s", name(f)))
		}
	}
	return orNone(vs, "no coat is laid yet")
}
