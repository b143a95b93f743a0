package bench

import (
	"backleaf/record"
	"backleaf/record/check"
)

// Propose is what a step that is due would be written down as: as its like was
// done last, on the faces it is due on. What is measured each time anew, the
// air and a film, is left out; so is an amount of another number of panels.
// It is nil for a step that is nothing to be done to the board.
func Propose(w *record.Workshop, task check.Task, said record.Said, entry int64, panels int) record.Body {
	switch task {
	case check.TaskSeal:
		c, ok := lastOf(w, func(c record.Coat) bool { return c.Purpose == record.Sealer && len(c.Faces) == len(record.Faces) })
		if !ok {
			c.Body = record.Coat{Purpose: record.Sealer, Faces: record.Faces, Extra: []record.Face{record.Edges}}
		}
		c.Body.Coating = again(c.Body.Coating, len(c.Panels) == panels)
		return c.Body
	case check.TaskLay:
		c, ok := lastOf(w, func(record.ClothLaid) bool { return true })
		if !ok {
			c.Body.Faces = []record.Face{record.Front}
		}
		c.Body.AgainOf, c.Body.Coating = 0, again(c.Body.Coating, len(c.Panels) == panels)
		return c.Body
	case check.TaskAnswer:
		return answer(w, record.Face(said.Value("face").Text()), entry, panels)
	case check.TaskPress:
		c, _ := lastOf(w, func(record.ClothLaid) bool { return true })
		return record.Coat{Purpose: record.Adhesive, Faces: []record.Face{record.Edges}, Coating: record.Coating{Mix: c.Body.Mix}}
	case check.TaskPrime:
		c, ok := lastOf(w, func(c record.Coat) bool { return c.Purpose == record.Ground })
		if !ok {
			c.Body = record.Coat{Purpose: record.Ground, Faces: []record.Face{record.Front}}
		}
		c.Body.Coating = again(c.Body.Coating, len(c.Panels) == panels)
		return c.Body
	case check.TaskTrim:
		c, _ := lastOf(w, func(record.Trimmed) bool { return true })
		c.Body.Note = ""
		return c.Body
	case check.TaskSand:
		c, ok := lastOf(w, func(record.Sanded) bool { return true })
		if !ok {
			c.Body.Faces = []record.Face{record.Front}
		}
		c.Body.Note = ""
		return c.Body
	case check.TaskPaint:
		c, _ := lastOf(w, func(record.PaintLayer) bool { return true })
		return record.PaintLayer{Faces: []record.Face{record.Front}, Medium: c.Body.Medium}
	case check.TaskVarnish:
		c, ok := lastOf(w, func(record.Varnish) bool { return true })
		if !ok {
			c.Body.Faces = []record.Face{record.Front}
		}
		c.Body.Coating = again(c.Body.Coating, len(c.Panels) == panels)
		return c.Body
	}
	return nil
}

// answer is a coat on the face that lacks it, of what the other face was given
// or, where the same was done before, as it was done then.
func answer(w *record.Workshop, face record.Face, entry int64, panels int) record.Body {
	c, ok := lastOf(w, func(c record.Coat) bool { return len(c.Faces) == 1 && c.Faces[0] == face && c.Purpose != record.Ground })
	if ok {
		c.Body.Extra, c.Body.Coating = nil, again(c.Body.Coating, len(c.Panels) == panels)
	} else {
		c.Body = record.Coat{Purpose: record.Sealer, Faces: []record.Face{face}}
	}
	for _, p := range w.Panels {
		for _, e := range p.Events {
			if e.Seq != entry {
				continue
			}
			switch b := e.Body.(type) {
			case record.Coat:
				c.Body.Purpose, c.Body.Mix = b.Purpose, b.Mix
			case record.ClothLaid:
				c.Body.Purpose, c.Body.Mix = record.Sealer, b.Mix
			}
			return c.Body
		}
	}
	return c.Body
}

// again is a coating as it would be done once more.
func again(c record.Coating, alike bool) record.Coating {
	next := record.Coating{Mix: c.Mix, Thinned: c.Thinned, Thinner: c.Thinner, ThinnerIs: c.ThinnerIs, Tool: c.Tool, ToolIs: c.ToolIs, WetEach: c.WetEach}
	if alike {
		next.WetTotal = c.WetTotal
	}
	return next
}

// lastOf returns what was last written down of a sort, on any panel.
func lastOf[B record.Body](w *record.Workshop, fits func(B) bool) (last record.Done[B], ok bool) {
	for _, p := range w.Panels {
		for _, e := range record.Each[B](p) {
			if e.Seq > last.Seq && fits(e.Body) {
				last, ok = e, true
			}
		}
	}
	return last, ok
}
