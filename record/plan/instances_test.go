package plan

import (
	"backleaf/record/toolcheck"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// An instance is one line of testdata/instances.txt. The first figure of a
// size lies along the first side of the sheet.
type instance struct {
	block, name string
	sheet       []int
	best        [2]int // oriented, turned; -1 where it is not settled
	rows        [][]int
}

func instances(t *testing.T, block string) []instance {
	t.Helper()
	data, err := os.ReadFile("testdata/instances.txt")
	if err != nil {
		t.Fatal(err)
	}
	ints := func(s string) (out []int) {
		for _, f := range strings.Fields(s) {
			n, err := strconv.Atoi(f)
			if err != nil {
				t.Fatal(err)
			}
			out = append(out, n)
		}
		return out
	}
	var all []instance
	for line := range strings.Lines(string(data)) {
		if !strings.HasPrefix(line, block+" ") {
			continue
		}
		parts := strings.Split(line, " | ")
		in := instance{block: block, name: strings.Fields(parts[0])[1], sheet: ints(parts[1])}
		for i, f := range strings.Fields(parts[2]) {
			in.best[i] = -1
			if f != "-" {
				in.best[i] = ints(strings.TrimRight(f, "rmc"))[0]
			}
		}
		for row := range strings.SplitSeq(parts[3], ";") {
			in.rows = append(in.rows, ints(row))
		}
		all = append(all, in)
	}
	if len(all) == 0 {
		t.Fatalf("no %s", block)
	}
	return all
}

// turns runs f for the instance as given and with turning allowed.
func (in instance) turns(f func(name string, turned bool, best int)) {
	for i, word := range []string{"as given", "turned"} {
		if in.best[i] >= 0 {
			f(in.name+" "+word, i == 1, in.best[i])
		}
	}
}

// order makes an order of the rows; count says how many of each. A length of 1
// is a micrometre: a change of setting counts nothing.
func (in instance) order(turned bool, count func(row []int) int) Order {
	o := Order{setting: -1, Turns: 4}
	grain := First
	if turned {
		grain = Free
	}
	for _, r := range in.rows {
		if n := count(r); n > 0 {
			o.Pieces = append(o.Pieces, Piece{int64(r[0]), int64(r[1]), grain, n})
		}
	}
	o.Sheets = []Sheet{{Name: "sheet", Length: int64(in.sheet[0]), Width: int64(in.sheet[1]), Grain: grain, Count: Unlimited}}
	return o
}

// most is the bound's answer to the most valuable cut of one sheet.
func most(in instance, turned bool, demand func(row []int) int) int {
	p := newPlanner(in.order(turned, demand))
	var counts []int
	value := make([]int64, 0, len(in.rows))
	for _, r := range in.rows {
		counts = append(counts, demand(r))
		value = append(value, int64(r[2]))
	}
	b := p.board(0)
	t := newTable(b.items[0], counts, int64(b.side[0]), int64(b.side[1]), 1<<40)
	t.fill(value)
	return int(t.f[len(t.f)-1])
}

// Unlimited copies, any number of turns: the table of the bound is exact.
func TestUnconstrained(t *testing.T) {
	for _, in := range instances(t, "unconstrained") {
		if in.name == "gcut13" && !toolcheck.Thorough() {
			continue // half a minute
		}
		in.turns(func(name string, turned bool, best int) {
			if turned && in.name == "gcut13" {
				return
			}
			// as many copies as could ever fit
			if got := most(in, turned, func([]int) int { return in.sheet[0] + in.sheet[1] }); got != best {
				t.Errorf("%s: %d, proven optimum %d", name, got, best)
			}
		})
	}
}

// A limited number of copies: the bound lies at or above every optimum, no
// sheet of a plan holds more, and a best plan known to fit one sheet is never
// said to need two.
func TestConstrained(t *testing.T) {
	toolcheck.Long(t)
	equal, single, all := 0, 0, 0
	for _, in := range instances(t, "constrained") {
		in.turns(func(name string, turned bool, best int) {
			all++
			limit := func(r []int) int { return r[3] }
			bound := most(in, turned, limit)
			if bound < best {
				t.Errorf("%s: bound %d below the optimum %d", name, bound, best)
			}
			if area := in.sheet[0] * in.sheet[1]; slices.IndexFunc(in.rows, func(r []int) bool { return r[2] != r[0]*r[1] }) < 0 && best > area {
				t.Errorf("%s: an optimum of %d on an area of %d", name, best, area)
			}
			o := in.order(turned, limit)
			o.effort = quick
			p, err := Sheets(o)
			if err != nil {
				t.Fatal(name, err)
			}
			if err := checkPlan(o, p); err != nil {
				t.Error(name, err)
			}
			values := map[[2]int64]int{}
			for _, r := range in.rows {
				values[[2]int64{int64(r[0]), int64(r[1])}] = r[2]
			}
			top := 0
			for i := range p.Sheets {
				sum := 0
				for _, part := range p.Parts(i) {
					if part.Number > 0 {
						pc := o.Pieces[part.Piece]
						sum += values[[2]int64{pc.Height, pc.Width}]
					}
				}
				top = max(top, sum)
			}
			if top > best {
				t.Errorf("%s: a sheet worth %d, above the optimum %d", name, top, best)
			}
			if top == best {
				equal++
			}
			if turned {
				return // the copies listed are those of the best plan as given
			}
			o = in.order(turned, func(r []int) int { return r[4] })
			o.effort = effort{width: 100, states: 1_000_000, table: 60_000, prices: 4, disproof: 4}
			p, err = Sheets(o)
			if err != nil {
				t.Fatal(name, err)
			}
			if len(p.Sheets) == 1 {
				single++
			} else if p.Proof.Sheets {
				t.Errorf("%s: %d sheets said to be proven least; one is enough", name, len(p.Sheets))
			}
			if p.Proof.UsedLeast > int64(len(p.Sheets)*in.sheet[0]*in.sheet[1]) {
				t.Errorf("%s: proven to use up %d, more than there is", name, p.Proof.UsedLeast)
			}
		})
	}
	t.Logf("of %d: %d best sheets equal the optimum; %d best plans packed again on one sheet", all, equal, single)
	if single < 30 {
		t.Errorf("only %d best plans found again", single)
	}
}

func TestBins(t *testing.T) {
	toolcheck.Long(t)
	for _, in := range instances(t, "bins") {
		in.turns(func(name string, turned bool, best int) {
			o := in.order(turned, func([]int) int { return 1 })
			o.effort = full
			o.effort.width = 200
			p, err := Sheets(o)
			if err != nil {
				t.Fatal(name, err)
			}
			if err := checkPlan(o, p); err != nil {
				t.Error(name, err)
			}
			if len(p.Sheets) != best {
				t.Errorf("%s: %d sheets, proven least %d", name, len(p.Sheets), best)
			}
		})
	}
}

func TestStrip(t *testing.T) {
	for _, in := range instances(t, "strip") {
		in.turns(func(name string, turned bool, best int) {
			var ps []Piece
			for _, r := range in.rows {
				// The first figure lies across: the warp runs along the second side.
				grain := Second
				if turned {
					grain = Free
				}
				ps = append(ps, Piece{int64(r[0]) * 1000, int64(r[1]) * 1000, grain, 1})
			}
			b, err := Bolt(ps, Cloth{BoltWidth: int64(in.sheet[0]) * 1000})
			if err != nil {
				t.Fatal(name, err)
			}
			if err := checkPlan(b.Order, b.Plan); err != nil {
				t.Error(name, err)
			}
			want := int64(best) * 1000
			if b.Least > want || b.Length < want || b.Length > want*13/10 {
				t.Errorf("%s: proven %d, found %d, optimum %d", name, b.Least, b.Length, want)
			}
			t.Log(fmt.Sprint(name, " found ", b.Length/1000, ", proven ", b.Least/1000, ", optimum ", best))
		})
	}
}
