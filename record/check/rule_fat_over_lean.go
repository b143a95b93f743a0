package check

import "backleaf/record"

var fatOverLean = Rule{
	Name:     "fat-over-lean",
	Title:    "Each oil layer is at least as fat as the one below it, and none dries faster.",
	Reason:   "A film that hardens over one that still moves cracks.",
	Source:   "MITRA, thread on oil over acrylic ground; common practice",
	Severity: Advice,
	Judged:   "By the oil content recorded against the layer below, for every oil layer over another; alkyd over oil counts as faster over slower.",
	Remedy:   "Nothing can be undone. Leave a long time before varnish and keep the record: it explains cracks that may come.",
	Judge:    judgeFatOverLean,
}

func judgeFatOverLean(s *Subject) []Verdict {
	var vs []Verdict
	for _, face := range faces {
		paints := filter(s.on(face), func(f Film) bool { return isPaint(f) && s.isOil(f) != record.No })
		for i := 1; i < len(paints); i++ {
			below, f := paints[i-1], paints[i]
			at := filmSeqs([]Film{f, below})
			switch oil := f.Layer.Paint.Oil; {
			case oil == "lean":
				vs = append(vs, verdict(FallsShort, at, "the %s is leaner than what lies below", name(f)))
			case s.isOil(f) == record.Unknown || s.isOil(below) == record.Unknown:
				vs = append(vs, verdict(NotRecorded, at, "whether the %s and the one below are oil", name(f)))
			case s.binder(f) == record.Alkyd && s.binder(below) == record.DryingOil:
				vs = append(vs, verdict(FallsShort, at, "the %s is alkyd over oil: it dries faster than what lies below", name(f)))
			case oil == "fat" || oil == "same":
				vs = append(vs, verdict(Holds, at, "the %s is no leaner than what lies below", name(f)))
			default:
				vs = append(vs, verdict(NotRecorded, at, "whether the %s is fatter than what lies below", name(f)))
			}
		}
	}
	return orNone(vs, "there are no two oil layers")
}
