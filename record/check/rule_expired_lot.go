package check

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
