package check

import (
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/measure"
)

var formaldehyde = Rule{
	Name:     "formaldehyde",
	Title:    "The board's formaldehyde class is recorded and within the limits.",
	Reason:   "Boards glued with urea resins give off formaldehyde and acids for years: bad to breathe, and they attack metals and lead white in a closed case. No coating blocks them fully.",
	Source:   "Public Law 111-199 (US limits); European and Japanese classes from tables and notes of board makers; Regulation (EU) 2023/1464 from memory",
	Severity: Advice,
	Judged:   "Plywood, MDF and particleboard, by the class printed on the sheet. TSCA Title VI, ULEF, no added formaldehyde and F**** hold; E1 holds for a board cut before 6 August 2026, when a lower limit came into force in the EU; E2 and one to three stars fall short.",
	Remedy:   "Ask the supplier for the class. Seal the board all round, air it before framing, and keep it out of tight cases with metals or lead white.",
	Judge:    judgeFormaldehyde,
}

// reachFrom is when REACH Annex XVII entry 77 applies (from memory of
// Regulation (EU) 2023/1464).
var reachFrom = time.Date(2026, 8, 6, 0, 0, 0, 0, time.UTC)

func judgeFormaldehyde(s *Subject) []Verdict {
	at := []int64{s.Cut.Seq}
	b := s.board()
	switch b.Kind {
	case "":
		return one(NotRecorded, at, "the kind of board")
	case record.Plywood, record.MDF, record.Particleboard:
	default:
		return one(NotApplicable, at, "no limit is set for this board")
	}
	class, sound := emissionClass(b.Formaldehyde)
	switch {
	case b.Formaldehyde == "" || b.Formaldehyde == record.Unknown:
		return one(NotRecorded, at, "the board's formaldehyde class")
	case class == "" && sound:
		return one(Holds, at, "%s", b.Formaldehyde)
	case class == "":
		return one(NotRecorded, at, "what the class %q stands for", b.Formaldehyde)
	}
	limit := s.emissionLimit(class, b)
	cut, ok := s.Cut.At.Latest()
	if !ok {
		cut = s.Now
	}
	switch {
	case class == measure.E1 && !cut.Before(reachFrom):
		return []Verdict{verdict(FallsShort, at, "%s: %s; in the EU 0.062 mg/m³ from 6 August 2026 (from memory), which the class alone does not show", b.Formaldehyde, limit).at(Information)}
	case !sound:
		return one(FallsShort, at, "%s: %s", b.Formaldehyde, limit)
	}
	return one(Holds, at, "%s: %s", b.Formaldehyde, limit)
}

func (s *Subject) emissionLimit(class measure.EmissionClass, b record.Board) string {
	product := measure.Particleboard
	if t, ok := s.thickness(); ok {
		if p, err := measure.ProductOf(measure.Board(b.Kind), t); err == nil {
			product = p
		}
	}
	l, err := measure.EmissionLimitOf(class, product)
	if err != nil {
		return "limit not known"
	}
	return "at most " + strings.TrimSpace(trimFloat(l.Value)+" "+l.Unit) + " by " + l.Test
}

// emissionClass reads a class as printed on a sheet, and whether it is among
// the good ones. An empty class is one without a limit of its own.
func emissionClass(printed string) (measure.EmissionClass, bool) {
	s := strings.ToUpper(strings.NewReplacer("★", "*", "☆", "*", " ", "", "-", "", ".", "").Replace(printed))
	switch {
	case strings.Contains(s, "NONEADDED"), strings.Contains(s, "NOADDED"), s == "NAF", strings.Contains(s, "FORMALDEHYDEFREE"):
		return "", true
	case strings.Contains(s, "ULEF"):
		return measure.ULEF, true
	case strings.Contains(s, "TSCA"), strings.Contains(s, "CARB"):
		return measure.TSCATitleVI, true
	case s == "F****":
		return measure.FourStar, true
	case s == "F***":
		return measure.ThreeStar, false
	case s == "F**":
		return measure.TwoStar, false
	case s == "F*":
		return measure.OneStar, false
	case s == "E1" || s == "CLASSE1":
		return measure.E1, true
	case s == "E2" || s == "CLASSE2":
		return measure.E2Perforator, false
	}
	return "", false
}
