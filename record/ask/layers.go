package ask

import (
	"slices"

	"backleaf/record"
	"backleaf/record/section"
	"backleaf/record/tell"
)

// application is a layer with all the faces it went on at once.
type application struct {
	record.Layer
	faces []record.Face
}

// applications are the layers that were ever laid, with what was taken off
// them later.
func (r *reader) applications(which func(record.Layer) bool) []application {
	var out []application
	for _, l := range r.p.Layers() {
		if !which(l) {
			continue
		}
		i := slices.IndexFunc(out, func(a application) bool {
			return a.Seq == l.Seq && (a.Cloth == nil) == (l.Cloth == nil) && slices.Equal(a.Losses, l.Losses)
		})
		if i < 0 {
			out = append(out, application{Layer: l})
			i = len(out) - 1
		}
		out[i].faces = append(out[i].faces, l.Face)
	}
	return out
}

// standing are the layers that are still there, at least in part.
func (r *reader) standing(which func(record.Layer) bool) []application {
	return slices.DeleteFunc(r.applications(which), func(a application) bool { return !a.Stands() })
}

func seqs(as []application) []int64 {
	var out []int64
	for _, a := range as {
		out = once(out, a.Seq)
		for _, x := range a.Losses {
			out = once(out, x.Seq)
		}
	}
	return out
}

// coats answers with the coats that serve a purpose.
func coats(p record.Purpose) func(*reader) Answer {
	return func(r *reader) Answer { return r.layersOf(p, of(p)) }
}

// layersOf answers with the layers of one kind: those that are there today,
// what they are made of, what was taken off; or that there is none, and how
// far that can be known.
func (r *reader) layersOf(name any, which func(record.Layer) bool) Answer {
	all := r.applications(which)
	if len(all) == 0 {
		return r.absent(name)
	}
	there := r.standing(which)
	var lines []string
	if len(there) == 0 {
		lines = append(lines, r.say("ask-none-today", record.With("layer", name)))
	}
	for _, same := range alike(there, r.words) {
		lines = append(lines, r.say("ask-coats", record.With("n", len(same)), tell.Told("layer", r.words(same[0])), tell.Told("dates", r.dates(same))))
	}
	for _, a := range all {
		lines = once(lines, r.losses(a)...)
	}
	return recorded(seqs(all), append(r.counted(there), lines...)...)
}

// counted says, where that is asked, how many of some layers lie on each face.
func (r *reader) counted(there []application) []string {
	if !r.asks("many") {
		return nil
	}
	var counts []string
	for _, f := range record.Faces {
		n := 0
		for _, a := range there {
			for _, on := range a.faces {
				if on == record.Unknown {
					return nil
				} else if on == f {
					n++
				}
			}
		}
		if n > 0 {
			counts = append(counts, r.say("ask-count-on", record.With("n", n), record.With("face", f)))
		}
	}
	lines := []string{r.say("ask-count", tell.Told("counts", r.List(counts)))}
	if !r.p.AsMade() {
		lines = append(lines, r.say("ask-written-afterwards"))
	}
	return lines
}

// alike groups layers of which the same is said.
func alike(as []application, words func(application) string) [][]application {
	var out [][]application
	for _, a := range as {
		i := slices.IndexFunc(out, func(g []application) bool { return words(g[0]) == words(a) })
		if i < 0 {
			out, i = append(out, nil), len(out)
		}
		out[i] = append(out[i], a)
	}
	return out
}

func (r *reader) dates(as []application) string {
	var out []string
	for _, a := range as {
		out = once(out, r.Day(a.At))
	}
	return r.List(out)
}

// words say a layer, on which faces, of what and how much.
func (r *reader) words(a application) string {
	of, amount := "", ""
	switch {
	case a.Cloth != nil && known(string(a.Cloth.Cloth)):
		of = r.Product(a.Cloth.Cloth, a.Cloth.ClothAs, a.Cloth.ClothLot)
	case a.Coating != nil:
		of, amount = r.Mix(a.Coating), r.amount(a)
	case a.Cloth != nil:
		of = r.say("ask-cloth-not-known")
	}
	note := ""
	if a.Coating != nil {
		note = a.Coating.Note
	}
	return r.say("ask-layer-of", r.layer(a.Layer), record.With("faces", a.faces), tell.Told("of", of), tell.Told("amount", amount), tell.Told("note", note))
}

// losses say what was taken off a layer.
func (r *reader) losses(a application) []string {
	var out []string
	losses := a.Losses
	a.Losses = nil // told once, at the end of the line
	for _, x := range losses {
		for _, e := range r.p.Events {
			if e.Seq == x.Seq {
				out = append(out, r.say("ask-lost", r.layer(a.Layer), record.With("laid", a.At), tell.Told("how", r.event(e))))
			}
		}
	}
	return out
}

// absent says that no layer of a kind is on record: on a panel recorded as it
// was made none was laid, on another nobody knows. A coat of an unknown purpose
// leaves it open; so does a face on which something was laid that nobody knows.
func (r *reader) absent(name any) Answer {
	_, isPurpose := name.(record.Purpose)
	for _, l := range r.p.Layers() {
		if l.Stands() && isCoat(l) && (l.Purpose == "" || l.Purpose == record.Unknown) && isPurpose {
			return open([]int64{l.Seq}, r.say("ask-absent-open", record.With("layer", name)))
		}
	}
	if name == record.Use("cloth") && r.p.ClothIntended() == record.No {
		i, _ := record.Latest[record.Intended](r.p)
		return recorded([]int64{i.Seq}, r.say("ask-no-cloth-meant"))
	}
	if r.p.AsMade() {
		return open(nil, r.say("ask-absent-as-made", record.With("layer", name)))
	}
	return open(nil, r.say("ask-absent", record.With("layer", name)))
}

// face answers what is on one face.
func face(f record.Face) func(*reader) Answer {
	return func(r *reader) Answer {
		a := r.state(f).and(r.onFace(f))
		a.Lines = append(r.counted(r.standing(func(l record.Layer) bool { return l.Face == f })), a.Lines...)
		return a
	}
}

func (r *reader) onFace(f record.Face) Answer {
	as := r.applications(func(l record.Layer) bool { return l.Face == f })
	if len(as) == 0 {
		return Answer{}
	}
	a := recorded(seqs(as))
	if layers := r.On(f); layers != nil {
		a.Lines = append(a.Lines, r.say("ask-from-board", tell.Told("layers", r.Catalogue().Clauses(layers))))
	}
	for _, x := range as {
		a.Lines = append(a.Lines, r.losses(x)...)
	}
	return a
}

// state says whether a face is closed by a coat, as far as known.
func (r *reader) state(f record.Face) Answer {
	on := record.With("face", f)
	switch r.w.State(r.p, f) {
	case record.FaceSealed:
		as := r.standing(func(l record.Layer) bool { return l.Face == f && r.w.Seals(l) == record.Yes })
		var out []string
		for _, a := range as {
			out = once(out, r.say("ask-sealed-with", r.layer(a.Layer), tell.Told("of", r.Mix(a.Coating)), record.With("date", a.At)))
		}
		return recorded(seqs(as), r.say("ask-face-sealed", on, tell.Told("with", r.list(out))))
	case record.FaceBare:
		for _, b := range record.Each[record.LeftBare](r.p) {
			if slices.Contains(b.Body.Faces, f) {
				return recorded([]int64{b.Seq}, r.say("ask-face-bare", on, record.With("date", b.At), record.With("because", b.Body.Because)))
			}
		}
	case record.FaceCoated:
		return open(nil, r.say("ask-face-coated", on))
	case record.FaceNothing:
		return open(nil, r.say("ask-face-nothing", on))
	}
	return open(nil, r.say("ask-face-not-known", on))
}

func (r *reader) sealed() Answer {
	var a Answer
	for _, f := range record.Faces {
		a = a.and(r.state(f))
	}
	return a
}

func (r *reader) films() Answer {
	var f found
	for _, a := range r.standing(func(l record.Layer) bool { return l.Cloth == nil }) {
		um, how := r.Thickness(a.Layer)
		what := r.say("ask-not-recorded")
		if code, ok := map[section.Certainty]string{section.Measured: "ask-measured", section.Estimated: "ask-estimated"}[how]; ok {
			what = r.say(code, tell.Told("thickness", section.Thickness(um)))
		}
		f.add(r.say("ask-of-layer", r.layer(a.Layer), tell.Told("what", what)), seqs([]application{a})...)
	}
	return r.all(f, r.say("ask-estimates"))
}

func (r *reader) varnish() Answer {
	a := r.layersOf(record.Use("varnish"), isVarnish)
	if len(r.standing(isVarnish)) > 0 {
		a.Lines = append([]string{r.VarnishLine()}, a.Lines...)
	} else {
		a = a.andRecorded(r.removed())
	}
	return a.andRecorded(r.remarks("varnish", "unvarnished"))
}

// newVarnish: whether another varnish may go on is nobody's to say but a
// conservator's; what lies there is on record.
func (r *reader) newVarnish() Answer {
	return recorded(nil, r.say("ask-new-varnish")).and(r.varnish())
}

func (r *reader) removal() Answer {
	there := r.standing(isVarnish)
	if len(there) == 0 {
		return r.layersOf(record.Use("varnish"), isVarnish)
	}
	last := there[len(there)-1]
	a := recorded(seqs(there), r.VarnishLine(), r.say("ask-test-first"))
	a.Recorded = last.Varnish.Removable != "" || slices.ContainsFunc(last.Coating.Mix, func(p record.Part) bool { m, _ := r.w.Material(p.Material, p.As); return m.Removable != "" })
	return a
}

// removed answers with what was taken off, and by whom.
func (r *reader) removed() Answer {
	a := Answer{}
	for _, x := range r.applications(func(l record.Layer) bool { return len(l.Losses) > 0 }) {
		losses, es := r.losses(x), seqs([]application{x})
		x.Losses = nil // they follow
		a = a.and(recorded(es, append([]string{r.say("ask-was", tell.Told("layer", r.words(x)), record.With("date", x.At))}, losses...)...))
	}
	a = a.andRecorded(r.happened(func(e record.Event) bool {
		b, ok := e.Body.(record.Removed)
		return ok && len(b.Layers) == 0
	}))
	if !a.Recorded {
		return open(nil, r.say("ask-nothing-removed"))
	}
	return a
}

// sizing answers with the coats of size; a sealer or adhesive below the cloth
// does the work of one and is named as what it is.
func (r *reader) sizing() Answer {
	a := coats(record.Sizing)(r)
	if a.Recorded {
		return a
	}
	if b := r.layersOf(record.Sealer, of(record.Sealer, record.Adhesive)); b.Recorded {
		b.Lines[0] = r.say("ask-no-size-coat", tell.Told("coat", b.Lines[0]))
		return b
	}
	return a
}

// paint answers with what is painted, in what and with which colours.
func (r *reader) paint() Answer {
	a := r.layersOf(record.Use("paint"), isPaint)
	if !a.Recorded {
		return a
	}
	var how []string
	for _, x := range r.standing(isPaint) {
		if x.Paint.Technique != "" {
			how = append(how, x.Paint.Technique)
		}
		if more := r.Catalogue().OtherClauses(*x.Paint, "medium", "technique", "pigments", "underdrawing", "oil_content", "mix", "wet_total", "wet_each", "note"); more != "" {
			how = append(how, more)
		}
	}
	if how != nil {
		a.Lines = append(a.Lines, r.list(how))
	}
	if p := r.pigmentsOf(isPaint); p.Recorded {
		a.Lines = append(a.Lines, r.say("ask-pigments", tell.Told("pigments", p.Lines[0])))
	}
	return a
}

func (r *reader) buildUp() Answer {
	as := r.applications(func(record.Layer) bool { return true })
	_, seq := r.cut()
	a := recorded(append([]int64{seq}, seqs(as)...), append(r.counted(r.standing(func(record.Layer) bool { return true })), r.BuildUpSentence())...)
	for _, x := range as {
		a.Lines = append(a.Lines, r.losses(x)...)
	}
	return a
}

// adhesive answers with what holds the cloth, and the cloth that it holds.
func (r *reader) adhesive() Answer {
	return coats(record.Adhesive)(r).andRecorded(r.layersOf(record.Use("cloth"), isCloth))
}
