package check

import (
	"slices"

	"backleaf/record"
)

var stainBlock = Rule{
	Name:     "stain-block",
	Title:    "A stain block lies under acrylic on wood, hardboard, linen or cotton.",
	Reason:   "Water from a drying acrylic film draws solubles out of the support and yellows the film, most in thick clear gels. A ground alone does not stop it.",
	Source:   "a paint maker's technical note on support-induced discolouration (two coats of gloss medium first); a panel maker's note (a ground alone is not enough)",
	Severity: Advice,
	Judged:   "Below the first acrylic ground or acrylic paint of a face lie two coats laid as a stain block, or of a material that is one.",
	Remedy:   "Before further acrylic layers lay two coats of a gloss medium and let each dry. A white ground shows yellowing first: compare it with a fresh sample.",
	Judge:    judgeStainBlock,
}

func judgeStainBlock(s *Subject) []Verdict {
	var vs []Verdict
	for _, face := range faces {
		if v, ok := s.blocked(face); ok {
			vs = append(vs, v)
		}
	}
	return orNone(vs, "no acrylic ground or paint is laid")
}

func (s *Subject) blocked(face record.Face) (Verdict, bool) {
	films := s.on(face)
	maybe := false
	first := slices.IndexFunc(films, func(f Film) bool {
		if !isGround(f) && !isPaint(f) {
			return false
		}
		a := s.isAcrylic(f)
		maybe = maybe || a == record.Unknown
		return a == record.Yes
	})
	if first < 0 {
		if maybe {
			return verdict(NotRecorded, nil, "whether ground and paint on the %s are acrylic", face), true
		}
		return Verdict{}, false
	}
	at := []int64{films[first].Layer.Seq}
	n, doubt := 0, []int64(nil)
	for _, f := range films[:first] {
		if isCloth(f) || isVarnish(f) {
			continue
		}
		ms, all := s.parts(f)
		block := f.Layer.Purpose == record.StainBlock || all && !slices.ContainsFunc(ms, func(m record.Material) bool {
			return !slices.Contains(m.Uses, record.UseStainBlock)
		})
		if block && len(doubt) == 0 {
			n++
			at = append(at, f.Layer.Seq)
		} else if isCoat(f) && (!purposeKnown(f) || !all) {
			doubt = append(doubt, f.Layer.Seq)
		}
	}
	stains, known := s.stains(films[:first])
	switch {
	case n >= 2:
		return verdict(Holds, at, "%s of stain block under the %s", count(n, "coat"), name(films[first])), true
	case !known:
		return verdict(NotRecorded, append(at, doubt...), "what the %s lies on", name(films[first])), true
	case !stains:
		return verdict(NotApplicable, at, "nothing below can stain"), true
	case len(doubt) > 0:
		return verdict(NotRecorded, append(at, doubt...), "whether the coats under the %s block stains", name(films[first])), true
	case n == 1:
		return verdict(FallsShort, at, "one coat of stain block under the %s; two are advised", name(films[first])), true
	}
	return verdict(FallsShort, at, "no stain block under the %s", name(films[first])), true
}

// stains reports whether board or cloth under a film can stain it, and whether
// that is known.
func (s *Subject) stains(below []Film) (stains, known bool) {
	kind := s.board().Kind
	known = kind != "" && kind != "other"
	stains = known && kind != record.AluminiumComp
	for _, f := range filter(below, isCloth) {
		m, _ := s.Workshop.Material(f.Layer.Cloth.Cloth)
		switch m.Cloth.Fibre {
		case "", record.Unknown, "other":
			known = known && stains
		case "polyester":
		default:
			stains = true
		}
	}
	return stains, known || stains
}
