package check

import "backleaf/record"

var varnishRemovable = Rule{
	Name:     "varnish-removable",
	Source:   "MITRA, Surface coatings",
	Severity: Advice,
	judge:    judgeVarnishRemovable,
}

func judgeVarnishRemovable(s *subject) []verdict {
	var vs []verdict
	for _, f := range filter(s.all(), isVarnish) {
		_, known := f.materials()
		resin := f.Layer.Varnish.Resin
		named := record.Answer(record.Unknown)
		if known || resin != "" && resin != record.Unknown {
			named = record.Yes
		}
		removable := f.removable()
		o := outcome(record.Yes, all(removable, named))
		code := "varnish-removable" + suffix[o]
		if o == NotRecorded && removable == record.Yes {
			code = "varnish-name-open"
		}
		vs = append(vs, say(o, filmSeqs(f), code))
	}
	return orNone(vs, "no-varnish")
}
