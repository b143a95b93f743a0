package check

import (
	"slices"
	"time"

	"backleaf/record"
	"backleaf/record/amount"
	"backleaf/record/balance"
	"backleaf/record/trade"
)

// offer is a remedy that may be worth offering: what to do, and the entries
// that would then be written.
type offer struct {
	said   record.Said
	bodies []record.Body
}

// offers lists what can be tried for a rule that falls short, the mildest
// first. For the other rules there is only to leave it, and watch.
var offers = map[string]func(*subject) []offer{
	sealedAllRound.Name: func(s *subject) []offer {
		var bare []record.Face
		for _, face := range record.Faces {
			if s.sealed(face).outcome == FallsShort {
				bare = append(bare, face)
			}
		}
		return s.coatAgain(bare)
	},
	edgesExtra.Name:   func(s *subject) []offer { return s.coatAgain([]record.Face{record.Edges}) },
	balancedPull.Name: func(s *subject) []offer { return slices.Concat(s.coatAgain(s.lesser()), s.clothOn(s.lesser())) },
	balancedMoisture.Name: func(s *subject) []offer {
		return slices.Concat(s.coatAgain([]record.Face{s.opener()}), s.clothOn([]record.Face{s.opener()}))
	},
	backBarrier.Name: func(s *subject) []offer { return s.barrierOn(opposite(s.facing())) },
	notSandedThrough.Name: func(s *subject) []offer {
		var faces []record.Face
		for _, sand := range each[record.Sanded](s) {
			for _, f := range sand.Body.Faces {
				if !slices.Contains(faces, f) {
					faces = append(faces, f)
				}
			}
		}
		return s.coatAgain(faces)
	},
	boardThickness.Name: func(s *subject) []offer {
		return []offer{{record.Say("remedy-brace"), []record.Body{record.Braced{Bracing: "strainer", Fixing: "sliding", Run: "across-grain"}}}}
	},
	rigidBattens.Name: func(s *subject) []offer {
		b, _ := record.Latest[record.Braced](s.p)
		b.Body.Fixing, b.Body.Note = "sliding", ""
		return []offer{{record.Say("remedy-free"), []record.Body{b.Body}}}
	},
}

// coatAgain offers a coat of the stuff that already seals the panel.
func (s *subject) coatAgain(on []record.Face) []offer {
	on = slices.DeleteFunc(slices.Clone(on), func(f record.Face) bool { return f == "" })
	for _, f := range slices.Backward(s.films) {
		if len(on) > 0 && f.seals() == record.Yes && f.made.All {
			return []offer{{
				record.Say("remedy-coat", record.With("faces", on), what(f)),
				[]record.Body{record.Coat{Purpose: f.Layer.Purpose, Faces: on, Extra: edgesOf(on), Coating: typical(f.Layer.Coating.Mix, f.Layer.Purpose, f.kind())}},
			}}
		}
	}
	return nil
}

func edgesOf(on []record.Face) []record.Face {
	if slices.Contains(on, record.Edges) {
		return []record.Face{record.Edges}
	}
	return nil
}

// clothOn offers the cloth of the other face, laid as that was.
func (s *subject) clothOn(on []record.Face) []offer {
	cloth, ok := record.Latest[record.ClothLaid](s.p)
	if !ok || len(on) == 0 {
		return nil
	}
	b := cloth.Body
	b.Faces, b.WetThrough, b.EdgesPressed, b.Weighted, b.Coating = on, record.Yes, record.Yes, duration("24 h"), typical(b.Mix, record.Adhesive, "")
	return []offer{{record.Say("remedy-cloth", record.With("faces", on)), []record.Body{b, record.Trimmed{}}}}
}

// barrierOn offers a coat of shellac or alkyd from the shelf.
func (s *subject) barrierOn(face record.Face) []offer {
	for _, m := range s.w.Materials {
		if m.Body.Binder == record.Shellac || m.Body.Binder == record.Alkyd {
			mix := []record.Part{{Parts: 1, Material: m.Body.Key, As: []int64{m.Seq}}}
			return []offer{{
				record.Say("remedy-barrier", record.With("face", face), record.With("material", m.Body.Name)),
				[]record.Body{record.Coat{Purpose: record.Barrier, Faces: []record.Face{face}, Coating: typical(mix, record.Barrier, balance.Kind(m.Body.Binder))}},
			}}
		}
	}
	return nil
}

// typical is a coat of the usual thickness.
func typical(mix []record.Part, p record.Purpose, k balance.Kind) record.Coating {
	film, err := record.ParseLength(string(figure(balance.UsualCoat(p, k).Typical, "µm")))
	if err != nil {
		panic("check: a usual thickness is a length: " + err.Error())
	}
	return record.Coating{Mix: mix, DryFilm: film}
}

func duration(text string) record.Duration {
	d, err := record.ParseDuration(text)
	if err != nil {
		panic("check: " + err.Error())
	}
	return d
}

// lesser is the face that pulls less, as far as can be reckoned.
func (s *subject) lesser() []record.Face {
	p := s.reckoned()[0]
	j := balance.Judge(&p)
	if j.Outcome == balance.CannotJudge {
		return nil
	}
	switch toward(j.Work.Worst().BowMicrons) {
	case "front":
		return []record.Face{record.Back}
	case "back":
		return []record.Face{record.Front}
	}
	return nil
}

// opener is the face that takes up moisture sooner; empty for neither.
func (s *subject) opener() record.Face {
	p := s.reckoned()[0]
	return balance.MoistureOf(&p, swing).Leads
}

// remedy is what can still be done about a finding that falls short: the first
// offer that works when the panel is judged with its entries added, else to
// leave it, and watch. An offer works if the rule falls short no more (or, for
// the balance of a panel, the high pull goes down by a quarter, the lead of
// moisture by half) and no other rule falls short that did not, or not as
// gravely, of the same weight or more.
func (s *subject) remedy(f Finding, others []Finding) (record.Said, []record.Body) {
	if of := offers[f.Rule]; of != nil {
		for _, o := range of(s) {
			if s.works(f, others, o) {
				return o.said, o.bodies
			}
		}
	}
	watch := record.Say("watch-" + f.Rule)
	for _, said := range f.Said {
		if cures := said.Value("cures"); len(cures.Texts) > 0 {
			return record.Say("watch-cures", cures), nil
		}
	}
	return watch, nil
}

func (s *subject) works(f Finding, others []Finding, o offer) bool {
	then, touched := s.with(o.bodies), changed(o.bodies)
	if !s.eased(f, then) {
		return false // before the other rules are asked
	}
	for _, before := range others {
		if before.Rule == f.Rule || before.seen&touched == 0 {
			continue
		}
		rule, _ := RuleNamed(before.Rule)
		switch o, severity := rule.worst(rule.judge(then)); {
		case o != FallsShort || rank(Severities, severity) > rank(Severities, f.Severity):
		case before.Outcome != FallsShort || rank(Severities, severity) < rank(Severities, before.Severity):
			return false
		}
	}
	return true
}

// eased reports that a finding is cleared, or the balance better as far as a
// remedy is worth offering.
func (s *subject) eased(was Finding, then *subject) bool {
	if was.Rule == balancedPull.Name || was.Rule == balancedMoisture.Name {
		before, after := s.reckoned()[0], then.reckoned()[0]
		if e := balance.Weigh(&before, &after); was.Rule == balancedPull.Name {
			return e.LowersPull
		} else if !e.EvensMoisture {
			return false
		}
	}
	rule, _ := RuleNamed(was.Rule)
	o, _ := rule.worst(rule.judge(then))
	return o != FallsShort
}

// with is the panel with more entries, written now.
func (s *subject) with(bodies []record.Body) *subject {
	at, seq := s.now, s.w.Last
	events := append(make([]record.Event, 0, len(s.p.Events)+len(bodies)), s.p.Events...)
	for i := range events {
		if last, ok := events[i].At.Latest(); ok && last.After(at) {
			at = last
		}
	}
	for _, b := range bodies {
		at, seq = at.Add(time.Hour), seq+1
		events = append(events, record.Event{Seq: seq, At: record.Moment(at), Written: record.Moment(at), Body: b, Panels: []record.Number{s.p.Number}})
	}
	return s.after(events, at, func(p *record.Panel, l record.Layer) film {
		return &filmed{Film: amount.FilmOf(s.w, p, l), made: trade.Of(s.w, l)}
	})
}

// after is the panel as other events tell it, with the films of new layers. More
// work leaves the others as they were reckoned.
func (s *subject) after(events []record.Event, at time.Time, made func(*record.Panel, record.Layer) film) *subject {
	p := s.p.With(events)
	films := make([]film, 0, len(p.Layers()))
	for _, l := range p.Layers() {
		i := slices.IndexFunc(s.films, func(f film) bool {
			return f.Layer.Seq == l.Seq && f.Layer.Face == l.Face && isCloth(f) == (l.Cloth != nil) && len(f.Layer.Losses) == len(l.Losses)
		})
		if i >= 0 {
			films = append(films, s.films[i])
		} else {
			films = append(films, made(p, l))
		}
	}
	return subjectOf(s.w, p, at, films)
}
