package plan

import (
	"math"
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

func TestPainterOrders(t *testing.T) {
	var sum float64
	for _, c := range painterOrders {
		o := orderOf(c.kerf, c.pieces, c.sheets)
		p, err := Sheets(o)
		if err != nil {
			t.Fatal(c.name, err)
		}
		if err := checkPlan(o, p); err != nil {
			t.Error(c.name, err)
		}
		used, least := float64(p.Used)/1e12, float64(p.Proof.UsedLeast)/1e12
		t.Logf("%-40.40s sheets %d turns %d used %.3f (%+.2f%%) gap %.2f%% (%.2f) %d settings %d cuts %+v", c.name, len(p.Sheets), p.Turns, used, (used/c.used-1)*100,
			(used/least-1)*100, (c.used/c.bound-1)*100, p.Settings, p.Cuts, p.Proof)
		sum += used/c.used - 1
	}
	t.Logf("mean %+.3f%%", sum/20*100)
}
