package plan

import (
	"cmp"
	"container/heap"
	"slices"
)

// A set is how many sheets of each kind are taken.
type set struct {
	counts []int
	price  int64
	sheets int
	grown  int // the last kind that was added to: sets are reached once
}

// sets hands out sets of new sheets, the cheapest first, then the fewest.
type sets struct {
	kinds []int // in Order.Sheets
	price []int64
	limit []int
	heap  []set
}

func newSets(o Order) *sets {
	q := &sets{}
	priced := true
	for i, s := range o.Sheets {
		if s.Offcut || s.Count == 0 {
			continue
		}
		priced = priced && s.Price > 0
		q.kinds = append(q.kinds, i)
		limit := s.Count
		if limit == Unlimited {
			limit = MaxPieces
		}
		q.limit = append(q.limit, limit)
	}
	for _, i := range q.kinds {
		s := o.Sheets[i]
		price := s.Price
		if !priced { // then by what is bought: its area
			price = s.Length * s.Width
		}
		q.price = append(q.price, price)
	}
	q.heap = []set{{counts: make([]int, len(q.kinds))}}
	return q
}

// next returns the cheapest set not yet handed out, and whether there is one.
func (q *sets) next() (set, bool) {
	if len(q.heap) == 0 {
		return set{}, false
	}
	s := heap.Pop(q).(set)
	for i := s.grown; i < len(q.kinds); i++ {
		if s.counts[i] == q.limit[i] || s.sheets == MaxPieces {
			continue
		}
		n := set{slices.Clone(s.counts), s.price + q.price[i], s.sheets + 1, i}
		n.counts[i]++
		heap.Push(q, n)
	}
	return s, true
}

func (q *sets) Len() int { return len(q.heap) }
func (q *sets) Less(i, j int) bool {
	a, b := q.heap[i], q.heap[j]
	return cmp.Or(cmp.Compare(a.price, b.price), cmp.Compare(a.sheets, b.sheets), slices.Compare(b.counts, a.counts)) < 0
}
func (q *sets) Swap(i, j int) { q.heap[i], q.heap[j] = q.heap[j], q.heap[i] }
func (q *sets) Push(x any)    { q.heap = append(q.heap, x.(set)) }
func (q *sets) Pop() any {
	last := len(q.heap) - 1
	s := q.heap[last]
	q.heap = q.heap[:last]
	return s
}

// maxOffcutSets is up to how many ways of taking offcuts all are tried.
const maxOffcutSets = 16

// offcutSets lists the ways in which the offcuts may be taken: all of them if
// they are few, or else all, none, and each alone.
func offcutSets(o Order, offcuts []int) [][]int {
	ways := 1
	for _, i := range offcuts {
		if ways *= o.Sheets[i].Count + 1; ways > maxOffcutSets {
			break
		}
	}
	none := make([]int, len(offcuts))
	if ways > maxOffcutSets {
		all := slices.Clone(none)
		out := [][]int{none, all}
		for k, i := range offcuts {
			all[k] = o.Sheets[i].Count
			one := slices.Clone(none)
			one[k] = 1
			out = append(out, one)
		}
		return out
	}
	out := [][]int{none}
	for k, i := range offcuts {
		for _, w := range slices.Clone(out) {
			for n := 1; n <= o.Sheets[i].Count; n++ {
				more := slices.Clone(w)
				more[k] = n
				out = append(out, more)
			}
		}
	}
	return out
}
