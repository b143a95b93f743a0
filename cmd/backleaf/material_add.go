package main

import (
	"cmp"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/shelf"
	"backleaf/record/studio/typed"
)

func materialAdd(a *app) {
	var m record.Material
	var like string
	o := &moment{terms: keysOf(&m.Key)}
	span := func(field string, from, to *record.Duration) func(*typed.Reader, ...string) {
		return func(r *typed.Reader, t ...string) {
			first, last := typed.Span(t[0])
			r.Into(field, from, first)
			r.Into(field, to, last)
		}
	}
	a.acts("material add", o, func(d *doing) (w studio.Written, err error) {
		mixed := false
		if like != "" {
			if m, mixed, err = shelf.Like(m, like); err != nil {
				return w, err
			}
		}
		if m.Name = cmp.Or(m.Name, string(m.Key)); len(m.Uses) == 0 {
			return w, usage("one or more of "+listed("Use"), "what is it for? say --use")
		}
		d.after = func() error { // what was read, with its units
			t := a.table()
			rows(t, a.catalogue(), a.catalogue().Rows(m))
			return t.Done()
		}
		if w, err = d.perform(m); mixed && err == nil {
			w.Warn("mixed-basis", record.With("like", like), record.With("basis", m.Basis), record.With("entry", record.EntryRef(w.Entries[0].Seq)))
		}
		return w, err
	}, o.when(), flags{"like": &like, "name": &m.Name, "producer": &m.Maker, "basis": &m.Basis, "use": &m.Uses, "binder": &m.Binder,
		"waterborne": &m.Waterborne, "solids-mass": &m.SolidsMass, "solids-volume": &m.SolidsVolume, "density": &m.Density,
		"touch-dry": span("touch-dry", &m.TouchDryFrom, &m.TouchDryTo), "cure": span("cure", &m.CureFrom, &m.CureTo), "film-above": &m.MinFilm,
		"thinner": &m.Thinner, "removable": &m.Removable, "removed-with": &m.RemovedWith, "resin": &m.Resin, "gloss": &m.Gloss, "pigment": &m.Pigments,
		"hazard": &m.Hazard, "toxic-dry": &m.Toxic, "board": &m.Board.Kind, "species": &m.Board.Species, "plies": &m.Board.Plies,
		"thickness": &m.Board.Thickness, "board-density": &m.Board.Density, "core-veneer": &m.Board.CoreVeneer, "formaldehyde": &m.Board.Formaldehyde,
		"fibre": &m.Cloth.Fibre, "weave": &m.Cloth.Weave, "warp": &m.Cloth.Warp, "weft": &m.Cloth.Weft, "weight": &m.Cloth.Mass,
		"width": &m.Cloth.Width, "sized": &m.Cloth.Sized})
}
