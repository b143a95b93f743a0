package check

import (
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/measure"
)

var boardThickness = Rule{
	Name:     "board-thickness",
	Title:    "The board is thick enough for its size, or braced.",
	Reason:   "Stiffness goes with the cube of the thickness; a thin large board bows and flexes the layers on it.",
	Source:   "MITRA, thread on fibreboard for egg tempera (one panel maker's rough estimate) and Rigid Supports (bracing); a painter's letter on wood panels (thin plywood to about 16 × 20 in); from 9 mm: common practice",
	Severity: Advice,
	Judged:   "Unbraced: 6 mm and more up to 9 × 12 in, 9 mm and more up to 24 in. Thinner plywood up to 16 × 20 in is only noted, since one painter's limit allows it. Braced panels hold.",
	Remedy:   "Fix a brace or strainer so that the board can move, or frame the panel with a stiff backing board.",
	Judge:    judgeThickness,
}

func judgeThickness(s *Subject) []Verdict {
	at := []int64{s.Cut.Seq}
	if b := record.Each[record.Braced](s.Panel); len(b) > 0 {
		return one(Holds, append(at, seqs(b)...), "the panel is braced")
	}
	long, short, ok1 := s.sides()
	t, ok2 := s.thickness()
	kind := s.board().Kind
	const inch = 25400
	in := func(a, b float64) bool { return short <= a*inch && long <= b*inch }
	switch {
	case ok1 && ok2 && (t >= 9000 && long <= 24*inch || t >= 6000 && in(9, 12)):
		return one(Holds, at, "%s mm thick, %s", trimFloat(t/1000), s.Panel.Size())
	case kind == record.AluminiumComp || kind == record.Honeycomb:
		return one(NotApplicable, at, "the rule is for wood and fibreboards")
	case !ok1 || !ok2:
		return one(NotRecorded, at, "size or thickness of the board")
	case kind == "":
		return one(NotRecorded, at, "the kind of board")
	case kind == record.Plywood && t >= 2500 && in(16, 20):
		return []Verdict{verdict(FallsShort, at, "%s mm plywood, unbraced: thin by one estimate, within another's limit of 16 × 20 in", trimFloat(t/1000)).at(Information)}
	}
	return one(FallsShort, at, "%s mm is thin for %s unbraced", trimFloat(t/1000), s.Panel.Size())
}

var rigidBattens = Rule{
	Name:     "rigid-battens",
	Title:    "Battens and cradles across the grain let the board move.",
	Reason:   "Held rigid across the grain, wood that wants to shrink is torn, and wood that wants to swell buckles.",
	Source:   "The Structural Conservation of Panel Paintings (Getty 1998)",
	Severity: Information,
	Judged:   "Bracing across the grain must slide. It is a warning on solid wood and a note on boards, which move less.",
	Remedy:   "Free the battens from the glue and let them slide in slots or under clips.",
	Judge:    judgeBattens,
}

func judgeBattens(s *Subject) []Verdict {
	var vs []Verdict
	for _, b := range record.Each[record.Braced](s.Panel) {
		at := []int64{b.Seq}
		switch {
		case b.Body.Fixing == "sliding":
			vs = append(vs, verdict(Holds, at, "the bracing slides"))
		case b.Body.Run == "along-grain":
			vs = append(vs, verdict(Holds, at, "the bracing runs along the grain"))
		case b.Body.Fixing == "rigid" && b.Body.Run == "across-grain":
			v := verdict(FallsShort, at, "the bracing is rigid across the grain")
			if s.board().Kind == record.SolidWood {
				v.Severity = Warning
			}
			vs = append(vs, v)
		default:
			vs = append(vs, verdict(NotRecorded, at, "how the bracing is fixed and which way it runs"))
		}
	}
	return orNone(vs, "the panel is not braced")
}

var boardSettled = Rule{
	Name:     "board-settled",
	Title:    "The board settles to the room before it is coated.",
	Reason:   "A board sealed while it is still taking up or giving off moisture moves under its coats. A single board needs a few days, the middle of a stack weeks.",
	Source:   "a board makers' note on controlling the moisture of MDF; two days as the least: own reading",
	Severity: Advice,
	Judged:   "By the time recorded that the board stood open in the workroom: 2 days or more.",
	Remedy:   "Check the panel for bow over the next weeks before it is framed.",
	Judge:    judgeSettled,
}

func judgeSettled(s *Subject) []Verdict {
	at := []int64{s.Cut.Seq}
	sec, ok := s.Cut.Body.Settled.Seconds()
	switch {
	case ok && time.Duration(sec)*time.Second >= 2*day:
		return one(Holds, at, "the board settled for %s", s.Cut.Body.Settled)
	case s.board().Kind == record.AluminiumComp:
		return one(NotApplicable, at, "the board takes up no moisture")
	case !ok:
		return one(NotRecorded, at, "how long the board settled to the room")
	}
	return one(FallsShort, at, "the board settled for %s only", s.Cut.Body.Settled)
}

var temperedBoard = Rule{
	Name:     "tempered-board",
	Title:    "Tempered hardboard is degreased and keyed.",
	Reason:   "Tempering can leave oil at the surface, and the face is too smooth to hold a coat.",
	Source:   "common practice; MITRA, threads on tempered hardboard (doubt about oil residue)",
	Severity: Advice,
	Judged:   "Both answers recorded when the board was cut.",
	Remedy:   "Test adhesion at an edge with tape. If the film lifts, the panel has to be stripped, degreased and sanded.",
	Judge:    judgeTempered,
}

func judgeTempered(s *Subject) []Verdict {
	at := []int64{s.Cut.Seq}
	c := s.Cut.Body
	switch kind := s.board().Kind; {
	case kind == "":
		return one(NotRecorded, at, "the kind of board")
	case kind != record.TemperedHardboard:
		return one(NotApplicable, at, "the board is not tempered hardboard")
	case c.Degreased == record.No && c.Keyed == record.No:
		return one(FallsShort, at, "neither degreased nor keyed")
	case c.Degreased == record.No:
		return one(FallsShort, at, "not degreased")
	case c.Keyed == record.No:
		return one(FallsShort, at, "not keyed")
	case c.Degreased != record.Yes || c.Keyed != record.Yes:
		return one(NotRecorded, at, "whether the board was degreased and keyed")
	}
	return one(Holds, at, "degreased and keyed")
}

var veneerCloth = Rule{
	Name:     "veneer-cloth",
	Title:    "Cloth lies between plywood and ground.",
	Reason:   "Fine checks in the veneer print through every ground laid straight on plywood; a cloth keeps them from showing.",
	Source:   "MITRA, answers QID 553 and 388, thread on birch plywood, Rigid Supports",
	Severity: Advice,
	Judged:   "On each face of a plywood board that has a ground: a cloth below the first ground.",
	Remedy:   "Before painting: sand the ground lightly, lay fine cloth over it and ground again. Later: keep the climate steady.",
	Judge:    judgeVeneer,
}

func judgeVeneer(s *Subject) []Verdict {
	var vs []Verdict
	for _, face := range faces {
		if s.facing() != "" && face != s.facing() {
			continue // a ground on the back is there for balance
		}
		films := s.on(face)
		for i, f := range films {
			if !isGround(f) {
				continue
			}
			at := []int64{f.Layer.Seq, s.Cut.Seq}
			cloth := filter(films[:i], isCloth)
			switch kind := s.board().Kind; {
			case kind == "" && len(cloth) == 0:
				vs = append(vs, verdict(NotRecorded, at, "the kind of board under the ground"))
			case kind != record.Plywood && kind != "":
				return one(NotApplicable, at, "the board is not plywood")
			case len(cloth) > 0 && kind == record.Plywood:
				vs = append(vs, verdict(Holds, append(at, cloth[0].Layer.Seq), "cloth lies under the ground"))
			case kind == "":
				vs = append(vs, verdict(NotRecorded, at, "the kind of board under the cloth"))
			default:
				vs = append(vs, verdict(FallsShort, at, "the ground lies on bare veneer"))
			}
			break
		}
	}
	return orNone(vs, "no ground is laid")
}

// facing is the face that carries the work: the painted one, or else the one
// with cloth; empty where the record does not say.
func (s *Subject) facing() record.Face {
	for _, is := range []func(Film) bool{isPaint, isCloth} {
		front := len(filter(s.on(record.Front), is)) > 0
		back := len(filter(s.on(record.Back), is)) > 0
		switch {
		case front && !back:
			return record.Front
		case back && !front:
			return record.Back
		}
	}
	return ""
}

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
