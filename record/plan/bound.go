package plan

import (
	"math"
	"slices"
)

// The bound: for any prices of the pieces let F(x, y) be the most that a
// rectangle can be cut into by edge-to-edge cuts, however often turned and
// with as many copies of each piece as one likes. Sheets hold at most the sum
// of their F; the last one, used to the length l, at most F(l, W). If the
// pieces asked for are worth more, no plan exists. Any prices give a proof;
// good ones, found by subgradient steps, give a strong one. Prices are whole
// numbers, so the proof is exact. (Dual bounds of cutting stock: Gilmore and
// Gomory 1961, 1965; F by dynamic programming over normal patterns: Herz 1972,
// Beasley 1985. From memory.)

// bounds keeps what prices have taught about the sheets of an order.
type bounds struct {
	p      *planner
	boards []*board
	demand []int
	tables []*table
	rows   []row
	steps  int
}

// row is what prices say: the worth of all pieces, and of what each sheet can
// hold at most.
type row struct {
	value int64
	full  []int64
}

func newBounds(p *planner, boards []*board) *bounds {
	b := &bounds{p: p, boards: boards, demand: make([]int, len(p.items)), tables: make([]*table, len(boards))}
	for k, it := range p.items {
		b.demand[k] = it.Count
	}
	for i, board := range boards {
		b.tables[i] = newTable(board.items[0], b.demand, int64(board.side[0]), int64(board.side[1]), p.effort.table)
	}
	return b
}

// start are the first prices: the areas, so that a sheet is worth about 2^40.
func (b *bounds) start() []float64 {
	var most int64
	for _, board := range b.boards {
		most = max(most, board.area)
	}
	price := make([]float64, len(b.demand))
	for k, it := range b.p.items {
		price[k] = float64(it.Height*it.Width) * float64(1<<40) / float64(most)
	}
	return price
}

// try works out what prices say of the sheets that are asked for, n of each.
func (b *bounds) try(price []float64, n []int) (row, []int64) {
	whole := make([]int64, len(price))
	r := row{full: make([]int64, len(b.boards))}
	best := 0.0 // price of an area
	for k, it := range b.p.items {
		whole[k] = int64(price[k])
		r.value += whole[k] * int64(b.demand[k])
		best = max(best, float64(whole[k])/float64(it.Height*it.Width))
	}
	for i, t := range b.tables {
		switch {
		case n[i] == 0:
		case t == nil: // no grid: all of it at the best price
			r.full[i] = int64(math.Ceil(best * float64(b.boards[i].area) * (1 + 1e-9)))
		default:
			t.fill(whole)
			r.full[i] = t.f[len(t.f)-1]
		}
	}
	return r, whole
}

// rules reports that prices rule out n sheets of each kind.
func (r row) rules(n []int) bool {
	var hold int64
	for i, c := range n {
		hold += int64(c) * r.full[i]
	}
	return hold < r.value
}

// known reports that n sheets of each kind are already known to be too few.
func (b *bounds) known(n []int) bool {
	for _, r := range b.rows {
		if r.rules(n) {
			return true
		}
	}
	return false
}

// disproves looks for prices that show that n sheets of each kind are too few,
// and keeps all that it tried for other sets.
func (b *bounds) disproves(n []int) bool {
	if b.known(n) {
		return true
	}
	all := make([]int, len(n))
	for i := range all {
		all[i] = 1
	}
	price := b.start()
	for step := 0; step < b.p.effort.disproof && b.steps < 5*b.p.effort.disproof; step++ {
		b.steps++
		r, whole := b.try(price, all)
		b.rows = append(b.rows, r)
		if r.rules(n) {
			return true
		}
		b.improve(price, b.copies(whole, n), step)
	}
	return false
}

// copies counts the pieces in the best cuts of n full sheets of each kind.
func (b *bounds) copies(whole []int64, n []int) []float64 {
	copies := make([]float64, len(whole))
	for i, c := range n {
		if t := b.tables[i]; t != nil && c > 0 {
			t.count(copies, whole, len(t.x)-1, len(t.y)-1, float64(c))
		}
	}
	return copies
}

// improve raises the prices of what the best cuts leave out and lowers those
// of what they hold too often.
func (b *bounds) improve(price, copies []float64, step int) {
	var most float64
	for k, d := range b.demand {
		most = max(most, math.Abs(float64(d)-copies[k])/float64(d))
	}
	for k, d := range b.demand {
		if most > 0 {
			by := (float64(d) - copies[k]) / float64(d) / most
			price[k] *= 1 + by*0.1/(1+float64(step)/8)
		}
	}
}

// used proves how much area any plan uses up on n sheets of each kind, the
// last of which is used only to a cut of full breadth, until nothing better
// than goal can be left.
func (b *bounds) used(n []int, last int, goal int64) int64 {
	board, t := b.boards[last], b.tables[last]
	var others int64
	for i, c := range n {
		others += int64(c) * b.boards[i].area
	}
	others -= board.area
	out := max(b.p.area, others)
	if t == nil {
		return out
	}
	var least [2]int64
	for way := range 2 {
		if way == 1 && b.p.o.across {
			break
		}
		price := b.start()
		for step := range b.p.effort.prices {
			if out >= goal {
				return out
			}
			r, whole := b.try(price, n)
			need := r.value + r.full[last]
			for i, c := range n {
				need -= int64(c) * r.full[i]
			}
			at := t.reach(need)
			least[0] = max(least[0], t.x[at[0]]*t.unit)
			least[1] = max(least[1], t.y[at[1]]*t.unit)
			used := least[0] * int64(board.side[1])
			if !b.p.o.across {
				used = min(used, least[1]*int64(board.side[0]))
			}
			out = max(out, others+used)
			rest := slices.Clone(n)
			rest[last]--
			copies := b.copies(whole, rest)
			end := [2]int{len(t.x) - 1, len(t.y) - 1}
			end[way] = at[way]
			t.count(copies, whole, end[0], end[1], 1)
			b.improve(price, copies, step)
		}
	}
	return out
}
