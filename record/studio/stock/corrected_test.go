package stock_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	cost "backleaf/record/amount"
	"backleaf/record/book"
	"backleaf/record/studio/stock"
)

// Whatever is amended, moved to another lot or withdrawn panel by panel: what is
// left of a lot, and what its panels had of it, is what there was. The model
// shares out by area: an amount is of the panels of which it was said, and falls
// on those of them that were coated.
func TestCorrectedPanelByPanel(t *testing.T) {
	const held = 5000 // g in each tin
	lots := []record.Key{"tin", "other"}
	sides := []int{10, 20, 30, 40, 50, 60}
	type part struct { // of one panel in one entry
		lot   record.Key
		grams float64
		of    []int
		gone  bool
	}
	for seed := range uint64(3) {
		r := rand.New(rand.NewPCG(seed, 1))
		ctx, at := t.Context(), time.Date(2026, 5, 2, 12, 0, 0, 0, time.UTC)
		b, err := book.Create(ctx, filepath.Join(t.TempDir(), "studio.sqlite"))
		if err != nil {
			t.Fatal(err)
		}
		defer b.Close()
		es := []record.Entry{{Body: record.Studio{Maker: "Anna", Mark: "KB"}},
			{Body: record.Material{Key: "sealer", Name: "sealer", Uses: []record.Use{"sealer"}, Density: of[record.Density](t, "1 g/mL")}}}
		for _, k := range lots {
			es = append(es, record.Entry{Body: record.Lot{Key: k, Material: "sealer", Quantity: amountOf(t, held)}})
		}
		var panels []record.Number
		for i, side := range sides {
			panels = append(panels, number(t, i+1))
			es = append(es, record.Entry{Panels: panels[i:], Body: record.Cut{Batch: "a", Size: of[record.Size](t, fmt.Sprintf("%d x 30 cm", side))}})
		}
		named := func(is []int) (ns []record.Number) {
			for _, i := range is {
				ns = append(ns, panels[i])
			}
			return ns
		}
		model := map[int][]part{}
		for range 30 {
			some := r.Perm(len(panels))[:1+r.IntN(len(panels))]
			slices.Sort(some)
			grams, lot := float64(10+r.IntN(90)), lots[r.IntN(2)]
			e := record.Entry{Panels: named(some)}
			if len(model) < 3 {
				e.Body = record.Coat{Purpose: record.Sealer, Faces: []record.Face{record.Front}, Coating: record.Coating{
					Mix: []record.Part{{Parts: 1, Material: "sealer", Lot: lot}}, WetTotal: amountOf(t, int(grams))}}
				ps := make([]part, len(panels))
				for i := range ps {
					ps[i] = part{lot, grams, some, !slices.Contains(some, i)}
				}
				model[len(es)+1] = ps
				es = append(es, e)
				continue
			}
			seqs := make([]int, 0, len(model))
			for seq := range model {
				seqs = append(seqs, seq)
			}
			slices.Sort(seqs)
			seq := seqs[r.IntN(len(seqs))]
			ps := model[seq]
			e.Panels = slices.DeleteFunc(e.Panels, func(n record.Number) bool { return !slices.Contains(es[seq-1].Panels, n) })
			some = slices.DeleteFunc(some, func(i int) bool { return !slices.Contains(e.Panels, panels[i]) })
			switch what := r.IntN(8); {
			case len(some) == 0:
				continue
			case what == 0:
				e.Body = record.Withdrawn{Entry: int64(seq), Because: "not these"}
			case what < 4:
				e.Body = record.Amended{Entry: int64(seq), Because: "weighed", Change: fmt.Appendf(nil, `{"wet_total":"%v g"}`, grams)}
			default:
				e.Body = record.Amended{Entry: int64(seq), Because: "the other tin", Change: fmt.Appendf(nil, `{"mix":[{"parts":1,"material":"sealer","lot":%q}]}`, lot)}
			}
			for _, i := range some {
				switch b := e.Body.(type) {
				case record.Withdrawn:
					ps[i].gone = true
				case record.Amended:
					if strings.Contains(string(b.Change), "wet") {
						ps[i].grams, ps[i].of = grams, some
					} else {
						ps[i].lot = lot
					}
				}
			}
			es = append(es, e)
		}
		for i := range es {
			es[i].At = record.Moment(at)
		}
		if _, err := b.Append(ctx, at, es...); err != nil {
			t.Fatal(err)
		}
		want := map[record.Key]float64{}
		for _, ps := range model {
			for i, p := range ps {
				all := 0
				for _, j := range p.of {
					if !ps[j].gone {
						all += sides[j]
					}
				}
				if !p.gone {
					want[p.lot] += p.grams * float64(sides[i]) / float64(all)
				}
			}
		}
		w, err := b.Workshop(ctx)
		if err != nil {
			t.Fatal(err)
		}
		had := map[record.Key]float64{}
		for _, p := range w.Panels {
			for _, l := range cost.Cost(w, p, map[record.Key]cost.Price{"tin": {Minor: 1}, "other": {Minor: 1}}).Lines {
				had[l.Lot] += l.Share * held
			}
		}
		for _, k := range lots {
			if math.Abs(had[k]-want[k]) > 0.01 {
				t.Errorf("seed %d: the panels had %.2f g of %s, want %.2f", seed, had[k], k, want[k])
			}
			said, over, err := stock.Left(ctx, b, w, record.Coat{Coating: record.Coating{Mix: []record.Part{{Parts: 1, Material: "sealer", Lot: k}}}})
			if err != nil || len(said) != 1 || said[0].Code != "lot-left" {
				t.Fatalf("seed %d: of %s %v, %v, %v", seed, k, said, over, err)
			}
			text, _, _ := strings.Cut(said[0].Value("left").Text(), " ")
			if left, err := strconv.ParseFloat(text, 64); err != nil || math.Abs(held-want[k]-left) > 1 {
				t.Errorf("seed %d: %v g left of %s, want %.2f", seed, left, k, held-want[k])
			}
		}
	}
}

func amountOf(t *testing.T, grams int) record.Amount {
	t.Helper()
	return of[record.Amount](t, fmt.Sprintf("%d g", grams))
}
