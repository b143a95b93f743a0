package plan

import (
	"backleaf/record/toolcheck"
	"fmt"
	"math/rand/v2"
	"runtime"
	"slices"
	"sync"
	"testing"
)

// A placed is a piece on a sheet as a person would measure it, from the
// reference corner of the trimmed sheet.
type placed struct{ x, y, l, w int64 }

// checkPlan holds a plan against the order by measuring what lies on the
// sheets. It shares no code with the search and knows nothing of strips.
func checkPlan(o Order, p Plan) error {
	made := make([]int, len(o.Pieces))
	taken := make([]int, len(o.Sheets))
	numbers := map[int]bool{}
	for i, c := range p.Sheets {
		s := o.Sheets[c.Sheet]
		taken[c.Sheet]++
		if c.Length != s.Length-2*s.Trim || c.Width != s.Width-2*s.Trim {
			return fmt.Errorf("sheet %d is %d x %d", i, c.Length, c.Width)
		}
		var ps []placed
		var area int64
		for _, part := range p.Parts(i) {
			area += part.Length * part.Width
			if part.Number == 0 {
				continue
			}
			if numbers[part.Number] {
				return fmt.Errorf("number %d twice", part.Number)
			}
			numbers[part.Number] = true
			made[part.Piece]++
			want := o.Pieces[part.Piece]
			l, w := want.Height, want.Width
			if !part.Upright {
				l, w = w, l
			}
			if part.Length != l || part.Width != w {
				return fmt.Errorf("piece %d is %d x %d", part.Number, part.Length, part.Width)
			}
			// The grain of a piece along its height lies along the sheet's length if it is upright.
			if want.Grain != Free && s.Grain != Free {
				along := (want.Grain == First) == part.Upright // the piece's grain runs along the sheet's length
				if along != (s.Grain == First) {
					return fmt.Errorf("piece %d lies across the grain", part.Number)
				}
			}
			if part.X < 0 || part.Y < 0 || part.X+l > c.Length || part.Y+w > c.Width {
				return fmt.Errorf("piece %d lies outside the sheet", part.Number)
			}
			ps = append(ps, placed{part.X, part.Y, l, w})
		}
		if len(ps) == 0 {
			return fmt.Errorf("sheet %d is not used", i)
		}
		if area > c.Length*c.Width {
			return fmt.Errorf("the parts of sheet %d are larger than it", i)
		}
		all := placed{0, 0, c.Length, c.Width}
		if !separable(ps, all, o.Kerf, c.Across, int(p.Turns)) {
			return fmt.Errorf("sheet %d cannot be cut with %d turns", i, p.Turns)
		}
	}
	for k, n := range made {
		if n != o.Pieces[k].Count {
			return fmt.Errorf("%d of %d pieces of kind %d", n, o.Pieces[k].Count, k)
		}
	}
	for k, n := range taken {
		if c := o.Sheets[k].Count; c != Unlimited && n > c {
			return fmt.Errorf("%d sheets %q of %d", n, o.Sheets[k].Name, c)
		}
	}
	return nil
}

// separable reports that pieces in a rectangle come apart by cuts from edge to
// edge, a kerf wide, all of one turn in one direction. Two turns allow a
// trimming cut after them, and so do four; a third turn allows none.
func separable(ps []placed, in placed, kerf int64, across bool, turns int) bool {
	cuts := map[int]int{2: 3, 3: 3, 4: 4}[turns]
	var part func(ps []placed, in placed, across bool, left, most int) bool
	part = func(ps []placed, in placed, across bool, left, most int) bool {
		if len(ps) == 1 && ps[0] == in {
			return true
		}
		if left == 0 || most > 0 && len(ps) > most {
			return false
		}
		// Groups of pieces between which a cut of this direction passes.
		from := func(p placed) int64 {
			if across {
				return p.x
			}
			return p.y
		}
		long := func(p placed) int64 {
			if across {
				return p.l
			}
			return p.w
		}
		ps = slices.Clone(ps)
		slices.SortFunc(ps, func(a, b placed) int { return int(from(a) - from(b)) })
		at := from(in)
		for len(ps) > 0 {
			if from(ps[0]) < at {
				return false
			}
			at = from(ps[0])
			end, n := at+long(ps[0]), 1
			for n < len(ps) && from(ps[n]) < end+kerf {
				end = max(end, from(ps[n])+long(ps[n]))
				n++
			}
			sub := in
			if across {
				sub.x, sub.l = at, end-at
			} else {
				sub.y, sub.w = at, end-at
			}
			most := 0
			if left == 2 && (turns == 2 || turns == 4) {
				most = 1 // what is trimmed is one piece
			}
			if !part(ps[:n], sub, !across, left-1, most) {
				return false
			}
			ps, at = ps[n:], end+kerf
		}
		return true
	}
	return part(ps, in, across, cuts, 0)
}

// randomOrder makes an order of a painter: two to eight sizes, a third of the
// orders with grain, at times offcuts and a second kind of sheet.
func randomOrder(r *rand.Rand) Order {
	o := Order{Kerf: int64(r.IntN(13)+20) * 100}
	if r.IntN(8) == 0 {
		o.Kerf = 0
	}
	grain := r.IntN(3) == 0
	trim := int64(r.IntN(3)) * 5000
	side := func() int64 {
		if r.IntN(2) == 0 {
			return int64(r.IntN(15)+2) * 50_000
		}
		return int64(r.IntN(700)+90) * 1000
	}
	seen := map[[2]int64]bool{}
	for left := r.IntN(56) + 5; left > 0 && len(o.Pieces) < 8; {
		p := Piece{Height: side(), Width: side(), Count: min(left, r.IntN(12)+1)}
		if seen[[2]int64{p.Height, p.Width}] || p.Height > 1_100_000 {
			continue
		}
		seen[[2]int64{p.Height, p.Width}] = true
		if grain {
			p.Grain = Grain(r.IntN(3))
		}
		left -= p.Count
		o.Pieces = append(o.Pieces, p)
	}
	full := Sheet{Name: "full", Length: 2_440_000, Width: 1_220_000, Trim: trim, Count: Unlimited}
	if grain {
		full.Grain = Grain(r.IntN(2) + 1)
	}
	o.Sheets = []Sheet{full}
	if r.IntN(4) == 0 {
		o.Sheets = append(o.Sheets, Sheet{Name: "half", Length: 1_220_000, Width: 1_220_000, Trim: trim, Count: Unlimited, Grain: full.Grain})
	}
	for i := range r.IntN(6) - 3 {
		o.Sheets = append(o.Sheets, Sheet{Name: fmt.Sprint("offcut ", i), Length: side() + 100_000, Width: side() + 100_000, Count: 1 + r.IntN(2), Offcut: true, Grain: full.Grain})
	}
	if r.IntN(5) == 0 {
		o.Turns = Turns(2 + r.IntN(3))
	}
	return o
}

// each runs f for many seeds on all cores.
func each(t *testing.T, n int, f func(seed int) error) {
	t.Helper()
	var wg sync.WaitGroup
	seeds := make(chan int)
	for range runtime.NumCPU() {
		wg.Go(func() {
			for seed := range seeds {
				if err := f(seed); err != nil {
					t.Errorf("seed %d: %v", seed, err)
				}
			}
		})
	}
	for seed := range n {
		seeds <- seed
	}
	close(seeds)
	wg.Wait()
}

// quick is enough to test what must hold of any plan.
var quick = effort{width: 12, states: 1_000_000, table: 60_000, prices: 4, disproof: 4}

func TestGeometry(t *testing.T) {
	n, e := 60, quick
	if toolcheck.Thorough() {
		n, e.width = 2000, 60
	}
	each(t, n, func(seed int) error {
		r := rand.New(rand.NewPCG(uint64(seed), 1))
		o := randomOrder(r)
		if seed%50 != 0 {
			o.effort = e
		}
		p, err := Sheets(o)
		if err != nil {
			return fmt.Errorf("%+v: %w", o, err)
		}
		if err := checkPlan(o, p); err != nil {
			return fmt.Errorf("%+v: %w", o, err)
		}
		if p.Proof.UsedLeast > p.Used {
			return fmt.Errorf("%+v: bound %d above plan %d", o, p.Proof.UsedLeast, p.Used)
		}
		return replay(o, p)
	})
}
