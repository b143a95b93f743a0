package plan

import (
	"cmp"
	"slices"
)

// Step is one line of the list by which a sheet is sawn. Steps with a setting
// come large before small: the fence or stop moves as seldom as can be.
type Step struct {
	Do     Do      `json:"do"`
	Set    int64   `json:"set_um,omitzero"`    // distance of the fence or stop
	Times  int     `json:"times,omitzero"`     // cuts, strips or pieces
	From   []From  `json:"from,omitzero"`      // what is cut, for second, third and trimming cuts
	At     []int64 `json:"at_um,omitzero"`     // lines from the reference edge, for first cuts
	Length int64   `json:"length_um,omitzero"` // of the strip, of the rest, of the sheet
	Width  int64   `json:"width_um,omitzero"`
	Pieces []Count `json:"pieces,omitzero"` // for the last step
}

// From says what a cut is made from, and how often.
type From struct {
	Strip int `json:"strip"`
	Block int `json:"part,omitzero"`
	Times int `json:"times"`
}

// Count is a number of pieces of one kind.
type Count struct {
	Piece int `json:"piece"` // in Order.Pieces
	Times int `json:"times"`
}

// Do is what a step asks for.
type Do string

// Steps in the order in which they are done.
const (
	TrueEdges  Do = "true-edges"  // true two edges that meet; Set is what comes off each, Length and Width are left
	FirstCuts  Do = "first-cuts"  // Times strips of Set by Length; At are the lines from the reference edge
	KeepRest   Do = "keep-rest"   // write size and grain on the rest, Length by Width
	WasteRest  Do = "waste-rest"  // the same, too small to keep
	SecondCuts Do = "second-cuts" // across the strips
	ThirdCuts  Do = "third-cuts"  // pieces off blocks
	TrimCuts   Do = "trim-cuts"   // the other side of pieces narrower than their block
	LabelAll   Do = "label"       // count the pieces and write on their backs
)

// Steps lists how a sheet of a plan is sawn.
func (p Plan) Steps(sheet int) []Step {
	c, k := p.Sheets[sheet], p.Order.Kerf
	u, v := c.sides()
	steps := []Step{{Do: TrueEdges, Set: p.Order.Sheets[c.Sheet].Trim, Length: c.Length, Width: c.Width}}
	var at int64
	first := stage{do: FirstCuts}
	for i, s := range c.Strips {
		at += s.Size
		if at < u || p.Order.across { // a bolt goes on beyond the last length
			first.cut(s.Size, From{Strip: i + 1}, at)
		}
		at += k
	}
	for i := range first.steps {
		first.steps[i].Length, first.steps[i].From = v, nil
	}
	steps = append(steps, first.steps...)
	if at < u {
		r := c.rect(at, 0, u-at, v)
		do := WasteRest
		if p.Order.keeps(r) {
			do = KeepRest
		}
		steps = append(steps, Step{Do: do, Length: r.Length, Width: r.Width})
	}
	second, third, trims := stage{do: SecondCuts}, stage{do: ThirdCuts}, stage{do: TrimCuts}
	for i, s := range c.Strips {
		var at int64
		for j, b := range s.Blocks {
			if at += b.Size; at < v {
				second.cut(b.Size, From{Strip: i + 1}, 0)
			}
			at += k
			var up int64
			for _, l := range b.Pieces {
				du, dv := c.sidesOf(p.Order, l)
				if up += du; up < s.Size {
					third.cut(du, From{i + 1, j + 1, 0}, 0)
				}
				if up += k; dv < b.Size {
					trims.cut(dv, From{i + 1, j + 1, 0}, 0)
				}
			}
		}
	}
	for _, st := range []stage{second, third, trims} {
		st.sort()
		steps = append(steps, st.steps...)
	}
	return append(steps, Step{Do: LabelAll, Pieces: c.counts()})
}

// stage gathers the cuts of one turn by their settings.
type stage struct {
	do    Do
	steps []Step
}

func (s *stage) cut(set int64, from From, at int64) {
	i := slices.IndexFunc(s.steps, func(st Step) bool { return st.Set == set })
	if i < 0 {
		i = len(s.steps)
		s.steps = append(s.steps, Step{Do: s.do, Set: set})
	}
	st := &s.steps[i]
	st.Times++
	if at > 0 {
		st.At = append(st.At, at)
	}
	if n := len(st.From) - 1; n >= 0 && st.From[n].Strip == from.Strip && st.From[n].Block == from.Block {
		st.From[n].Times++
		return
	}
	from.Times = 1
	st.From = append(st.From, from)
}

func (s *stage) sort() {
	slices.SortStableFunc(s.steps, func(a, b Step) int { return cmp.Compare(b.Set, a.Set) })
}

// counts are the pieces of a sheet, by kind.
func (c Cut) counts() []Count {
	var out []Count
	for _, s := range c.Strips {
		for _, b := range s.Blocks {
			for _, l := range b.Pieces {
				i := slices.IndexFunc(out, func(n Count) bool { return n.Piece == l.Piece })
				if i < 0 {
					i = len(out)
					out = append(out, Count{Piece: l.Piece})
				}
				out[i].Times++
			}
		}
	}
	slices.SortFunc(out, func(a, b Count) int { return a.Piece - b.Piece })
	return out
}
