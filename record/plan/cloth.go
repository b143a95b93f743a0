package plan

import "fmt"

// Cloth is a bolt and how it is cut: across first, then along a thread, with
// scissors that turn as often as one likes.
type Cloth struct {
	BoltWidth int64 // from selvedge to selvedge, µm
	Selvedge  int64 // left out on each side
	Squaring  int64 // lost to square the ends
	Oversize  int64 // of a piece over the panel, on each side
	// ShrinkWarp and ShrinkWeft are what is lost in washing, along and across
	// the bolt, in thousandths of a percent; zero where it is laid as it comes.
	ShrinkWarp, ShrinkWeft int64
	Step                   int64 // lengths are sold in multiples of it
}

// BoltPlan is how a length of cloth is cut, and how long it must be.
type BoltPlan struct {
	Plan   // of one sheet: the cloth as it is cut, washed if it is to be
	Cloth  Cloth
	Usable int64 // width that pieces are cut from
	Length int64 // used, without squaring
	Least  int64 // that any plan uses, however often it turns
	Need   int64 // before washing, squared ends and all
	Buy    int64 // the same, as it is sold
}

// Bolt plans the cloth for panels: each of them, as often as it is counted,
// with the oversize added on every side. The grain of a panel is the side along
// which the warp is to run.
func Bolt(panels []Piece, c Cloth) (BoltPlan, error) {
	c.Step = max(1, c.Step)
	const all = 100_000
	if c.Selvedge < 0 || c.Squaring < 0 || c.Oversize < 0 || c.ShrinkWarp < 0 || c.ShrinkWeft < 0 || c.ShrinkWarp > all/2 || c.ShrinkWeft > all/2 {
		return BoltPlan{}, fmt.Errorf("cannot plan cloth: selvedge, squaring, oversize and shrinkage must not be below nothing, and shrinkage at most 50 %%")
	}
	b := BoltPlan{Cloth: c}
	b.Usable = (c.BoltWidth - 2*c.Selvedge) * (all - c.ShrinkWeft) / all / 1000 * 1000 // whole mm: as a person measures
	if b.Usable <= 0 {
		return BoltPlan{}, fmt.Errorf("cannot plan cloth: a bolt of %s leaves nothing between its selvedges", mm(c.BoltWidth))
	}
	o := Order{across: true, setting: -1}
	var length int64
	for _, p := range panels {
		p.Height, p.Width = p.Height+2*c.Oversize, p.Width+2*c.Oversize
		length = max(length, p.Height, p.Width)
		o.Pieces = append(o.Pieces, p)
	}
	o.Sheets = []Sheet{{Name: "bolt", Length: max(1, length), Width: b.Usable, Grain: First, Count: 1}}
	if err := o.check(); err != nil {
		return BoltPlan{}, err
	}
	// As long as all pieces one after the other: more is never needed.
	length = 0
	for _, p := range o.Pieces {
		length += max(p.Height, p.Width) * int64(p.Count)
	}
	o.Sheets[0].Length = length
	p := newPlanner(o)
	bolt := []*board{p.board(0)}
	out := p.search(bolt, 3)
	if four := p.search(bolt, 4); out == nil || four != nil && p.better(four, out) {
		out = four
	}
	if out == nil {
		return BoltPlan{}, fmt.Errorf("cannot plan cloth: no way was found to lay the pieces on a bolt of %s", mm(c.BoltWidth))
	}
	b.Length = p.length(out.layouts[0].reach())
	o.Sheets[0].Length = b.Length
	p = newPlanner(o)
	least := newBounds(p, []*board{p.board(0)}).used([]int{1}, 0, p.units(b.Length)*p.units(b.Usable))
	b.Least = (p.area2(least) + b.Usable - 1) / b.Usable
	b.Plan = p.plan(out)
	b.Need = ceil((b.Length+c.Squaring)*all, all-c.ShrinkWarp)
	b.Buy = ceil(b.Need, c.Step) * c.Step
	return b, nil
}

func ceil(a, b int64) int64 { return (a + b - 1) / b }
