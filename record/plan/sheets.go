package plan

import (
	"cmp"
	"fmt"
	"slices"
)

// Prices of what is no board, as area in µm².
const (
	settingArea   = 10_000_000_000 // a change of setting: 100 cm²
	thirdTurnArea = 60_000_000_000 // what a third turn must save: 600 cm²
)

// effort bounds the work on an order. What is counted is about the same on
// every machine; no clock is read.
type effort struct {
	width    int // states kept at each number of pieces
	states   int // looked at for one guide, about: wide orders get fewer kept
	table    int // steps for one table of the bound, about
	prices   int // tables, for each way of the last cuts
	disproof int // tables, for a set of sheets on which no plan was found
}

var full = effort{width: 500, states: 4_000_000, table: 4_000_000, prices: 40, disproof: 24}

const (
	maxSets  = 200_000 // sets of sheets looked at
	maxTries = 30      // of them searched one after the other; then in leaps
)

// planner is an order made ready for the search: lengths in units, one cut
// added to each piece and to each sheet, so that the saw has no breadth in
// anything that follows.
type planner struct {
	o     Order
	unit  int64 // µm
	items []Piece
	area  int64 // of all pieces, units²
	effort
}

func newPlanner(o Order) *planner {
	p := &planner{o: o, effort: full}
	if o.effort != (effort{}) {
		p.effort = o.effort
	}
	for _, s := range o.Sheets {
		p.unit = gcd(p.unit, gcd(s.Length-2*s.Trim+o.Kerf, s.Width-2*s.Trim+o.Kerf))
	}
	for _, it := range o.Pieces {
		p.unit = gcd(p.unit, gcd(it.Height+o.Kerf, it.Width+o.Kerf))
	}
	for _, it := range o.Pieces {
		it.Height, it.Width = p.units(it.Height), p.units(it.Width)
		p.items = append(p.items, it)
		p.area += it.Height * it.Width * int64(it.Count)
	}
	return p
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func (p *planner) units(um int64) int64 { return (um + p.o.Kerf) / p.unit }

// board makes a sheet ready: its sides, and how each piece may lie on it.
func (p *planner) board(sheet int) *board {
	s := p.o.Sheets[sheet]
	b := &board{sheet: sheet, side: [2]int32{int32(p.units(s.Length - 2*s.Trim)), int32(p.units(s.Width - 2*s.Trim))}}
	b.area = int64(b.side[0]) * int64(b.side[1])
	for k, it := range p.items {
		for _, upright := range [2]bool{true, false} {
			l, w := int32(it.Height), int32(it.Width)
			if !upright {
				l, w = w, l
			}
			if !it.lies(s, upright) || l > b.side[0] || w > b.side[1] || !upright && l == w && it.lies(s, true) {
				continue
			}
			b.items[0] = append(b.items[0], item{k, l, w, upright})
			b.items[1] = append(b.items[1], item{k, w, l, upright})
		}
	}
	return b
}

// outcome is a plan under comparison. Areas are units².
type outcome struct {
	layouts []layout
	turns   Turns
	sheets  int
	used    int64 // full sheets, and the last to its last strip
	charged int64 // the same with offcuts at half their area
	set     int   // changes of setting
	cuts    int
	third   Earned

	counts []int // of each kind of sheet
	proven bool  // every cheaper set of sheets is proven to be too small
	least  int64 // area that any plan with these sheets uses up
}

func (a *outcome) worth(setting int64) int64 { return a.charged + setting*int64(a.set) }

// better reports that a is to be preferred.
func (p *planner) better(a, b *outcome) bool {
	if b == nil {
		return true
	}
	w := p.setting()
	return cmp.Or(cmp.Compare(a.worth(w), b.worth(w)), a.cuts-b.cuts) < 0
}

func (p *planner) setting() int64 {
	if p.o.setting < 0 {
		return 0
	}
	return cmp.Or(p.o.setting, settingArea) / (p.unit * p.unit)
}

// search tries to cut everything from a set of sheets.
func (p *planner) search(sheets []*board, turns Turns) *outcome {
	s := &search{boards: sheets, turns: turns, area: p.area, setting: p.setting(), slack: area(sheets) - p.area, across: p.o.across}
	for _, it := range p.items {
		s.demand = append(s.demand, uint16(it.Count))
		s.pieces += it.Count
	}
	s.width = min(p.width, max(20, p.states/(s.pieces*len(p.items)*8)))
	var best *outcome
	s.limit = 1 << 62
	for _, g := range guides {
		s.run(g, func(s *search, end int32) {
			out := p.outcome(s, end)
			if p.better(out, best) {
				best = out
				s.limit = out.used + s.setting*int64(out.set)
			}
		})
	}
	return best
}

func (p *planner) outcome(s *search, end int32) *outcome {
	out := &outcome{layouts: s.trace(end), turns: s.turns}
	out.sheets = len(out.layouts)
	for i, l := range out.layouts {
		b := s.boards[i]
		u, v := b.sides(l.across)
		used := b.area
		if i == len(out.layouts)-1 {
			used = int64(l.reach()) * int64(v)
		}
		out.used += used
		if p.o.Sheets[l.sheet].Offcut {
			used /= 2
		}
		out.charged += used
		set, cuts := l.effort(u, v)
		out.set += set
		out.cuts += cuts
	}
	return out
}

// solve finds the cheapest set of sheets that a plan is found for.
func (p *planner) solve() (*outcome, error) {
	boards := make([]*board, len(p.o.Sheets))
	var offcuts []int
	for i, s := range p.o.Sheets {
		boards[i] = p.board(i)
		if s.Offcut && s.Count > 0 && len(boards[i].items[0]) > 0 {
			offcuts = append(offcuts, i)
		}
	}
	b := newBounds(p, boards)
	ways := offcutSets(p.o, offcuts)
	q, tries, proven, leap := newSets(p.o), 0, true, int64(0)
	for range maxSets {
		set, ok := q.next()
		if !ok {
			return nil, fmt.Errorf("cannot plan: the sheets at hand are too few")
		}
		if set.price < leap {
			proven = false
			continue
		}
		var best *outcome
		var vain [][]int
		for _, way := range ways {
			n := make([]int, len(boards))
			for k, c := range set.counts {
				n[q.kinds[k]] = c
			}
			for k, c := range way {
				n[offcuts[k]] = c
			}
			take := p.take(boards, n)
			if area(take) < p.area || b.known(n) {
				continue
			}
			tries++
			out := p.turned(take)
			if out == nil {
				vain = append(vain, n)
			} else if p.better(out, best) {
				out.counts, best = n, out
			}
		}
		if best != nil {
			best.proven = proven
			best.least = b.used(best.counts, best.layouts[len(best.layouts)-1].sheet, best.used)
			return best, nil
		}
		for _, n := range vain {
			proven = b.disproves(n) && proven
		}
		if tries > maxTries && len(vain) > 0 {
			leap = set.price + set.price/32
		}
	}
	return nil, fmt.Errorf("cannot plan: more than %d sets of sheets to look at; ask for fewer pieces or kinds of sheets at once", maxSets)
}

// take lists the boards of a set in the order in which they are opened:
// offcuts, small, large.
func (p *planner) take(boards []*board, n []int) []*board {
	var out []*board
	for i, c := range n {
		for range c {
			out = append(out, boards[i])
		}
	}
	rank := func(b *board) int {
		if p.o.Sheets[b.sheet].Offcut {
			return 0
		}
		return 1
	}
	slices.SortStableFunc(out, func(a, b *board) int {
		return cmp.Or(rank(a)-rank(b), cmp.Compare(a.area, b.area))
	})
	return out
}

func area(boards []*board) (sum int64) {
	for _, b := range boards {
		sum += b.area
	}
	return sum
}

// turned plans with two turns and with three, which must earn their keep.
func (p *planner) turned(take []*board) *outcome {
	if p.o.Turns != 0 {
		return p.search(take, p.o.Turns)
	}
	two, three := p.search(take, 2), p.search(take, 3)
	switch {
	case three == nil:
		return two
	case two == nil:
		three.third.Sheet = true
		return three
	case two.charged-three.charged >= thirdTurnArea/(p.unit*p.unit):
		three.third.Area = p.area2(two.charged - three.charged)
		return three
	}
	return two
}
