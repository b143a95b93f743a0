package planning

import (
	"slices"

	"backleaf/record"
	"backleaf/record/plan"
	"backleaf/record/studio/stock"
)

// Step is one thing that a recipe does to a panel.
type Step struct {
	Do       plan.Work
	Purpose  record.Purpose
	Faces    []record.Face
	Extra    []record.Face
	Mix      []record.Part // materials in parts; of lots nothing is said
	Thinned  record.Percent
	Thinner  string
	Spread   plan.Amount // on a square metre
	Cloth    record.Key  // material
	Oversize record.Length
}

// FromPanel is the recipe by which a panel was made, up to its first paint, with
// the amounts that were used, if the workshop holds the panels that shared them.
func FromPanel(w *record.Workshop, p *record.Panel) []Step { return fromPanel(w, p, true) }

// fromPanel tells of faces given extra and of mixes as they were laid, or, as
// recipes of the shelf do, counts the share of extra faces to the others and
// leaves out the thinner.
func fromPanel(w *record.Workshop, p *record.Panel, whole bool) []Step {
	var out []Step
	for _, e := range p.Events {
		var s Step
		var c record.Coating
		switch b := e.Body.(type) {
		case record.Coat:
			s, c = Step{Do: plan.Coating, Purpose: b.Purpose, Faces: b.Faces, Extra: b.Extra}, b.Coating
		case record.ClothLaid:
			s, c = Step{Do: plan.LayingCloth, Purpose: record.Adhesive, Faces: b.Faces, Cloth: b.Cloth, Oversize: b.Oversize}, b.Coating
			if lot, ok := w.Lot(b.ClothLot); ok && s.Cloth == "" {
				s.Cloth = lot.Material
			}
		case record.Trimmed:
			s = Step{Do: plan.Trimming}
		case record.Sanded:
			s = Step{Do: plan.Sanding, Faces: b.Faces}
		case record.PaintLayer, record.Varnish:
			return out
		default:
			continue
		}
		for _, part := range c.Mix {
			s.Mix = append(s.Mix, record.Part{Parts: part.Parts, Material: part.Material})
		}
		if !whole {
			s.Extra = nil
		}
		s.Thinned, s.Thinner = c.Thinned, c.Thinner
		s.Spread = spreadOf(w, e, s, c)
		if !whole {
			s.Spread = s.unthinned(w)
		}
		out = append(out, s)
	}
	return out
}

// spreadOf is what one entry laid on a square metre, faces given extra counting
// twice; nothing where an amount or a size is not recorded.
func spreadOf(w *record.Workshop, e record.Event, s Step, c record.Coating) plan.Amount {
	var panels []plan.Panel
	for _, n := range e.Sharing {
		p := w.Panel(n)
		if p == nil {
			return plan.Amount{}
		}
		if _, stands := p.Event(e.Seq); !stands {
			continue
		}
		h, ok1 := p.Size().Height.Micrometers()
		b, ok2 := p.Size().Width.Micrometers()
		if !ok1 || !ok2 {
			return plan.Amount{}
		}
		panels = append(panels, plan.Panel{Height: h, Width: b, Thickness: thickness(w, p.Size(), p.Cut().Board, p.Cut().BoardAs), Count: 1})
	}
	area, ok := plan.Spread(panels, plan.Act{Faces: faces(s.Faces), Extra: faces(s.Extra)})
	if !ok || area == 0 {
		return plan.Amount{}
	}
	mg, ul := c.Wet(len(panels))
	return plan.Amount{Milligrams: mg / area * 1e6, Microliters: ul / area * 1e6}
}

// unthinned is the spread of a step without its thinner; nothing where the
// densities that this takes are not known.
func (s Step) unthinned(w *record.Workshop) plan.Amount {
	a := plan.Act{NotWater: s.Thinner != ""}
	if a.Thinned, _ = s.Thinned.Millipercent(); a.Thinned == 0 || len(s.Mix) != 1 || s.Spread == (plan.Amount{}) {
		return s.Spread
	}
	a.Mix = []plan.Portion{{Parts: 1}}
	_, parts, why := a.Split(s.Spread, []plan.Product{stock.Product(w, s.Mix[0].Material)})
	if why != "" {
		return plan.Amount{}
	}
	if s.Spread.Milligrams == 0 {
		return plan.Amount{Microliters: parts[0].Microliters}
	}
	return plan.Amount{Milligrams: parts[0].Milligrams}
}

// thickness of a board in µm: of the panel, or of its material; 0 if unknown.
func thickness(w *record.Workshop, size record.Size, board record.Key, as []int64) int64 {
	if um, ok := size.Depth.Micrometers(); ok {
		return um
	}
	m, _ := w.Material(board, as)
	return micrometers(m.Board.Thickness)
}

func faces(fs []record.Face) (out []plan.Face) {
	for _, f := range fs {
		out = append(out, plan.Face(f))
	}
	return out
}

// whole adds what a recipe of coats and cloth leaves unsaid: cloth is trimmed
// after it is laid, and what is laid under the first ground is sanded.
func whole(steps []Step) []Step {
	var out []Step
	for i, s := range steps {
		laid := i > 0 && slices.ContainsFunc(steps[:i], func(s Step) bool { return s.Do == plan.LayingCloth })
		if s.Purpose == record.Ground && laid && !slices.ContainsFunc(out, func(s Step) bool { return s.Do == plan.Sanding || s.Purpose == record.Ground }) {
			out = append(out, Step{Do: plan.Sanding, Faces: []record.Face{record.Front}})
		}
		if s.Do == plan.Trimming && !laid {
			continue // nothing is there to trim
		}
		out = append(out, s)
		if s.Do == plan.LayingCloth && !slices.ContainsFunc(steps[i:], func(s Step) bool { return s.Do == plan.Trimming }) {
			out = append(out, Step{Do: plan.Trimming})
		}
	}
	return out
}

// AsMade wishes for panels as others were made: their sizes, board, cloth and
// recipe, that of the first of them.
func AsMade(wish *Wish, w *record.Workshop, ns []record.Number) {
	wish.Panels = Like(w, ns)
	first := w.Panel(ns[0])
	wish.Recipe = FromPanel(w, first)
	if wish.Board == "" {
		if wish.Board = first.Cut().Lot; wish.Board == "" || wish.Board == record.Unknown {
			wish.Board = first.Cut().Board
		}
	}
	wish.clothOf()
}

// ByRecipe wishes for panels made by a recipe of the shelf.
func ByRecipe(wish *Wish, w *record.Workshop, k record.Key) error {
	r, err := Recipe(w, k)
	if err != nil {
		return err
	}
	wish.Recipe = FromRecipe(r)
	wish.clothOf()
	return nil
}

// clothOf takes the cloth of the recipe where none is named.
func (wish *Wish) clothOf() {
	for _, s := range wish.Recipe {
		if wish.Cloth == "" && s.Do == plan.LayingCloth {
			wish.Cloth = s.Cloth
		}
	}
}
