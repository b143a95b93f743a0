package check

import (
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/measure"
)

var formaldehyde = Rule{
	Name: "formaldehyde",
	Source: "Public Law 111-199 (US limits); European and Japanese classes from tables and notes of board makers; " +
		"Regulation (EU) 2023/1464 from memory",
	Severity: Advice,
	judge:    judgeFormaldehyde,
}

// emissionClasses are the classes as printed on sheets, in capitals without
// spaces, points and hyphens; a text that begins with one of them is of it.
// One without a limit of its own has no class.
var emissionClasses = []struct {
	printed string
	class   measure.EmissionClass
	sound   bool
}{
	{"NONEADDED", "", true}, {"NOADDED", "", true}, {"NAF", "", true}, {"FORMALDEHYDEFREE", "", true}, {"ULEF", measure.ULEF, true},
	{"TSCA", measure.TSCATitleVI, true}, {"CARB", measure.TSCATitleVI, true}, {"F****", measure.FourStar, true}, {"F***", measure.ThreeStar, false},
	{"F**", measure.TwoStar, false}, {"F*", measure.OneStar, false}, {"CLASSE1", measure.E1, true}, {"E1", measure.E1, true},
	{"CLASSE2", measure.E2Perforator, false}, {"E2", measure.E2Perforator, false},
}

func judgeFormaldehyde(s *subject) []verdict {
	at := []int64{s.cut.Seq}
	b := s.board()
	switch s.isBoard(record.Plywood, record.MDF, record.Particleboard) {
	case record.No:
		return one(NotApplicable, at, "formaldehyde-elsewhere")
	case record.Unknown:
		return one(NotRecorded, at, "board-kind-open")
	}
	if b.Formaldehyde == "" || b.Formaldehyde == record.Unknown {
		return one(NotRecorded, at, "formaldehyde-open")
	}
	printed := strings.ToUpper(strings.NewReplacer("★", "*", "☆", "*", " ", "", "-", "", ".", "").Replace(b.Formaldehyde))
	class := record.With("class", b.Formaldehyde)
	for _, c := range emissionClasses {
		if !strings.HasPrefix(printed, c.printed) {
			continue
		}
		values, limited := []record.Value{class}, ""
		if limit := s.emissionLimit(c.class, b); limit != nil {
			values, limited = append(values, limit...), "-limit"
		}
		switch {
		case !c.sound:
			return one(FallsShort, at, "formaldehyde-high"+limited, values...)
		case c.class != measure.E1:
			return one(Holds, at, "formaldehyde-low"+limited, values...)
		}
		// The class alone does not show that a later board keeps the EU limit.
		from, lower := s.reachLimit(b)
		values = append(values, lower...)
		o := outcome(record.Yes, before(s.cut.At, from))
		code := map[Outcome]string{Holds: "formaldehyde-low" + limited, FallsShort: "formaldehyde-new-limit", NotRecorded: "formaldehyde-cut-open"}[o]
		return []verdict{say(o, at, code, values...).at(Information)}
	}
	return one(NotRecorded, at, "formaldehyde-class-open", class)
}

// reachLimit is when the lower limit of the EU came into force, and both as
// values.
func (s *subject) reachLimit(b record.Board) (from record.When, values []record.Value) {
	l, err := measure.EmissionLimitOf(measure.REACH77, b.Kind, 0)
	if err != nil {
		return from, nil
	}
	day, err := time.Parse(time.DateOnly, l.From)
	if err != nil {
		return from, nil
	}
	from = record.Moment(day)
	return from, []record.Value{record.With("lower", figure(l.Value, l.Unit)), record.With("from", from)}
}

// emissionLimit is the limit of a class as a value; none where it has none.
func (s *subject) emissionLimit(class measure.EmissionClass, b record.Board) []record.Value {
	t, _ := s.thickness() // 0 where it is not known
	l, err := measure.EmissionLimitOf(class, b.Kind, t)
	if err != nil {
		return nil
	}
	return []record.Value{record.With("limit", figure(l.Value, l.Unit))}
}
