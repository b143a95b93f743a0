package plan

import (
	"backleaf/record/toolcheck"
	"fmt"
	"math"
	"strings"
	"testing"
)

type mmPiece struct {
	h, w  float64
	grain Grain
	n     int
}

type mmSheet struct {
	name       string
	l, w, trim float64
	grain      Grain
	offcut     bool
	n          int
}

func um(mm float64) int64 { return int64(math.Round(mm * 1000)) }

func orderOf(kerf float64, ps []mmPiece, ss []mmSheet) Order {
	o := Order{Kerf: um(kerf)}
	for _, p := range ps {
		o.Pieces = append(o.Pieces, Piece{um(p.h), um(p.w), p.grain, p.n})
	}
	for _, s := range ss {
		o.Sheets = append(o.Sheets, Sheet{Name: s.name, Length: um(s.l), Width: um(s.w), Trim: um(s.trim), Grain: s.grain, Offcut: s.offcut, Count: s.n})
	}
	return o
}

// The plans of another program are the yardstick: as many sheets, and on
// average no more board used up.
func TestPainterOrders(t *testing.T) {
	var sum float64
	for i, c := range painterOrders {
		o := orderOf(c.kerf, c.pieces, c.sheets)
		p, err := Sheets(o)
		if err != nil {
			t.Fatal(c.name, err)
		}
		for _, err := range []error{checkPlan(o, p), replay(o, p)} {
			if err != nil {
				t.Error(c.name, err)
			}
		}
		used, least := float64(p.Used)/1e12, float64(p.Proof.UsedLeast)/1e12
		more := used/c.used - 1
		t.Logf("%-40.40s %d sheets, %d turns, %.3f m² (%+.2f %%), at most %.2f %% above the least (theirs %.2f %%), %d settings, %d cuts", c.name, len(p.Sheets), p.Turns, used, more*100,
			(used/least-1)*100, (c.used/c.bound-1)*100, p.Settings, p.Cuts)
		if len(p.Sheets) != c.least || !p.Proof.Sheets {
			t.Errorf("%s: %d sheets, proven least %v; want %d, proven", c.name, len(p.Sheets), p.Proof.Sheets, c.least)
		}
		if more > 0.05 {
			t.Errorf("%s: %.2f %% more board than the other program", c.name, more*100)
		}
		if i%4 == 0 {
			if again, err := Sheets(o); err != nil || fmt.Sprint(again) != fmt.Sprint(p) {
				t.Errorf("%s: another plan the second time", c.name)
			}
		}
		sum += more
	}
	if mean := sum / float64(len(painterOrders)); mean > 0.01 {
		t.Errorf("%.2f %% more board on average", mean*100)
	}
}

func TestRefused(t *testing.T) {
	sheet := Sheet{Name: "full", Length: um(2440), Width: um(1220), Trim: um(5), Count: Unlimited}
	piece := Piece{um(300), um(400), Free, 2}
	many := make([]Piece, MaxSizes+1)
	for i := range many {
		many[i] = Piece{um(100), um(100 + float64(i)), Free, 1}
	}
	for _, c := range []struct {
		name string
		o    Order
		want string
	}{
		{"nothing", Order{Sheets: []Sheet{sheet}}, "no panel is asked for"},
		{"no sheet", Order{Pieces: []Piece{piece}}, "no sheet to cut from"},
		{"none of a size", Order{Pieces: []Piece{{um(300), um(400), Free, 0}}, Sheets: []Sheet{sheet}}, "0 pieces of 300 x 400 mm"},
		{"ten thousand", Order{Pieces: []Piece{{um(300), um(400), Free, 10000}}, Sheets: []Sheet{sheet}}, "at most 500"},
		{"too many together", Order{Pieces: []Piece{{um(300), um(400), Free, 400}, {um(300), um(300), Free, 101}}, Sheets: []Sheet{sheet}}, "501 pieces at once"},
		{"too many sizes", Order{Pieces: many, Sheets: []Sheet{sheet}}, "at most 60"},
		{"no size", Order{Pieces: []Piece{{0, um(400), Free, 1}}, Sheets: []Sheet{sheet}}, "more than 0"},
		{"too large", Order{Pieces: []Piece{{um(1211), um(1212.5), Free, 1}}, Sheets: []Sheet{sheet}}, "1 mm too large"},
		{"too large with its grain", Order{Pieces: []Piece{{um(300), um(1300), First, 1}}, Sheets: []Sheet{{Name: "ply", Length: um(2440), Width: um(1220), Grain: First, Count: Unlimited}}}, "80 mm too large"},
		{"kerf below nothing", Order{Kerf: -1, Pieces: []Piece{piece}, Sheets: []Sheet{sheet}}, "kerf"},
		{"a sheet twice", Order{Pieces: []Piece{piece}, Sheets: []Sheet{sheet, sheet}}, "named twice"},
		{"all trimmed off", Order{Pieces: []Piece{piece}, Sheets: []Sheet{{Name: "a", Length: 100, Width: 100, Trim: 50, Count: 1}}}, "leaves nothing"},
		{"none left", Order{Pieces: []Piece{piece}, Sheets: []Sheet{{Name: "a", Length: um(500), Width: um(500)}}}, "no sheet is at hand"},
		{"too few", Order{Pieces: []Piece{piece}, Sheets: []Sheet{{Name: "a", Length: um(500), Width: um(500), Count: 1}}}, "too few"},
		{"five turns", Order{Turns: 5, Pieces: []Piece{piece}, Sheets: []Sheet{sheet}}, "turns"},
	} {
		if _, err := Sheets(c.o); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
}

// The largest orders end, whatever they ask for.
func TestLargest(t *testing.T) {
	toolcheck.Long(t)
	o := Order{Kerf: 2500, Sheets: []Sheet{
		{Name: "full", Length: um(2440), Width: um(1220), Trim: um(5), Count: Unlimited},
		{Name: "half", Length: um(1220), Width: um(1220), Trim: um(5), Count: Unlimited},
		{Name: "quarter", Length: um(1220), Width: um(610), Trim: um(5), Count: Unlimited}}}
	for i := range 50 {
		o.Pieces = append(o.Pieces, Piece{um(153.1 + 7.3*float64(i)), um(201.7 + 11.9*float64(i)), Free, 10})
	}
	o.effort = quick
	p, err := Sheets(o)
	if err != nil {
		t.Fatal(err)
	}
	if err := checkPlan(o, p); err != nil {
		t.Error(err)
	}
}

func BenchmarkOrder(b *testing.B) {
	for _, c := range painterOrders {
		o := orderOf(c.kerf, c.pieces, c.sheets)
		b.Run(strings.ReplaceAll(c.name, " ", "_"), func(b *testing.B) {
			for b.Loop() {
				if _, err := Sheets(o); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
