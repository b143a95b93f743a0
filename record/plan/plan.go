package plan

import (
	"cmp"
	"slices"
)

// Plan is how an order is cut.
type Plan struct {
	Order  Order
	Sheets []Cut // in the order in which they are sawn
	Turns  Turns
	Third  Earned
	// Used is the board used up, each cut's kerf with the piece before it: whole
	// sheets, and the last to its last strip.
	Used     int64
	Settings int // how often the fence or stop is set
	Cuts     int
	Proof    Proof
}

// Earned says what a third turn earned, where one was taken because it did.
type Earned struct {
	Sheet bool  // no plan with two turns was found for these sheets
	Area  int64 // else how much less board is used up
}

// Proof says what is proven of a plan.
type Proof struct {
	Sheets bool // no cheaper set of sheets will do
	// UsedLeast is what any edge-to-edge plan with these sheets uses up, however
	// often it turns, if its rest is one strip of full breadth on the last.
	UsedLeast int64
}

// Cut is one sheet as it is cut. The reference corner is (0, 0) of the trimmed
// sheet, x along the sheet's length.
type Cut struct {
	Sheet         int // in Order.Sheets
	Length, Width int64
	Across        bool // first cuts across the length; else along it
	Strips        []Strip
}

// Strip is what a first cut takes off: Size wide, as long as the sheet is on
// its other side.
type Strip struct {
	Size   int64
	Blocks []Block
}

// Block is what a second cut takes off a strip: Size of the strip's length.
type Block struct {
	Size   int64
	Pieces []Laid
}

// Laid is a piece in a block. Number counts the pieces of a plan from 1 in the
// order in which they lie.
type Laid struct {
	Number  int
	Piece   int  // in Order.Pieces
	Upright bool // its height runs along the sheet's length
}

// Sheets plans the cutting of an order.
func Sheets(o Order) (Plan, error) {
	if err := o.check(); err != nil {
		return Plan{}, err
	}
	p := newPlanner(o)
	out, err := p.solve()
	if err != nil {
		return Plan{}, err
	}
	return p.plan(out), nil
}

func (p *planner) plan(out *outcome) Plan {
	plan := Plan{Order: p.o, Turns: out.turns, Used: p.area2(out.used), Settings: out.set, Cuts: out.cuts, Third: out.third, Proof: Proof{out.proven, p.area2(out.least)}}
	n := 0
	for _, l := range out.layouts {
		plan.Sheets = append(plan.Sheets, p.cut(l, &n))
	}
	return plan
}

func (p *planner) area2(units int64) int64 { return units * p.unit * p.unit }

// length turns units, which include a cut, into what is seen on the board.
func (p *planner) length(units int32) int64 { return int64(units)*p.unit - p.o.Kerf }

// cut turns a layout into a sheet as a person cuts it: large before small, and
// equal sizes one after the other.
func (p *planner) cut(l layout, n *int) Cut {
	s := p.o.Sheets[l.sheet]
	c := Cut{Sheet: l.sheet, Length: s.Length - 2*s.Trim, Width: s.Width - 2*s.Trim, Across: l.across}
	for _, st := range l.strips {
		for _, b := range st.blocks {
			slices.SortStableFunc(b.items, func(a, b item) int { return cmp.Or(cmp.Compare(b.u, a.u), cmp.Compare(b.v, a.v), a.kind-b.kind) })
		}
		slices.SortStableFunc(st.blocks, compareBlocks)
	}
	slices.SortStableFunc(l.strips, func(a, b strip) int {
		return cmp.Or(cmp.Compare(b.size, a.size), slices.CompareFunc(a.blocks, b.blocks, compareBlocks))
	})
	for _, st := range l.strips {
		strip := Strip{Size: p.length(st.size)}
		for _, b := range st.blocks {
			block := Block{Size: p.length(b.size)}
			for _, it := range b.items {
				*n++
				block.Pieces = append(block.Pieces, Laid{*n, it.kind, it.upright})
			}
			strip.Blocks = append(strip.Blocks, block)
		}
		c.Strips = append(c.Strips, strip)
	}
	return c
}

func compareBlocks(a, b block) int {
	return cmp.Or(cmp.Compare(b.size, a.size), cmp.Compare(b.height(), a.height()), slices.CompareFunc(a.items, b.items, func(a, b item) int { return cmp.Or(cmp.Compare(b.u, a.u), a.kind-b.kind) }))
}
