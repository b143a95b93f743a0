package plan

import "slices"

// maxGrid is the most steps along a side.
const maxGrid = 200_000

// table is the grid of F.
type table struct {
	x, y   []int64     // distances from the corner at which a cut is of use
	rx, ry [][]int32   // rx[i][k]: the last x that fits in x[i]-x[k]
	items  []tableItem // lying both ways, as far as they may
	f      []int64
	unit   int64 // units to a step of the grid; 1 where it is not coarse
}

type tableItem struct{ kind, x, y int }

// newTable lays the grid of a board for pieces of which no more than demand
// can be on it. Where filling it would take more than so many steps it is made coarse, pieces and
// board rounded down to its steps: what could be cut can still be cut. It is
// nil where a piece is smaller than a step would be.
func newTable(items []item, demand []int, length, width int64, steps int) *table {
	least := min(length, width)
	for _, it := range items {
		least = min(least, int64(it.u), int64(it.v))
	}
	for unit := max(length, width)/maxGrid + 1; unit <= least; unit += max(1, unit/4) {
		t := &table{unit: unit}
		t.x = patterns(items, demand, length/unit, func(it item) int64 { return int64(it.u) / unit })
		t.y = patterns(items, demand, width/unit, func(it item) int64 { return int64(it.v) / unit })
		n, m := len(t.x), len(t.y)
		if n*m*(n+m)/4 > steps {
			continue
		}
		t.rx, t.ry = rests(t.x), rests(t.y)
		for _, it := range items {
			x, _ := slices.BinarySearch(t.x, int64(it.u)/unit)
			y, _ := slices.BinarySearch(t.y, int64(it.v)/unit)
			t.items = append(t.items, tableItem{it.kind, x, y})
		}
		t.f = make([]int64, n*m)
		return t
	}
	return nil
}

// patterns lists the sums of sides up to a length, each piece in it at most as
// often as it is asked for (normal patterns).
func patterns(items []item, demand []int, length int64, side func(item) int64) []int64 {
	reached := make([]bool, length+1)
	reached[0] = true
	for _, it := range items {
		w := side(it)
		// left[x] is how many more copies could end at x.
		left := make([]int, length+1)
		for x := range left {
			left[x] = -1
			if reached[x] {
				left[x] = demand[it.kind]
			}
		}
		for x := w; x <= length; x++ {
			if left[x-w] > 0 && left[x] < left[x-w]-1 {
				left[x], reached[x] = left[x-w]-1, true
			}
		}
	}
	var out []int64
	for x, ok := range reached {
		if ok {
			out = append(out, int64(x))
		}
	}
	return out
}

func rests(at []int64) [][]int32 {
	out := make([][]int32, len(at))
	for i := range at {
		for k := 0; k <= i && 2*at[k] <= at[i]; k++ {
			j, exact := slices.BinarySearch(at, at[i]-at[k])
			if !exact {
				j--
			}
			out[i] = append(out[i], int32(j))
		}
	}
	return out
}

// fill works out F for prices.
func (t *table) fill(price []int64) {
	n, m := len(t.x), len(t.y)
	clear(t.f)
	for _, it := range t.items {
		if it.x < n && it.y < m {
			c := &t.f[it.x*m+it.y]
			*c = max(*c, price[it.kind])
		}
	}
	for i := 1; i < n; i++ {
		row := t.f[i*m:][:m]
		for j, f := range t.f[(i-1)*m:][:m] {
			row[j] = max(row[j], f)
		}
		for k := 1; k < len(t.rx[i]); k++ {
			a, b := t.f[k*m:][:m], t.f[int(t.rx[i][k])*m:][:m]
			for j, f := range a {
				if f += b[j]; f > row[j] {
					row[j] = f
				}
			}
		}
		for j := 1; j < m; j++ {
			best := max(row[j], row[j-1])
			for k, r := range t.ry[j] {
				if f := row[k] + row[r]; f > best {
					best = f
				}
			}
			row[j] = best
		}
	}
}

// count adds to copies what lies in the best cut of x[i] by y[j], times n.
func (t *table) count(copies []float64, price []int64, i, j int, n float64) {
	m := len(t.y)
	f := t.f[i*m+j]
	switch {
	case f == 0:
		return
	case t.f[(i-1)*m+j] == f:
		t.count(copies, price, i-1, j, n)
		return
	case t.f[i*m+j-1] == f:
		t.count(copies, price, i, j-1, n)
		return
	}
	for _, it := range t.items {
		if it.x == i && it.y == j && price[it.kind] == f {
			copies[it.kind] += n
			return
		}
	}
	for k, r := range t.rx[i] {
		if k > 0 && t.f[k*m+j]+t.f[int(r)*m+j] == f {
			t.count(copies, price, k, j, n)
			t.count(copies, price, int(r), j, n)
			return
		}
	}
	for k, r := range t.ry[j] {
		if k > 0 && t.f[i*m+k]+t.f[i*m+int(r)] == f {
			t.count(copies, price, i, k, n)
			t.count(copies, price, i, int(r), n)
			return
		}
	}
}

// reach returns how far along x and along y a board must be used to hold a
// value; all of it if it cannot.
func (t *table) reach(value int64) [2]int {
	n, m := len(t.x), len(t.y)
	at := [2]int{n - 1, m - 1}
	for i := n - 1; i >= 0 && t.f[i*m+m-1] >= value; i-- {
		at[0] = i
	}
	for j := m - 1; j >= 0 && t.f[(n-1)*m+j] >= value; j-- {
		at[1] = j
	}
	return at
}
