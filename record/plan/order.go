package plan

import (
	"fmt"
	"strconv"
)

// Grain says along which side the grain of a piece or a sheet runs, or the
// warp of a cloth.
type Grain int

// Grains. The first side of a piece is its height, of a sheet its length.
const (
	Free   Grain = iota // no grain that matters, or either way is allowed
	First               // along the first side
	Second              // along the second
)

// Piece is a number of equal pieces. Lengths are micrometres.
type Piece struct {
	Height, Width int64
	Grain         Grain
	Count         int
}

// Sheet is a kind of sheet that may be cut up. Lengths are micrometres.
type Sheet struct {
	Name          string // what the caller knows it by
	Length, Width int64
	Trim          int64 // cut off each edge, the blade included
	Grain         Grain
	Offcut        bool  // costs nothing and is used first
	Price         int64 // of one sheet; 0: not known
	Count         int   // at hand; Unlimited: as many as it takes
}

// Unlimited is the Count of a sheet that can be bought.
const Unlimited = -1

// Order is what is to be cut, and from what.
type Order struct {
	Pieces []Piece
	Sheets []Sheet
	Kerf   int64 // breadth of the saw's cut, µm; 0 for a knife
	Turns  Turns // 0: two, and three where the third earns its keep
	// Keep is the least offcut worth keeping, either way round; zero: the
	// smallest piece, or 200 × 200 mm where that is smaller.
	KeepLength, KeepWidth int64

	effort  effort // zero: full
	across  bool   // first cuts across the length only
	setting int64  // what a change of setting counts as area; 0: settingArea, less: nothing
}

// Turns is how often the direction of cutting may change. Two: strips and
// cross-cuts, and a trimming cut for a piece lower than its strip. Three:
// strips, blocks, and stacks within a block. Four: the same, and a trimming
// cut for a piece narrower than its stack.
type Turns int

// Limits of an order. They bound the work and the memory of the search.
const (
	MaxPieces = 500
	MaxSizes  = 60
	MaxKinds  = 20
	maxLength = 100_000_000 // 100 m: beyond it a unit was mistaken
)

// check refuses what cannot be planned.
func (o Order) check() error {
	switch {
	case len(o.Pieces) == 0:
		return fmt.Errorf("cannot plan: no panel is asked for")
	case len(o.Pieces) > MaxSizes:
		return fmt.Errorf("cannot plan: %d sizes at once; at most %d", len(o.Pieces), MaxSizes)
	case len(o.Sheets) == 0:
		return fmt.Errorf("cannot plan: no sheet to cut from")
	case len(o.Sheets) > MaxKinds:
		return fmt.Errorf("cannot plan: %d kinds of sheets at once; at most %d", len(o.Sheets), MaxKinds)
	case o.Kerf < 0 || o.Kerf > 20_000:
		return fmt.Errorf("cannot plan: a kerf of %s; it must be 0 to 20 mm", mm(o.Kerf))
	case o.Turns != 0 && (o.Turns < 2 || o.Turns > 4):
		return fmt.Errorf("cannot plan: %d turns; two, three or four", o.Turns)
	}
	n := 0
	for _, p := range o.Pieces {
		if p.Height <= 0 || p.Width <= 0 || p.Height > maxLength || p.Width > maxLength {
			return fmt.Errorf("cannot plan: a piece of %s; each side must be more than 0 and at most 100 m", size(p.Height, p.Width))
		}
		if p.Count < 1 || p.Count > MaxPieces {
			return fmt.Errorf("cannot plan: %d pieces of %s; at least 1 and at most %d", p.Count, size(p.Height, p.Width), MaxPieces)
		}
		n += p.Count
	}
	if n > MaxPieces {
		return fmt.Errorf("cannot plan: %d pieces at once; at most %d: plan them in parts", n, MaxPieces)
	}
	names := map[string]bool{}
	for _, s := range o.Sheets {
		switch {
		case names[s.Name]:
			return fmt.Errorf("cannot plan: sheet %q is named twice", s.Name)
		case s.Length <= 0 || s.Width <= 0 || s.Length > maxLength || s.Width > maxLength:
			return fmt.Errorf("cannot plan: sheet %q of %s; each side must be more than 0 and at most 100 m", s.Name, size(s.Length, s.Width))
		case s.Trim < 0 || 2*s.Trim >= min(s.Length, s.Width):
			return fmt.Errorf("cannot plan: %s trimmed off each edge leaves nothing of sheet %q", mm(s.Trim), s.Name)
		case s.Count < Unlimited || s.Price < 0:
			return fmt.Errorf("cannot plan: sheet %q has a count or price below nothing", s.Name)
		}
		names[s.Name] = true
	}
	for _, p := range o.Pieces {
		if err := o.fits(p); err != nil {
			return err
		}
	}
	return nil
}

// fits says by how much a piece is too large where no sheet holds it.
func (o Order) fits(p Piece) error {
	var best Sheet
	over := int64(-1)
	for _, s := range o.Sheets {
		if s.Count == 0 {
			continue
		}
		for _, upright := range [2]bool{true, false} {
			if !p.lies(s, upright) {
				continue
			}
			l, w := p.Height, p.Width
			if !upright {
				l, w = w, l
			}
			x := max(l-(s.Length-2*s.Trim), w-(s.Width-2*s.Trim), 0)
			if x == 0 {
				return nil
			}
			if over < 0 || x < over {
				best, over = s, x
			}
		}
	}
	if over < 0 {
		return fmt.Errorf("cannot plan: no sheet is at hand for a piece of %s", size(p.Height, p.Width))
	}
	return fmt.Errorf("cannot plan: a piece of %s fits no sheet: it is %s too large for %q, %s of which %s are trimmed off each edge",
		size(p.Height, p.Width), mm(over), best.Name, size(best.Length, best.Width), mm(best.Trim))
}

// lies reports that a piece may lie on a sheet upright, its height along the
// sheet's length, or turned.
func (p Piece) lies(s Sheet, upright bool) bool {
	return p.Grain == Free || s.Grain == Free || (p.Grain == s.Grain) == upright
}

func size(a, b int64) string { return number(a) + " x " + mm(b) }
func mm(um int64) string     { return number(um) + " mm" }

// number writes micrometres as millimetres, exactly.
func number(um int64) string { return strconv.FormatFloat(float64(um)/1000, 'f', -1, 64) }
