package planning

import (
	"strconv"
	"time"

	"backleaf/record/check"
	"backleaf/record/plan"
	"backleaf/record/plan/worksheet"
)

// View is a plan as programs read it. Lengths are micrometres, areas square
// micrometres, amounts milligrams and microlitres.
type View struct {
	Sheets    []SheetView     `json:"sheets"`
	Buy       []worksheet.Buy `json:"sheets_to_buy,omitzero"`
	Turns     plan.Turns      `json:"turns"`
	Used      int64           `json:"used_um2"`
	UsedLeast int64           `json:"used_at_least_um2"`
	Least     bool            `json:"sheets_proven_least"`
	Settings  int             `json:"settings"`
	Cuts      int             `json:"cuts"`
	Warnings  []plan.Warning  `json:"warnings,omitzero"`
	Cloth     *ClothView      `json:"cloth,omitzero"`
	Wet       []WetView       `json:"wet,omitzero"`
	Cost      []CostView      `json:"costs,omitzero"`
	Timetable []SlotView      `json:"timetable,omitzero"`
	Ready     []time.Time     `json:"ready,omitzero"`
}

// SheetView is a sheet as it is cut.
type SheetView struct {
	Sheet  string      `json:"sheet_size"`
	Length int64       `json:"length_um"`
	Width  int64       `json:"width_um"`
	Pieces []PieceView `json:"pieces"`
	Keep   []plan.Rect `json:"keep,omitzero"`
	Steps  []plan.Step `json:"steps"`
}

// PieceView is a panel where it lies, from the reference corner.
type PieceView struct {
	Number string `json:"number"`
	plan.Rect
	Strip int `json:"strip"`
}

// ClothView is the cloth to buy, and how it is cut.
type ClothView struct {
	Usable int64     `json:"usable_width_um"`
	Length int64     `json:"length_um"`
	Least  int64     `json:"length_at_least_um"`
	Need   int64     `json:"need_um"`
	Buy    int64     `json:"buy_um"`
	Cut    SheetView `json:"cut"`
}

// WetView is what is wanted of one product.
type WetView struct {
	Product string          `json:"product"`
	Laid    plan.Amount     `json:"laid"`
	Taken   plan.Amount     `json:"taken"`
	From    map[string]Left `json:"taken_from,omitzero"`
	Buy     plan.Amount     `json:"buy,omitzero"`
	Open    plan.Missing    `json:"incomplete,omitzero"` // why there is more to it
}

// Left is what is taken from a lot and what is left in it.
type Left struct {
	Taken plan.Amount `json:"taken"`
	Left  plan.Amount `json:"left"`
}

// CostView is one line of the cost.
type CostView struct {
	What  string     `json:"what"`
	Lot   string     `json:"lot,omitzero"`
	Price plan.Price `json:"price,omitzero"`
}

// SlotView is one act of the timetable.
type SlotView struct {
	Act   string    `json:"act"`
	Batch string    `json:"batch"`
	Start time.Time `json:"start"`
	End   time.Time `json:"end"`
	From  time.Time `json:"not_before"`
	Safe  time.Time `json:"safe_by"`
	Until time.Time `json:"until,omitzero"`
	Late  bool      `json:"late,omitzero"`
}

// View returns the plan for programs.
func (d *Day) View() View {
	j := d.Job
	v := View{Buy: j.ToBuy(), Turns: j.Plan.Turns, Used: j.Plan.Used, UsedLeast: j.Plan.Proof.UsedLeast, Least: j.Plan.Proof.Sheets, Settings: j.Plan.Settings, Cuts: j.Plan.Cuts, Warnings: j.Plan.Warnings()}
	for i := range j.Plan.Sheets {
		v.Sheets = append(v.Sheets, sheetView(j.Plan, i, j.Names))
	}
	if b := j.Cloth; b != nil {
		v.Cloth = &ClothView{b.Usable, b.Length, b.Least, b.Need, b.Buy, sheetView(b.Plan, 0, nil)}
	}
	if j.Wet != nil {
		for _, n := range j.Wet.Products {
			w := WetView{j.Products[n.Product].Name, n.Laid, n.Taken, map[string]Left{}, n.Buy, n.Why}
			for _, t := range n.From {
				w.From[j.Tins[t.Tin].Name] = Left{t.Taken, t.Left}
			}
			v.Wet = append(v.Wet, w)
		}
	}
	for _, l := range j.Costs {
		v.Cost = append(v.Cost, CostView{l.What, l.Lot, l.Price})
	}
	if j.Table != nil {
		for _, s := range j.Table.Slots {
			v.Timetable = append(v.Timetable, SlotView{j.Batches[s.Batch].Acts[s.Act].Name, j.BatchName(s.Batch), s.Start, s.End, s.From, s.Safe, s.Until, s.Late})
		}
		v.Ready = j.Table.Ready
	}
	return v
}

func sheetView(p plan.Plan, sheet int, names []string) SheetView {
	c := p.Sheets[sheet]
	v := SheetView{Sheet: p.Order.Sheets[c.Sheet].Name, Length: c.Length, Width: c.Width, Steps: p.Steps(sheet)}
	for _, part := range p.Parts(sheet) {
		switch {
		case part.Number > 0:
			name := strconv.Itoa(part.Number)
			if part.Number <= len(names) {
				name = names[part.Number-1]
			}
			v.Pieces = append(v.Pieces, PieceView{name, part.Rect, part.Strip})
		case part.Keep:
			v.Keep = append(v.Keep, part.Rect)
		}
	}
	return v
}

// Calendar writes the timetable for a phone, like that of what is due.
func (d *Day) Calendar(stamp time.Time) []byte {
	if d.Job.Table == nil {
		return nil
	}
	var steps []check.Step
	words := map[int64][2]string{}
	for i, s := range d.Job.Table.Slots {
		entry := int64(i + 1)
		act, batch := d.Job.Batches[s.Batch].Acts[s.Act].Name, d.Job.BatchName(s.Batch)
		words[entry] = [2]string{act + ": " + batch, d.Job.Title}
		steps = append(steps, check.Step{Task: check.Task(act + d.Job.Title), Entry: entry, From: s.Start, Safe: s.End})
	}
	return check.Calendar(steps, stamp, func(s check.Step) (string, string) { return words[s.Entry][0], words[s.Entry][1] })
}
