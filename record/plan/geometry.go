package plan

// Rect is a part of a sheet, from the reference corner of what is left of the
// sheet when it is trimmed; X and Length along the sheet's length.
type Rect struct {
	X      int64 `json:"x_um"`
	Y      int64 `json:"y_um"`
	Length int64 `json:"length_um"`
	Width  int64 `json:"width_um"`
}

// Part is a rectangle of a cut sheet and what becomes of it.
type Part struct {
	Rect
	Laid         // where it is a piece; else Number is 0
	Keep    bool // an offcut worth keeping; else waste
	Strip   int  // from 1; 0 for the rest of the sheet
	Block   int  // from 1 in its strip; 0 for the rest of the strip
	Trimmed bool // a piece cut narrower than its stack
}

// rect places a rectangle by its first cuts' direction.
func (c Cut) rect(u, v, du, dv int64) Rect {
	if c.Across {
		return Rect{u, v, du, dv}
	}
	return Rect{v, u, dv, du}
}

// sides are the lengths along u, the way the strips lie side by side, and v.
func (c Cut) sides() (u, v int64) {
	if c.Across {
		return c.Length, c.Width
	}
	return c.Width, c.Length
}

// sidesOf are the sides of a piece along u and v.
func (c Cut) sidesOf(o Order, l Laid) (u, v int64) {
	p := o.Pieces[l.Piece]
	if l.Upright == c.Across {
		return p.Height, p.Width
	}
	return p.Width, p.Height
}

// Parts returns all parts of a sheet of a plan: pieces, offcuts and waste, in
// the order of strips and blocks. What the saw takes lies between them.
func (p Plan) Parts(sheet int) []Part {
	c, k := p.Sheets[sheet], p.Order.Kerf
	var parts []Part
	rest := func(r Rect, strip, block int) {
		if r.Length > 0 && r.Width > 0 {
			parts = append(parts, Part{Rect: r, Keep: p.Order.keeps(r), Strip: strip, Block: block})
		}
	}
	u, v := c.sides()
	var atU int64
	for i, s := range c.Strips {
		var atV int64
		for j, b := range s.Blocks {
			at := atU
			for _, l := range b.Pieces {
				du, dv := c.sidesOf(p.Order, l)
				parts = append(parts, Part{Rect: c.rect(at, atV, du, dv), Laid: l, Strip: i + 1, Block: j + 1, Trimmed: dv < b.Size})
				rest(c.rect(at, atV+dv+k, du, b.Size-dv-k), i+1, j+1)
				at += du + k
			}
			rest(c.rect(at, atV, atU+s.Size-at, b.Size), i+1, j+1)
			atV += b.Size + k
		}
		rest(c.rect(atU, atV, s.Size, v-atV), i+1, 0)
		atU += s.Size + k
	}
	rest(c.rect(atU, 0, u-atU, v), 0, 0)
	return parts
}

// keeps reports that a rest is large enough to be kept.
func (o Order) keeps(r Rect) bool {
	a, b := o.keep()
	return r.Length >= a && r.Width >= b || r.Length >= b && r.Width >= a
}

// keep is the least size of an offcut.
func (o Order) keep() (a, b int64) {
	if o.KeepLength > 0 && o.KeepWidth > 0 {
		return o.KeepLength, o.KeepWidth
	}
	a, b = defaultKeep, defaultKeep
	for _, p := range o.Pieces {
		if p.Height*p.Width < a*b {
			a, b = p.Height, p.Width
		}
	}
	return a, b
}

const defaultKeep = 200_000
