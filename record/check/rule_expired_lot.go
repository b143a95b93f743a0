package check

import "backleaf/record"

var expiredLot = Rule{
	Name:     "expired-lot",
	Source:   "common practice",
	Severity: Advice,
	judge:    judgeExpired,
}

func judgeExpired(s *subject) []verdict {
	vs := make([]verdict, 0, len(s.films))
	for _, f := range s.all() {
		if isCloth(f) {
			continue
		}
		at := filmSeqs(f)
		if len(f.Layer.Coating.Mix) == 0 {
			vs = append(vs, say(NotRecorded, at, "lot-open", what(f)))
		}
		for _, part := range f.Layer.Coating.Mix {
			lot, ok := s.w.Lot(part.Lot)
			tin := record.With("lot", part.Lot)
			switch o := outcome(record.Yes, not(before(lot.Expires, f.Layer.At))); {
			case !ok:
				vs = append(vs, say(NotRecorded, at, "lot-open", what(f)))
			case !lot.Expires.Known():
				vs = append(vs, say(NotRecorded, at, "lot-expires-open", tin))
			case o == NotRecorded:
				if _, dated := between(f.Layer.At, lot.Expires); !dated || !within(f.Layer.At, lot.Expires) {
					vs = append(vs, say(o, at, "lot-used-open", tin))
					continue
				}
				vs = append(vs, say(Holds, at, "lot-in-date", tin)) // "until June" is all of June
			case o == Holds:
				vs = append(vs, say(o, at, "lot-in-date", tin))
			default:
				vs = append(vs, say(o, at, "lot-expired", tin, record.With("expires", lot.Expires)))
			}
		}
	}
	return orNone(vs, "nothing-wet")
}

// within reports that a time lies before the end of another.
func within(at, until record.When) bool {
	a, ok1 := at.Latest()
	b, ok2 := until.Latest()
	return ok1 && ok2 && !a.After(b)
}
