package check

import (
	"slices"

	"backleaf/record"
)

var expiredLot = Rule{
	Name:     "expired-lot",
	Title:    "No lot was used after its date.",
	Reason:   "An old dispersion may have frozen, spoiled or thickened; its film can stay weak or smell.",
	Source:   "common practice",
	Severity: Advice,
	Judged:   "For each lot of each layer: the date of use against the expiry recorded with the lot.",
	Remedy:   "Test the tin on glass: a clear, even, tough film is sound. Note the result; watch the panels made with it.",
	Judge:    judgeExpired,
}

func judgeExpired(s *Subject) []Verdict {
	var vs []Verdict
	for _, f := range s.Films {
		if isCloth(f) {
			continue
		}
		at := []int64{f.Layer.Seq}
		if len(f.Layer.Coating.Mix) == 0 {
			vs = append(vs, verdict(NotRecorded, at, "from which lot the %s came", name(f)))
		}
		for _, part := range f.Layer.Coating.Mix {
			lot, ok := s.Workshop.Lot(part.Lot)
			expires, dated := lot.Expires.Latest()
			used1, ok1 := f.Layer.At.Earliest()
			used2, ok2 := f.Layer.At.Latest()
			switch {
			case !ok:
				vs = append(vs, verdict(NotRecorded, at, "from which lot the %s came", name(f)))
			case !dated:
				vs = append(vs, verdict(NotRecorded, at, "until when lot %s keeps", part.Lot))
			case !ok1 || !ok2:
				vs = append(vs, verdict(NotRecorded, at, "when lot %s was used", part.Lot))
			case used1.After(expires):
				vs = append(vs, verdict(FallsShort, at, "lot %s was used after %s", part.Lot, lot.Expires))
			case !used2.After(expires): // "until June" is all of June
				vs = append(vs, verdict(Holds, at, "lot %s was in date", part.Lot))
			default:
				vs = append(vs, verdict(NotRecorded, at, "the date of use of lot %s is not exact enough", part.Lot))
			}
		}
	}
	return orNone(vs, "no coat is laid yet")
}

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

var backBarrier = Rule{
	Name:     "back-barrier",
	Title:    "A panel for a humid place has a vapour barrier on its back.",
	Reason:   "Water-borne films slow vapour less than solvent-borne ones. In damp air pigmented shellac or semi-gloss alkyd on the back keeps the board steadier.",
	Source:   "MITRA, answer QID 431 on back coats",
	Severity: Advice,
	Judged:   "Only for panels meant for more than 60 % RH: some coat on the face opposite the painting is shellac or alkyd.",
	Remedy:   "Lay a coat of pigmented shellac or alkyd over the cured back, or hang the panel in a drier room.",
	Judge:    judgeBarrier,
}

func judgeBarrier(s *Subject) []Verdict {
	mp, ok := s.Panel.Description().MeantFor.Millipercent()
	if !ok {
		return one(NotRecorded, nil, "the humidity of the room the panel is meant for")
	}
	if mp <= 60_000 {
		return one(NotApplicable, nil, "the panel is meant for %s RH", s.Panel.Description().MeantFor)
	}
	facing := s.facing()
	if facing == "" {
		return one(NotApplicable, nil, "no face carries cloth or paint yet")
	}
	back := filter(s.on(opposite(facing)), isCoat)
	doubt := false
	for _, f := range back {
		switch s.has(f, record.Shellac, record.Alkyd) {
		case record.Yes:
			if s.binder(f) != mixed {
				return one(Holds, []int64{f.Layer.Seq}, "the back has a coat of %s", words(string(s.binder(f))))
			}
		case record.Unknown:
			doubt = true
		}
	}
	if doubt {
		return one(NotRecorded, filmSeqs(back), "what the back is coated with")
	}
	return one(FallsShort, filmSeqs(back), "meant for %s RH without a barrier on the back", s.Panel.Description().MeantFor)
}

var gaps = Rule{
	Name:     "gaps",
	Title:    "A conservator finds all they would ask for.",
	Reason:   "Bought panels say nothing. What is not written down now cannot be asked in fifty years.",
	Source:   "AIC Code of Ethics, commentary 24 on documentation; Object ID",
	Severity: Information,
	Judged:   "What the record of the panel leaves open: support, coats with their lots and amounts, cloth, paint, varnish, identification.",
	Remedy:   "Write down what you still know; say unknown where you have looked and cannot learn it.",
	Judge:    judgeGaps,
}

func judgeGaps(s *Subject) []Verdict {
	var vs []Verdict
	var seen []string
	for _, g := range s.Workshop.Gaps(s.Panel) {
		text := g.Topic + ": " + g.What
		if !slices.Contains(seen, text) {
			seen = append(seen, text)
			vs = append(vs, verdict(NotRecorded, []int64{g.Seq}, "%s", text))
		}
	}
	if len(vs) == 0 {
		return one(Holds, []int64{s.Cut.Seq}, "nothing that a reader would miss")
	}
	return vs
}
