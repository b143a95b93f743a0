package check

import "backleaf/record"

var sizeBeforeOil = Rule{
	Name:     "size-before-oil",
	Title:    "Cloth is sized before oil ground or oil paint.",
	Reason:   "Oil that reaches the fibres makes them brittle and dark.",
	Source:   "Padfield, Stress, strain and craquelure 7",
	Severity: Warning,
	Judged:   "Between a cloth and the first oil above it there is a coat without oil, or the cloth came sized, or it was wetted through with an adhesive without oil.",
	Remedy:   "It cannot be undone. Say so in the record: a conservator will want to know.",
	Judge:    judgeSizeBeforeOil,
}

func judgeSizeBeforeOil(s *Subject) []Verdict {
	var vs []Verdict
	for _, face := range faces {
		films := s.on(face)
		for i, f := range films {
			if isCloth(f) {
				if v, ok := s.sized(films, i); ok {
					vs = append(vs, v)
				}
			}
		}
	}
	return orNone(vs, "no oil lies over cloth")
}

// sized judges the cloth at i; false if no oil lies over it.
func (s *Subject) sized(films []Film, i int) (Verdict, bool) {
	cloth := films[i]
	isolated, doubt := int64(0), []int64(nil) // doubt: layers that may be oil
	for _, f := range films[i+1:] {
		if isVarnish(f) || isCloth(f) {
			continue
		}
		switch oil := s.isOil(f); {
		case oil == record.No:
			if isCoat(f) && len(doubt) == 0 {
				isolated = f.Layer.Seq
			}
			continue
		case oil == record.Unknown:
			doubt = append(doubt, f.Layer.Seq)
			continue
		}
		at := []int64{cloth.Layer.Seq, f.Layer.Seq}
		m, _ := s.Workshop.Material(cloth.Layer.Cloth.Cloth)
		wet, sized := cloth.Layer.Cloth.WetThrough, m.Cloth.Sized
		adhesive := record.Answer(record.Unknown)
		if i > 0 && films[i-1].Layer.Seq == cloth.Layer.Seq {
			adhesive = s.isOil(films[i-1])
		}
		switch {
		case isolated != 0:
			return verdict(Holds, append(at, isolated), "a coat without oil lies between cloth and oil"), true
		case sized == record.Yes:
			return verdict(Holds, at, "the cloth came sized"), true
		case wet == record.Yes && adhesive == record.No:
			return verdict(Holds, at, "the cloth was wetted through with a film without oil"), true
		case len(doubt) > 0 || sized != record.No || wet != record.No && adhesive != record.Yes:
			return verdict(NotRecorded, append(at, doubt...), "whether the cloth was sized before the %s", name(f)), true
		}
		return verdict(FallsShort, at, "nothing lies between the cloth and the %s", name(f)), true
	}
	if len(doubt) > 0 {
		return verdict(NotRecorded, append(doubt, cloth.Layer.Seq), "whether there is oil over the cloth"), true
	}
	return Verdict{}, false
}
