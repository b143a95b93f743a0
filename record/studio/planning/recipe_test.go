package planning_test

import (
	"cmp"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/plan"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/planning"
	"backleaf/record/tell"
)

// A recipe made from panels asks for as much of every product, and costs as
// much, as a plan for more such panels does, however the amounts were written
// down; and what was laid on those panels is as the recipe plans it.
func TestRecipeAsMade(t *testing.T) {
	start := time.Date(2026, 5, 4, 10, 0, 0, 0, time.UTC)
	b := newBook(t, start)
	for i, amount := range []string{"50 g", "1.9 oz", "0.04 L"} {
		for k, thinned := range []string{"", "10 %", "10 % white spirit"} {
			lot := []record.Key{"ground-1", "sealer-1"}[(i+k)%2] // by the kilogram, by the litre
			t.Run(strings.Join([]string{amount, thinned, string(lot)}, " "), func(t *testing.T) {
				batch := record.Key(fmt.Sprint("b", len(b.look().Roll.Batches)))
				if _, err := bench.Add(t.Context(), b.look(), record.Moment(b.now), record.Cut{Batch: batch, Board: "birch-ply-3mm"}, []planning.Panels{{Count: 2, Size: size(t, "20 x 25 cm x 3 mm")}}); err != nil {
					t.Fatal(err)
				}
				l, _ := b.workshop().Lot(lot)
				coat := record.Coat{Purpose: record.Ground, Faces: []record.Face{record.Front, record.Back}, Extra: []record.Face{record.Front}}
				coat.Mix = []record.Part{{Parts: 1, Material: l.Material, Lot: lot}}
				if err := coat.WetTotal.UnmarshalText([]byte(amount)); err != nil {
					t.Fatal(err)
				}
				if share, thinner, ok := strings.Cut(thinned, " %"); ok {
					coat.Thinner = strings.TrimSpace(thinner)
					if err := coat.Thinned.UnmarshalText([]byte(share + " %")); err != nil {
						t.Fatal(err)
					}
				}
				v := b.look("batch:" + string(batch))
				if _, err := bench.Do(t.Context(), v, record.Moment(b.now), coat); err != nil {
					t.Fatal(err)
				}
				w := b.workshop()
				made, _, err := planning.AsRecipe(t.Context(), b.Book, v.Panels[0], "g")
				if err != nil {
					t.Fatal(err)
				}
				steps := planning.FromRecipe(made)
				like := planning.Wish{Board: "ply-1", Start: start}
				planning.AsMade(&like, w, v.Panels)
				by := like
				by.Recipe = steps
				holdsAlike(t, b, like, by)
				for _, x := range planning.Compare(w, v.Panels, steps, tell.English()) {
					one := cmp.Or(x.Planned.Milligrams, x.Planned.Microliters)
					if x.Code != "even" && thinned != "10 % white spirit" || one != 0 && x.Planned.Milligrams*x.Planned.Microliters != 0 {
						t.Errorf("compared with itself: %+v", x)
					}
				}
			})
		}
	}
}

// What a recipe does face by face and the panels had in fewer acts is compared
// face by face; an act on a face more is beyond the recipe.
func TestCompareFaces(t *testing.T) {
	b := newBook(t, time.Date(2026, 5, 4, 10, 0, 0, 0, time.UTC))
	front, back, edges := []record.Face{record.Front}, []record.Face{record.Back}, []record.Face{record.Edges}
	for i, x := range []struct {
		recipe, done [][]record.Face
		want         string
	}{
		{[][]record.Face{front, back}, [][]record.Face{{record.Back, record.Front}}, "even even"},
		{[][]record.Face{front, front, back, back}, [][]record.Face{{record.Front, record.Back}, {record.Front, record.Back}}, "even even even even"},
		{[][]record.Face{front, {record.Back, record.Edges}}, [][]record.Face{{record.Front, record.Back, record.Edges}}, "even even"},
		{[][]record.Face{front, back}, [][]record.Face{{record.Front, record.Back, record.Edges}}, "not-done not-done beyond"},
		{[][]record.Face{front, {record.Back, record.Edges}}, [][]record.Face{{record.Front, record.Back}}, "not-done not-done beyond"},
		{[][]record.Face{front, back, {record.Front, record.Back}}, [][]record.Face{{record.Front, record.Back}}, "not-done not-done even"},
		{[][]record.Face{front, back, edges}, [][]record.Face{front, back}, "even even not-done"},
	} {
		batch := record.Key(fmt.Sprint("c", i))
		if _, err := bench.Add(t.Context(), b.look(), record.Moment(b.now), record.Cut{Batch: batch, Board: "birch-ply-3mm"}, []planning.Panels{{Count: 2, Size: size(t, "20 x 20 cm x 3 mm")}}); err != nil {
			t.Fatal(err)
		}
		v := b.look("batch:" + string(batch))
		for _, fs := range x.done {
			coat := record.Coat{Purpose: record.Ground, Faces: fs}
			coat.Mix = []record.Part{{Parts: 1, Material: "acrylic-ground", Lot: "ground-1"}}
			area := 0.0 // two panels, 100 g on a square metre
			for _, f := range fs {
				area += map[record.Face]float64{record.Front: 0.08, record.Back: 0.08, record.Edges: 2 * 4 * 0.2 * 0.003}[f]
			}
			if err := coat.WetTotal.UnmarshalText(fmt.Appendf(nil, "%.2f g", 100*area)); err != nil {
				t.Fatal(err)
			}
			if _, err := bench.Do(t.Context(), v, record.Moment(b.now), coat); err != nil {
				t.Fatal(err)
			}
		}
		r := record.Recipe{Key: "r"}
		for _, fs := range x.recipe {
			s := record.RecipeStep{Purpose: record.Ground, Faces: fs, Material: "acrylic-ground"}
			if err := s.Spread.UnmarshalText([]byte("100 g/m2")); err != nil {
				t.Fatal(err)
			}
			r.Steps = append(r.Steps, s)
		}
		var got []string
		for _, s := range planning.Compare(b.workshop(), v.Panels, planning.FromRecipe(r), tell.English()) {
			got = append(got, s.Code)
		}
		if strings.Join(got, " ") != x.want {
			t.Errorf("%v by %v: %v, want %s", x.done, x.recipe, got, x.want)
		}
	}
}

// holdsAlike holds the wet materials and the costs of two plans against each
// other; a recipe keeps a tenth of a gram on a square metre.
func holdsAlike(t *testing.T, b *bookAt, wishes ...planning.Wish) {
	t.Helper()
	var ds []planning.Day
	for _, wish := range wishes {
		d, err := planning.Make(t.Context(), b.Book, b.workshop(), tell.English(), wish)
		if err != nil {
			t.Fatal(err)
		}
		ds = append(ds, d)
	}
	near := func(what string, x, y float64) {
		if math.Abs(x-y) > max(x, y)/200+0.5 {
			t.Errorf("%s: %.1f as made, %.1f by the recipe", what, x, y)
		}
	}
	x, y := ds[0].Job.Wet.Products[0], ds[1].Job.Wet.Products[0]
	for what, of := range map[string]func(plan.ProductNeed) plan.Amount{"laid": func(n plan.ProductNeed) plan.Amount { return n.Laid }, "taken": func(n plan.ProductNeed) plan.Amount { return n.Taken }} {
		near(what+", mass", of(x).Milligrams, of(y).Milligrams)
		near(what+", volume", of(x).Microliters, of(y).Microliters)
	}
	if len(ds[0].Job.Costs) != len(ds[1].Job.Costs) || (x.Why != "") != (y.Why != "") {
		t.Fatalf("costs %v and %v, %q and %q", ds[0].Job.Costs, ds[1].Job.Costs, x.Why, y.Why)
	}
	for i, c := range ds[0].Job.Costs {
		near("cost of "+c.What, float64(c.Price.Minor), float64(ds[1].Job.Costs[i].Price.Minor)+0.5)
	}
}
