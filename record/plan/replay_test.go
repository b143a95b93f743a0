package plan

import (
	"fmt"
	"slices"
	"testing"
)

// replay saws a plan from its printed list on a sheet of paper: it knows only
// how to set a fence and to cut at it, and it must end with the pieces asked
// for. Sizes are rectangles without direction of grain.
func replay(o Order, p Plan) error {
	for i := range p.Sheets {
		if err := replaySheet(o, p, i); err != nil {
			return fmt.Errorf("sheet %d: %w; steps %+v", i, err, p.Steps(i))
		}
	}
	return nil
}

type paper struct{ u, v int64 } // along the way of the first cuts, and across

func replaySheet(o Order, p Plan, sheet int) error {
	steps := p.Steps(sheet)
	edge := steps[0]
	s := o.Sheets[p.Sheets[sheet].Sheet]
	if edge.Do != TrueEdges || edge.Length != s.Length-2*edge.Set || edge.Width != s.Width-2*edge.Set {
		return fmt.Errorf("the first step leaves %d x %d", edge.Length, edge.Width)
	}
	rest := paper{edge.Length, edge.Width}
	if !p.Sheets[sheet].Across {
		rest.u, rest.v = rest.v, rest.u
	}
	full := rest.u
	var strips []paper
	blocks := map[[2]int][]paper{}
	begun := false
	// What is left of a sheet, strip or block when the last cut is made is its last part.
	strip := func() {
		if !begun {
			begun = true
			strips = append(strips, rest)
			for k, st := range strips {
				blocks[[2]int{k + 1, 0}] = []paper{st}
			}
		}
	}
	for n, st := range steps[1:] {
		switch st.Do {
		case FirstCuts:
			if st.Length != rest.v || st.Times != len(st.At) {
				return fmt.Errorf("step %d: strips of length %d, %d lines for %d cuts", n, st.Length, len(st.At), st.Times)
			}
			for _, at := range st.At {
				if line := full - rest.u + st.Set; line != at {
					return fmt.Errorf("step %d: line at %d, must be %d", n, at, line)
				}
				strips = append(strips, paper{st.Set, rest.v})
				rest.u -= st.Set + o.Kerf
			}
		case KeepRest, WasteRest:
			if a, b := max(st.Length, st.Width), min(st.Length, st.Width); a != max(rest.u, rest.v) || b != min(rest.u, rest.v) {
				return fmt.Errorf("step %d: rest %d x %d, is %d x %d", n, st.Length, st.Width, rest.u, rest.v)
			}
		case SecondCuts, ThirdCuts, TrimCuts:
			strip()
			for _, f := range st.From {
				for range f.Times {
					if err := saw(blocks, st, f, o); err != nil {
						return fmt.Errorf("step %d: %w", n, err)
					}
				}
			}
		case LabelAll:
			strip()
			var have []paper
			for _, b := range blocks {
				have = append(have, b...)
			}
			for _, c := range st.Pieces {
				want := o.Pieces[c.Piece]
				for range c.Times {
					i := slices.IndexFunc(have, func(x paper) bool {
						return x.u == want.Height && x.v == want.Width || x.v == want.Height && x.u == want.Width
					})
					if i < 0 {
						return fmt.Errorf("no %d x %d in the end; there is %v", want.Height, want.Width, have)
					}
					have = slices.Delete(have, i, i+1)
				}
			}
			return nil
		}
	}
	return fmt.Errorf("the list does not end with the labels")
}

// saw makes one cut; [strip, 0] holds what is left of a strip, [strip, block]
// the pieces of a block, what is left of it first.
func saw(blocks map[[2]int][]paper, st Step, f From, o Order) error {
	if st.Do == SecondCuts {
		left := blocks[[2]int{f.Strip, 0}]
		if len(left) != 1 || left[0].v <= st.Set {
			return fmt.Errorf("nothing to cut %d from: %v", st.Set, left)
		}
		n := 1
		for len(blocks[[2]int{f.Strip, n}]) > 0 {
			n++
		}
		blocks[[2]int{f.Strip, n}] = []paper{{left[0].u, st.Set}}
		left[0].v -= st.Set + o.Kerf
		if left[0].v <= 0 {
			delete(blocks, [2]int{f.Strip, 0})
		}
		return nil
	}
	at := [2]int{f.Strip, f.Block}
	if len(blocks[at]) == 0 { // the last block was left over, not cut off
		blocks[at] = blocks[[2]int{f.Strip, 0}]
		delete(blocks, [2]int{f.Strip, 0})
	}
	b := blocks[at]
	if len(b) == 0 {
		return fmt.Errorf("no block %v", at)
	}
	if st.Do == ThirdCuts {
		if b[0].u <= st.Set {
			return fmt.Errorf("a block of %v to cut %d from", b[0], st.Set)
		}
		blocks[at] = append(b, paper{st.Set, b[0].v})
		blocks[at][0].u -= st.Set + o.Kerf
		return nil
	}
	for i, x := range b {
		fits := slices.ContainsFunc(o.Pieces, func(p Piece) bool {
			return x.u == p.Height && st.Set == p.Width || x.u == p.Width && st.Set == p.Height
		})
		if x.v > st.Set && fits {
			blocks[at][i].v = st.Set
			return nil
		}
	}
	return fmt.Errorf("nothing to trim to %d in %v", st.Set, b)
}

// Figures by hand: pieces in a row = floor((usable + kerf) / (piece + kerf)).
func TestKerf(t *testing.T) {
	for _, c := range []struct {
		usable, piece, kerf float64
		pieces              int
		over, after         float64 // left before the last cut, and after it
	}{
		{1220, 300, 3, 4, 11, 8},
		{1220, 400, 3, 3, 14, 11},
		{1220, 610, 3, 1, 610, 607},
		{1220, 608, 3, 2, 1, 0},
		{1220, 608.5, 3, 2, 0, 0},
		{2440, 600, 3, 4, 31, 28},
		{2440, 610, 3, 3, 604, 601},
		{2430, 600, 3, 4, 21, 18},
		{2430, 605, 3, 4, 1, 0},
		{1210, 300, 3, 4, 1, 0},
		{1210, 302.5, 3, 3, 296.5, 293.5},
		{610, 200, 2.5, 3, 5, 2.5},
		{610, 202, 2, 3, 0, 0},
		{610, 201.6, 2.5, 3, 0.2, 0},
	} {
		order := func(n int) Order {
			return Order{Kerf: um(c.kerf), Pieces: []Piece{{um(c.piece), um(100), Free, n}}, Sheets: []Sheet{{Name: "row", Length: um(c.usable), Width: um(100), Count: 1}}}
		}
		p, err := Sheets(order(c.pieces))
		if err != nil {
			t.Errorf("%v: %v", c, err)
			continue
		}
		if _, err := Sheets(order(c.pieces + 1)); err == nil {
			t.Errorf("%v: one piece more fits too", c)
		}
		over := um(c.usable) - int64(c.pieces)*um(c.piece) - int64(c.pieces-1)*um(c.kerf)
		if over != um(c.over) {
			t.Errorf("%v: %d left before the last cut", c, over)
		}
		var after int64
		for _, part := range p.Parts(0) {
			if part.Number == 0 {
				after += part.Length
			}
		}
		if after != um(c.after) {
			t.Errorf("%v: %d left", c, after)
		}
		if err := replay(order(c.pieces), p); err != nil {
			t.Errorf("%v: %v", c, err)
		}
	}
}

func TestBolt(t *testing.T) {
	// Bolt of 1600 less 15 of selvedge on each side, shrinking 1 % across and 3 %
	// along: 1554 of use, and 4940 of length with 50 to square become 5200 to buy.
	c := Cloth{BoltWidth: um(1600), Selvedge: um(15), Squaring: um(50), ShrinkWarp: 3000, ShrinkWeft: 1000, Step: um(100)}
	b, err := Bolt([]Piece{{um(4940), um(1500), First, 1}}, c)
	if err != nil {
		t.Fatal(err)
	}
	if b.Usable != um(1554) || b.Length != um(4940) || b.Least != um(4940) || b.Buy != um(5200) {
		t.Errorf("usable %d, length %d, least %d, buy %d", b.Usable, b.Length, b.Least, b.Buy)
	}
	c.Oversize = um(30)
	b, err = Bolt([]Piece{{um(300), um(400), Second, 7}, {um(500), um(400), First, 3}}, c)
	if err != nil {
		t.Fatal(err)
	}
	if err := checkPlan(b.Order, b.Plan); err != nil {
		t.Error(err)
	}
	for i, p := range b.Order.Pieces {
		if want := []Piece{{um(360), um(460), Second, 7}, {um(560), um(460), First, 3}}[i]; p != want {
			t.Errorf("piece %v, want %v", p, want)
		}
	}
	if _, err := Bolt([]Piece{{um(1600), um(1600), Free, 1}}, c); err == nil {
		t.Error("a panel wider than the bolt is planned")
	}
}

// Dangers seen by hand: 3 pieces of 90 x 400 in a strip, the last cut of which
// leaves 1 mm.
func TestWarnings(t *testing.T) {
	o := Order{Kerf: 3000, Pieces: []Piece{{um(90), um(400), Free, 3}}, Sheets: []Sheet{{Name: "s", Length: um(1210), Width: um(600), Count: 1}}}
	p, err := Sheets(o)
	if err != nil {
		t.Fatal(err)
	}
	got := map[Danger]Warning{}
	for _, w := range p.Warnings() {
		got[w.What] = w
	}
	if w := got[NarrowStrip]; w.Times != 1 || w.Size != um(90) {
		t.Errorf("narrow strip: %+v", w)
	}
	if w := got[ShortPiece]; w.Times != 3 || w.Size != um(90) {
		t.Errorf("short pieces: %+v", w)
	}
	if w := got[Sliver]; w.Times != 1 || w.Size != um(1) {
		t.Errorf("sliver: %+v", w)
	}
	o.Kerf = 0
	if p, err = Sheets(o); err != nil || len(p.Warnings()) > 0 {
		t.Errorf("with a knife: %v, %+v", err, p.Warnings())
	}
}
