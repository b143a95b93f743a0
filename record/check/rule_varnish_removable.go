package check

import "backleaf/record"

var varnishRemovable = Rule{
	Name:     "varnish-removable",
	Title:    "The varnish can be removed, and is named.",
	Reason:   "Varnish yellows and gets dirty. Whoever takes it off needs to know what it is and what takes it off.",
	Source:   "MITRA, Surface coatings",
	Severity: Advice,
	Judged:   "For each varnish: that it is removable, as recorded with it or with its material, and that its resin or its material is named.",
	Remedy:   "Name the varnish and what dissolves it. Lay no further coat over one that cannot be removed.",
	Judge:    judgeVarnishRemovable,
}

func judgeVarnishRemovable(s *Subject) []Verdict {
	var vs []Verdict
	for _, f := range filter(s.Films, isVarnish) {
		at := []int64{f.Layer.Seq}
		ms, all := s.parts(f)
		removable := f.Layer.Varnish.Removable
		if removable == "" {
			removable = mixRemovable(ms, all)
		}
		named := f.Layer.Varnish.Resin != "" && f.Layer.Varnish.Resin != record.Unknown || all
		switch {
		case removable == record.No:
			vs = append(vs, verdict(FallsShort, at, "the %s cannot be removed", name(f)))
		case removable != record.Yes:
			vs = append(vs, verdict(NotRecorded, at, "whether the %s can be removed", name(f)))
		case !named:
			vs = append(vs, verdict(NotRecorded, at, "what the %s is", name(f)))
		default:
			vs = append(vs, verdict(Holds, at, "the %s is named and can be removed", name(f)))
		}
	}
	return orNone(vs, "there is no varnish")
}
