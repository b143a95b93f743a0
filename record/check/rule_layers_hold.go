package check

import (
	"backleaf/record"
	"backleaf/record/trade"
)

var layersHold = Rule{
	Name: "layers-hold",
	Source: "conservators’ advice to artists and makers’ notes, pair by pair; common practice and memory of the literature where none was read; " +
		"each finding names its own",
	Severity: Advice,
	judge:    judgeLayers,
}

// judgeLayers judges each layer on the one directly below it, and the first on
// the board: each pair once, by what holds on what and by how long it waited.
func judgeLayers(s *subject) []verdict {
	var vs []verdict
	sound := false // some pair would be sound, if it is one
	for _, face := range faces {
		for _, p := range s.pairs(face) {
			v, ok := p.judge(s)
			switch {
			case !ok:
			case p.direct == record.Yes:
				vs = append(vs, v)
			case v.outcome == Holds:
				sound = true
			default:
				vs = append(vs, say(NotRecorded, filmSeqs(p.above, p.below), "order-open"))
			}
		}
	}
	if vs == nil && sound {
		return one(NotRecorded, nil, "order-open")
	}
	return orNone(vs, "nothing-to-hold")
}

// judge judges a pair; false where the tables do not speak of it.
func (p pair) judge(s *subject) (verdict, bool) {
	upper, lower := p.above.strataOf(), p.shown
	j := trade.Over(upper, lower, s.facts(p))
	at := filmSeqs(p.above, p.below)
	names := []record.Value{strata("layer", upper, what(p.above)), strata("below", lower, p.lower())}
	switch {
	case j.Holds == "":
		return verdict{}, false
	case j.Holds == record.No && j.Verdict != trade.Conditions:
		v := say(FallsShort, at, "pair-against", append(names, codes("reasons", j.Reasons), codes("cures", j.Cures))...)
		if j.Rests.Read() && j.Unmet == nil {
			v.severity = Warning
		}
		return v.from(j.Rests), true
	case j.Holds == record.No:
		return say(FallsShort, at, "pair-unmet", append(names, codes("lacks", j.Unmet), codes("cures", j.Cures))...).from(j.Rests), true
	case j.Holds == record.Unknown && (len(upper) > 1 || len(lower) > 1):
		if len(upper) > 1 {
			return say(NotRecorded, at, "made-of-open", what(p.above)), true
		}
		return p.belowOpen(at), true
	case j.Holds == record.Unknown:
		return say(NotRecorded, at, "pair-open", append(names, codes("open", leftOpen(j.Open)))...).from(j.Rests), true
	}
	if v, ok := s.waited(p, upper, lower, names); ok {
		return v, true
	}
	return say(Holds, at, "pair-sound", names...).from(j.Rests), true
}

// waited judges how long the lower layer dried: short of the least it is a
// warning, short of the usual advice. It is false where nothing is to be said.
// Where the record leaves several waits, all have to agree.
func (s *subject) waited(p pair, upper, lower trade.Strata, names []record.Value) (verdict, bool) {
	var worst verdict
	agreed := true
	n := 0
	for _, u := range upper {
		for _, l := range lower {
			for _, thick := range readings(not(thin(p.below))) {
				v, ok := p.dried(u, l, thick, names)
				if !ok {
					v.outcome = Holds
				}
				agreed = agreed && (n == 0 || v.outcome == worst.outcome)
				if n == 0 || rank(Outcomes, v.outcome) < rank(Outcomes, worst.outcome) {
					worst = v
				}
				n++
			}
		}
	}
	if !agreed && worst.outcome == FallsShort {
		return say(NotRecorded, filmSeqs(p.above, p.below), "pair-thick-open", append(names, worst.said.Value("wait"))...), true
	}
	return worst, worst.outcome != Holds
}

// readings are the answers that an answer may stand for.
func readings(a record.Answer) []record.Answer {
	if a == record.Yes || a == record.No {
		return []record.Answer{a}
	}
	return []record.Answer{record.Yes, record.No}
}

// dried judges one reading; false where no time is known for it.
func (p pair) dried(upper, lower trade.Stratum, thick record.Answer, names []record.Value) (verdict, bool) {
	w, ok := trade.WaitFor(upper, lower, thick)
	if !ok || p.below.Layer.Coating == nil {
		return verdict{}, false
	}
	at := filmSeqs(p.above, p.below)
	short := func(code string, limit trade.Span) verdict {
		dried, _ := between(p.below.Layer.At, p.above.Layer.At)
		return say(FallsShort, at, code, append(names, record.With("time", lasting(dried.most)), record.With("wait", spanned(limit)))...).from(w.Rests)
	}
	least, usual := passed(p, w.Least), passed(p, w.Usual)
	switch {
	case least == record.No:
		return short("pair-early", w.Least).at(Warning), true
	case usual == record.No && w.Usual.Hours > 0: // a night between two coats
		return short("pair-soon", w.Usual).at(Information), true
	case usual == record.No:
		return short("pair-soon", w.Usual), true
	case least == record.Yes && usual == record.Yes:
		return verdict{outcome: Holds}, true
	}
	limit := w.Usual
	if limit.IsZero() {
		limit = w.Least
	}
	v := say(NotRecorded, at, "pair-wait-open", append(names, record.With("wait", spanned(limit)))...)
	if safe, ok := trade.SafeFrom(p.below.Layer.At, limit); ok {
		v = say(NotRecorded, at, "pair-wait-open-until", append(names, record.With("safe", record.Moment(safe)))...)
	}
	return v.from(w.Rests), true
}

func passed(p pair, x trade.Span) record.Answer {
	if x.IsZero() {
		return record.Yes
	}
	return trade.Passed(p.below.Layer.At, p.above.Layer.At, x)
}

// spanned is a waiting time as a figure.
func spanned(x trade.Span) record.Figure {
	switch {
	case x.Months > 0:
		return figure(float64(x.Months), "months")
	case x.Days > 0:
		return figure(float64(x.Days), "d")
	}
	return figure(float64(x.Hours), "h")
}

// facts answers the conditions of a pair that lies directly on one another, as
// they are asked. What may lie between unseen lies there only where nobody can
// tell.
func (s *subject) facts(p pair) trade.Facts {
	bare := p.below.Layer.Coating == nil && !isCloth(p.below)
	return func(c trade.Condition) record.Answer {
		switch {
		case c == trade.Tooth:
			return some(p.below.matt(), s.sandedBetween(p))
		case c == trade.Keyed && bare:
			return some(s.cut.Body.Keyed, s.sandedBetween(p))
		case c == trade.Keyed:
			return s.sandedBetween(p)
		case c == trade.Degreased && bare:
			return s.cut.Body.Degreased
		case c == trade.Untempered && bare:
			return not(s.isBoard(record.TemperedHardboard))
		case c == trade.ThinBelow:
			return thin(p.below)
		case c == trade.ThinAbove:
			return thin(p.above)
		case c == trade.FatOverLean && isPaint(p.above):
			return word(p.above.Layer.Paint.Oil, "same", "fat")
		case c == trade.SealedFirst, c == trade.GroundBetween, c == trade.Isolated:
			return s.unless()
		case c == trade.Waited, c == trade.Rigid: // the wait is judged by itself, and every panel is
			return record.Yes
		}
		return record.Unknown
	}
}

// matt answers whether a layer is matt: as recorded for it, or by the glossiest
// of its materials.
func (f film) matt() record.Answer {
	if isPaint(f) && f.Layer.Paint.Gloss != "" {
		return word(f.Layer.Paint.Gloss, "matt", "satin")
	}
	ms, known := f.materials()
	var answers []record.Answer
	for _, m := range ms {
		answers = append(answers, word(m.Gloss, "matt", "satin"))
	}
	if !known {
		answers = append(answers, record.Unknown)
	}
	return all(answers...)
}

// thin answers whether a layer is thin: a paint as recorded; a single coat is,
// unless it was laid extra.
func thin(f film) record.Answer {
	if isPaint(f) {
		return word(f.Layer.Paint.Film, "thin")
	}
	return is(!f.Layer.Extra)
}

// sandedBetween answers whether the lower surface was dulled before the upper
// layer was laid.
func (s *subject) sandedBetween(p pair) record.Answer {
	out := s.unless()
	for _, sand := range each[record.Sanded](s) {
		for _, f := range sand.Body.Faces {
			if f != p.above.Layer.Face {
				continue
			}
			after := record.Answer(record.Yes) // of the board every sanding is
			if p.below.Layer.Seq != 0 {
				after = before(p.below.Layer.At, sand.At)
			}
			out = some(out, all(after, before(sand.At, p.above.Layer.At)))
		}
	}
	return out
}

// strata names what a layer is, where the record leaves one possibility; else
// it is called what it is for.
func strata(name string, s trade.Strata, otherwise record.Value) record.Value {
	if len(s) != 1 {
		otherwise.Name = name
		return otherwise
	}
	return record.With(name, record.Code(s[0]))
}

// codes makes a list of codes a value.
func codes[C ~string](name string, list []C) record.Value {
	var out []record.Code
	for _, c := range list {
		out = append(out, record.Code(c))
	}
	return record.With(name, out)
}

// leftOpen are conditions as questions that the record leaves open.
func leftOpen(cs []trade.Condition) (out []record.Code) {
	for _, c := range cs {
		out = append(out, "open-"+record.Code(c))
	}
	return out
}

// belowOpen says that it is not recorded what the lower layer of a pair is.
func (p pair) belowOpen(at []int64) verdict {
	switch {
	case p.below.Layer.Seq == 0:
		return say(NotRecorded, at, "board-kind-open")
	case isCloth(p.below) && len(p.below.strataOf()) == 1:
		return say(NotRecorded, filmSeqs(p.below), "wet-through-open")
	case isCloth(p.below) && p.below.made.SizingOpen():
		return say(NotRecorded, filmSeqs(p.below), "cloth-sized-open")
	}
	return say(NotRecorded, at, "made-of-open", what(p.below))
}
