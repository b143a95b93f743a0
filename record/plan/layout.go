package plan

// A layout is how a sheet is cut: strips side by side along u, in each strip
// blocks side by side along v, in each block pieces one on the other along u.
// Lengths are in units and include one cut.
type layout struct {
	sheet  int  // in Order.Sheets
	across bool // first cuts across the length: u runs along it
	strips []strip
}

type strip struct {
	size   int32
	blocks []block
}

type block struct {
	size  int32
	items []item
}

// item is a piece as it lies: its kind, and its sides along u and v.
type item struct {
	kind    int
	u, v    int32
	upright bool
}

// height of a block is how far its stack reaches.
func (b block) height() (h int32) {
	for _, it := range b.items {
		h += it.u
	}
	return h
}

func (l layout) reach() (u int32) {
	for _, s := range l.strips {
		u += s.size
	}
	return u
}

// effort counts the settings and the cuts that a layout asks for; u and v are
// the sides of what is cut. A cut at the very edge is none.
func (l layout) effort(u, v int32) (settings, cuts int) {
	var set [3]map[int32]bool
	for i := range set {
		set[i] = map[int32]bool{}
	}
	cut := func(stage int, size int32, at, end int32) {
		if at < end {
			set[stage][size] = true
			cuts++
		}
	}
	var atU int32
	for _, s := range l.strips {
		atU += s.size
		cut(0, s.size, atU, u)
		var atV int32
		for _, b := range s.blocks {
			atV += b.size
			cut(1, b.size, atV, v)
			var at int32
			for _, it := range b.items {
				at += it.u
				cut(2, it.u, at, s.size)
				if it.v < b.size {
					set[2][it.v] = true
					cuts++
				}
			}
		}
	}
	return len(set[0]) + len(set[1]) + len(set[2]), cuts
}
