package plan

import (
	"math"
	"math/bits"
	"slices"
)

// The search is a beam search: of all ways to place n pieces it keeps the best
// few, by a guide, and goes on from those to n+1. The tree of states and the
// guides follow Libralesso and Fontan, "An anytime tree search algorithm for
// the 2018 ROADEF/EURO challenge glass cutting problem" (2020), from memory.

// A state is the front of what is cut so far: sheets that are full, on the
// open sheet the strips that are full, on the open strip the blocks, and the
// stack on the open block.
type state struct {
	parent int32
	how    move
	item   item
	sheet  int32 // in search.sheets
	across bool
	u      int32 // closed strips
	t      int32 // open strip
	v      int32 // closed blocks in it
	b      int32 // open block
	w      int32 // its stack
	first  bool  // the open block is the first of its strip, and sets t
	single bool  // the open block holds one piece
	start  int32 // kind that the open block starts with
	last   int32 // kind laid last
	closed int64 // area of the sheets closed
	placed int64 // area of the pieces placed
	change int32 // changes of setting, roughly: from one piece to the next
	sum    uint64
}

type move uint8

const (
	newSheet move = iota
	newStrip
	newBlock
	onBlock
)

// board is a sheet in the order in which it is opened.
type board struct {
	sheet int
	side  [2]int32 // length, width
	items [2][]item
	area  int64
}

// sides returns u and v of a board for the way of its first cuts.
func (b *board) sides(across bool) (u, v int32) {
	if across {
		return b.side[0], b.side[1]
	}
	return b.side[1], b.side[0]
}

func (b *board) lying(across bool) []item {
	if across {
		return b.items[0]
	}
	return b.items[1]
}

// search looks for a plan of all pieces on given boards.
type search struct {
	boards  []*board
	demand  []uint16
	pieces  int
	area    int64 // of all pieces
	slack   int64 // area of all boards less that of the pieces
	setting int64 // what a change of setting counts, as area
	turns   Turns
	width   int
	across  bool // first cuts across the length only

	limit int64 // a plan must use less area than this
	work  int   // states looked at

	kept  []state
	left  []uint16 // demand left, one row for each kept state
	next  []state
	keys  []uint64
	table []int32 // twins: index into next + 1, by hash
}

// guide is how promising a state is, small is good.
type guide func(share, mean float64) float64

var guides = []guide{
	func(share, _ float64) float64 { return share },
	func(share, mean float64) float64 { return share / mean },
	func(share, mean float64) float64 { return (0.1 + share) / mean },
}

// run searches with one guide and hands each plan it ends with to found.
func (s *search) run(g guide, found func(*search, int32)) {
	k := len(s.demand)
	s.kept = append(s.kept[:0], state{parent: -1, sheet: -1})
	s.left = append(s.left[:0], s.demand...)
	from := 0
	for n := 1; n <= s.pieces; n++ {
		s.clear()
		to := len(s.kept)
		for i := from; i < to; i++ {
			s.grow(int32(i), s.left[i*k:(i+1)*k])
		}
		if len(s.next) == 0 {
			return
		}
		s.keys = s.keys[:0]
		for i := range s.next {
			c := &s.next[i]
			used := s.used(c)
			share := float64(used-c.placed+s.setting*int64(c.change)) / float64(used)
			score := float32(g(share, float64(c.placed)/float64(n)))
			s.keys = append(s.keys, uint64(math.Float32bits(score))<<32|uint64(i))
		}
		slices.Sort(s.keys)
		from = to
		for _, key := range s.keys[:min(s.width, len(s.keys))] {
			c := s.next[uint32(key)]
			s.kept = append(s.kept, c)
			row := len(s.left)
			s.left = append(s.left, s.left[int(c.parent)*k:(int(c.parent)+1)*k]...)
			s.left[row+c.item.kind]--
		}
	}
	for i := from; i < len(s.kept); i++ {
		found(s, int32(i))
	}
}

func (s *search) clear() {
	if s.table == nil {
		s.table = make([]int32, 1<<14)
	}
	clear(s.table)
	s.next = s.next[:0]
}

// used is the area used up: full sheets, full strips, the open strip to its
// last full block, and the open block to the end of its stack.
func (s *search) used(c *state) int64 {
	_, v := s.boards[c.sheet].sides(c.across)
	w := c.w
	if s.turns < 3 {
		w = c.t
	}
	return c.closed + int64(c.u)*int64(v) + int64(c.t)*int64(c.v) + int64(c.b)*int64(w)
}

// grow offers every state that one more piece leads to.
func (s *search) grow(at int32, left []uint16) {
	from := s.kept[at]
	from.parent = at
	if from.sheet >= 0 {
		b := s.boards[from.sheet]
		u, v := b.sides(from.across)
		for _, it := range b.lying(from.across) {
			if left[it.kind] == 0 {
				continue
			}
			s.stack(from, it, u)
			s.beside(from, it, v)
			if from.u+from.t+it.u <= u {
				c := from
				c.how, c.u = newStrip, from.u+from.t
				if it.u != from.t {
					c.change++
				}
				if it.v != from.b {
					c.change++
				}
				s.open(c, it)
			}
		}
	}
	if int(from.sheet)+1 == len(s.boards) {
		return
	}
	b := s.boards[from.sheet+1]
	for _, across := range [2]bool{true, false} {
		if !across && s.across {
			break
		}
		for _, it := range b.lying(across) {
			if left[it.kind] == 0 {
				continue
			}
			c := from
			c.how, c.sheet, c.across, c.u = newSheet, from.sheet+1, across, 0
			if from.sheet >= 0 {
				c.closed += s.boards[from.sheet].area
			}
			c.change += 2
			s.open(c, it)
		}
	}
}

// stack lays a piece on the open block.
func (s *search) stack(c state, it item, u int32) {
	if s.turns < 3 || it.v > c.b || it.v < c.b && s.turns < 4 || int32(it.kind) < c.last && (it.v == c.b || !c.single) {
		return
	}
	w := c.w + it.u
	switch {
	case c.first && c.u+w <= u:
		c.t = max(c.t, w)
	case w > c.t:
		return
	}
	c.how, c.w, c.last, c.single = onBlock, w, int32(it.kind), false
	if w > it.u && it.u != c.item.u {
		c.change++
	}
	s.offer(c, it)
}

// beside starts a block in the open strip. Blocks after the first stand in the
// order of their kinds: the others are the same strip in another order.
func (s *search) beside(c state, it item, v int32) {
	if it.u > c.t || c.v+c.b+it.v > v || !c.first && int32(it.kind) < c.start {
		return
	}
	if it.v != c.b {
		c.change++
	}
	if it.u < c.t {
		c.change++
	}
	c.how, c.v, c.b, c.w, c.first, c.single = newBlock, c.v+c.b, it.v, it.u, false, true
	c.start, c.last = int32(it.kind), int32(it.kind)
	s.offer(c, it)
}

// open starts a strip with a piece.
func (s *search) open(c state, it item) {
	c.t, c.v, c.b, c.w, c.first, c.single = it.u, 0, it.v, it.u, true, true
	c.start, c.last = int32(it.kind), int32(it.kind)
	s.offer(c, it)
}

// offer adds a state to the next level, unless no plan can come of it or its
// twin, the same pieces behind the same front, is there and no worse.
func (s *search) offer(c state, it item) {
	s.work++
	c.item = it
	c.placed += int64(it.u) * int64(it.v)
	waste := s.used(&c) - c.placed
	if waste > s.slack || waste+s.area >= s.limit {
		return
	}
	c.sum += mix(uint64(it.kind) + 1)
	h := s.hash(&c)
	for i := h & uint64(len(s.table)-1); ; i = (i + 1) & uint64(len(s.table)-1) {
		j := s.table[i]
		if j == 0 {
			s.next = append(s.next, c)
			s.table[i] = int32(len(s.next))
			s.rehash()
			return
		}
		if d := &s.next[j-1]; s.twins(d, &c) {
			if c.change < d.change {
				*d = c
			}
			return
		}
	}
}

func (s *search) twins(a, b *state) bool {
	return a.sum == b.sum && a.sheet == b.sheet && a.across == b.across && a.u == b.u && a.t == b.t && a.v == b.v && a.b == b.b && a.w == b.w &&
		a.first == b.first && a.single == b.single && a.start == b.start && a.last == b.last
}

// rehash keeps the table of twins at most half full.
func (s *search) rehash() {
	if 2*len(s.next) < len(s.table) {
		return
	}
	s.table = make([]int32, 2*len(s.table))
	for n := range s.next {
		i := s.hash(&s.next[n]) & uint64(len(s.table)-1)
		for s.table[i] != 0 {
			i = (i + 1) & uint64(len(s.table)-1)
		}
		s.table[i] = int32(n + 1)
	}
}

func (s *search) hash(c *state) uint64 {
	h := c.sum
	for _, x := range [...]int32{c.sheet, c.u, c.t, c.v, c.b, c.w, c.start, c.last} {
		h = bits.RotateLeft64(h^uint64(uint32(x)), 23) * 0x9e3779b97f4a7c15
	}
	return h ^ h>>29
}

// mix spreads the bits of a small number; sums of it tell sets of pieces apart.
func mix(x uint64) uint64 {
	x *= 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

// trace makes the layouts of a finished state.
func (s *search) trace(end int32) []layout {
	var path []*state
	for i := end; s.kept[i].parent >= 0; i = s.kept[i].parent {
		path = append(path, &s.kept[i])
	}
	slices.Reverse(path)
	var out []layout
	for _, c := range path {
		if c.how == newSheet {
			out = append(out, layout{sheet: s.boards[c.sheet].sheet, across: c.across})
		}
		l := &out[len(out)-1]
		if c.how <= newStrip {
			l.strips = append(l.strips, strip{})
		}
		st := &l.strips[len(l.strips)-1]
		st.size = c.t
		if c.how <= newBlock {
			st.blocks = append(st.blocks, block{size: c.b})
		}
		b := &st.blocks[len(st.blocks)-1]
		b.items = append(b.items, c.item)
	}
	return out
}
