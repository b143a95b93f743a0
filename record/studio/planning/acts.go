package planning

import (
	"slices"
	"time"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/plan"
	"backleaf/record/studio/stock"
	"backleaf/record/tell"
)

// What one panel takes at the bench. From memory.
const (
	aFace   = 2 * time.Minute // to coat a face; the edges take half of it
	laying  = 6 * time.Minute
	trimmed = 2 * time.Minute
	sanded  = 2 * time.Minute
)

// products numbers the materials of a recipe.
type products struct {
	w    *record.Workshop
	keys []record.Key
	list []plan.Product
}

func (p *products) of(k record.Key) int {
	if i := slices.Index(p.keys, k); i >= 0 {
		return i
	}
	p.keys, p.list = append(p.keys, k), append(p.list, stock.Product(p.w, k))
	return len(p.keys) - 1
}

// acts turns the steps of a recipe into acts, with the times of drying in the
// air expected.
func (p *products) acts(steps []Step, wish Wish, c *tell.Catalogue) []plan.Act {
	var out []plan.Act
	for i, s := range steps {
		a := plan.Act{Do: s.Do, Name: s.Name(c), Faces: faces(s.Faces), Extra: faces(s.Extra), PerSquare: s.Spread, NotWater: s.Thinner != "", Oversize: micrometers(s.Oversize)}
		if a.Oversize == 0 {
			a.Oversize = micrometers(wish.Oversize)
		}
		a.Thinned, _ = s.Thinned.Millipercent()
		for _, part := range s.Mix {
			a.Mix = append(a.Mix, plan.Portion{Product: p.of(part.Material), Parts: part.Parts})
		}
		switch s.Do {
		case plan.Trimming:
			a.Needs, a.Takes = plan.Tacky, trimmed
		case plan.Sanding:
			a.Needs, a.Takes = plan.Cured, sanded
		case plan.LayingCloth:
			a.Needs, a.Takes = plan.TouchDry, laying
		default:
			for _, f := range s.Faces {
				if a.Takes += aFace; f == record.Edges {
					a.Takes -= aFace / 2
				}
			}
			a.Needs = plan.TouchDry
			// A ground waits until what is below it has cured, unless it answers one
			// on the other side: so says the list of what is due.
			if s.Purpose == record.Ground && !answers(steps[:i], s) {
				a.Needs = plan.Cured
			}
		}
		if i == 0 {
			a.Needs = plan.Nothing
		}
		if s.Do == plan.Coating || s.Do == plan.LayingCloth {
			a.Dry, a.Cure = p.windows(s, wish)
		}
		out = append(out, a)
	}
	return out
}

// Name says what a step does.
func (s Step) Name(c *tell.Catalogue) string {
	purpose := string(c.Lines.T("coat"))
	if s.Purpose != "" {
		purpose = c.Word(s.Purpose)
	}
	return c.Plan.Work[string(s.Do)].With("purpose", purpose, "faces", c.Word(s.Faces))
}

// answers reports that a coat goes on the side that lacks one.
func answers(before []Step, s Step) bool {
	lead := 0 // of the front over the back
	count := func(s Step) int {
		n := 0
		if slices.Contains(s.Faces, record.Front) {
			n++
		}
		if slices.Contains(s.Faces, record.Back) {
			n--
		}
		return n
	}
	for _, b := range before {
		if b.Do == plan.Coating || b.Do == plan.LayingCloth {
			lead += count(b)
		}
	}
	return lead*count(s) < 0
}

// windows asks what is due after a coat of the mix in the air expected, so that
// a plan and the list of what is due reckon alike. What cannot be told is not
// known.
func (p *products) windows(s Step, wish Wish) (dry, cure plan.Window) {
	at := record.Moment(wish.Start)
	var shelf []record.Entry
	add := func(es []record.Entry, panels []record.Number, b record.Body) []record.Entry {
		return append(slices.Clip(es), record.Entry{Seq: int64(len(es) + 1), At: at, Written: at, Panels: panels, Body: b})
	}
	for _, part := range s.Mix {
		m, _ := p.w.MaterialNow(part.Material)
		shelf = add(shelf, nil, m)
	}
	panel := []record.Number{"PLAN"}
	c := record.Coating{Mix: s.Mix, Thinned: s.Thinned, Thinner: s.Thinner, Temperature: wish.Temperature, Humidity: wish.Humidity}
	coated := add(add(shelf, panel, record.Cut{Batch: "plan"}), panel, record.Coat{Purpose: record.Sealer, Faces: record.Faces, Coating: c})
	clothed := add(coated, panel, record.ClothLaid{Faces: []record.Face{record.Front, record.Back}, Coating: c})
	return due(coated, check.TaskLay, wish.Start), due(clothed, check.TaskSand, wish.Start)
}

// due is the window of a task after entries, counted from a moment.
func due(entries []record.Entry, task check.Task, at time.Time) plan.Window {
	w, err := record.Fold(entries)
	if err != nil {
		return plan.Window{}
	}
	for _, st := range check.Due(w, at) {
		if st.Task == task && !st.From.IsZero() {
			safe := st.Safe
			if safe.IsZero() {
				safe = st.From
			}
			return plan.Window{From: st.From.Sub(at), Safe: safe.Sub(at), Known: true}
		}
	}
	return plan.Window{}
}
