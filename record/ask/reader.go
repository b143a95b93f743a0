package ask

import (
	"slices"

	"backleaf/record"
	"backleaf/record/section"
	"backleaf/record/tell"
)

// reader answers topics from one panel.
type reader struct {
	*tell.Teller
	w *record.Workshop
	p *record.Panel
}

// say is one line of an answer.
func (r *reader) say(code string, values ...record.Value) string {
	return tell.Say(r.Catalogue(), record.Say(code, values...))
}

// open answers what nobody wrote down, with why that is so.
func open(entries []int64, lines ...string) Answer {
	a := recorded(entries, lines...)
	a.Recorded = false
	return a
}

// none is the honest answer to what nobody wrote down.
func (r *reader) none(entries ...int64) Answer { return open(entries, r.say("ask-not-recorded")) }

func recorded(entries []int64, lines ...string) Answer {
	return Answer{Lines: slices.DeleteFunc(lines, func(l string) bool { return l == "" }), Entries: entries, Recorded: true}
}

// said answers with a recorded text, which may be "unknown" or absent.
func (r *reader) said(text string, entries ...int64) Answer {
	switch text {
	case "":
		return r.none(entries...)
	case record.Unknown:
		return recorded(entries, r.say("ask-unknown"))
	}
	return recorded(entries, text)
}

func known(s string) bool { return s != "" && s != record.Unknown }

// few joins texts for one line; what would make it long is counted.
func (r *reader) few(texts []string) string {
	const most = 4
	if len(texts) <= most {
		return r.Catalogue().Clauses(texts)
	}
	return r.say("ask-more", tell.Told("lines", r.Catalogue().Clauses(texts[:most])), record.With("n", len(texts)-most))
}

// all answers with all that was found, or that nothing was recorded.
func (r *reader) all(found []string, entries []int64, more ...string) Answer {
	if found == nil {
		return r.none()
	}
	return recorded(entries, append([]string{r.few(found)}, more...)...)
}

func (r *reader) layer(l record.Layer) record.Value { return tell.Told("layer", r.Layer(l)) }

// application is a layer with all the faces it went on at once.
type application struct {
	record.Layer
	faces []record.Face
}

func (r *reader) applications(which func(record.Layer) bool) []application {
	var out []application
	for _, l := range r.p.Layers() {
		if !which(l) {
			continue
		}
		i := slices.IndexFunc(out, func(a application) bool { return a.Seq == l.Seq && (a.Cloth == nil) == (l.Cloth == nil) })
		if i < 0 {
			out = append(out, application{Layer: l})
			i = len(out) - 1
		}
		out[i].faces = append(out[i].faces, l.Face)
	}
	return out
}

func seqs(as []application) []int64 {
	var out []int64
	for _, a := range as {
		out = append(out, a.Seq)
	}
	return out
}

// layersOf answers with the layers of one kind: what, where and when, then of
// which products and lots.
func layersOf(which func(record.Layer) bool) func(*reader) Answer {
	return func(r *reader) Answer {
		as := r.applications(which)
		var what, of []string
		for _, a := range as {
			what = append(what, r.say("ask-layer", r.layer(a.Layer), record.With("faces", a.faces), record.With("date", a.At)))
			if a.Coating == nil {
				continue
			}
			if m := r.Mix(a.Coating); !slices.Contains(of, m) {
				of = append(of, m)
			}
		}
		return r.all(what, seqs(as), r.few(of))
	}
}

// face answers what is on one face.
func face(f record.Face) func(*reader) Answer {
	return func(r *reader) Answer {
		as := r.applications(func(l record.Layer) bool { return l.Face == f && l.Stands() })
		state, es := r.w.State(r.p, f), seqs(as)
		for _, b := range record.Each[record.LeftBare](r.p) {
			if slices.Contains(b.Body.Faces, f) {
				es = append(es, b.Seq)
			}
		}
		a := recorded(es, r.say("ask-face-"+string(state), record.With("face", f)))
		if len(as) > 0 {
			a.Lines = append(a.Lines, r.say("ask-from-board", tell.Told("layers", r.Catalogue().Clauses(r.On(f)))))
		}
		a.Recorded = state != record.FaceUnknown || len(as) > 0
		return a
	}
}

func (r *reader) sealed() Answer {
	as := r.applications(func(l record.Layer) bool { return l.Stands() && r.w.Seals(l) == record.Yes })
	a := recorded(seqs(as), r.SealedFaces())
	a.Recorded = slices.ContainsFunc(record.Faces, func(f record.Face) bool { return r.w.State(r.p, f) != record.FaceUnknown })
	return a
}

func (r *reader) films() Answer {
	var out []string
	as := r.applications(func(l record.Layer) bool { return l.Cloth == nil })
	for _, a := range as {
		um, how := r.Thickness(a.Layer)
		what := r.say("ask-not-recorded")
		if code, ok := map[section.Certainty]string{section.Measured: "ask-measured", section.Estimated: "ask-estimated"}[how]; ok {
			what = r.say(code, tell.Told("thickness", section.Thickness(um)))
		}
		out = append(out, r.say("ask-of-layer", r.layer(a.Layer), tell.Told("what", what)))
	}
	return r.all(out, seqs(as), r.say("ask-estimates"))
}

// cut is how the panel began, with its entry.
func (r *reader) cut() (record.Cut, int64) {
	c, _ := record.Latest[record.Cut](r.p)
	return c.Body, c.Seq
}

func (r *reader) material() record.Material {
	c, _ := r.cut()
	m, _ := r.w.Material(c.Board, c.BoardAs)
	return m
}
