package planning_test

import (
	"context"
	"crypto/rand"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/check"
	"backleaf/record/plan"
	"backleaf/record/plan/worksheet"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/planning"
	"backleaf/record/studio/private"
	"backleaf/record/studio/questions"
	"backleaf/record/studio/shelf"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"
)

// bookAt is a book with a shelf, worked by a clock that a test moves.
type bookAt struct {
	*studio.Session
	t   *testing.T
	now time.Time
}

func newBook(t *testing.T, start time.Time) *bookAt {
	t.Helper()
	b := &bookAt{t: t, now: start.Add(-time.Hour)}
	path := filepath.Join(t.TempDir(), "studio.sqlite")
	if err := studio.Create(t.Context(), path, func() time.Time { return b.now }, rand.Reader, record.Studio{Maker: "Ada Exemple", Mark: "KB", Zone: "Europe/Riga", Currency: "EUR"}); err != nil {
		t.Fatal(err)
	}
	opened, err := book.Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { opened.Close() })
	b.Session = &studio.Session{Book: opened, Clock: func() time.Time { return b.now }}
	v := b.look()
	var ms []record.Material
	for _, k := range []string{"birch-ply-3mm", "linen-fine", "acrylic-sealer", "acrylic-ground"} {
		m, err := shelf.Generic(k)
		if err != nil {
			t.Fatal(err)
		}
		if k == "linen-fine" {
			m.Cloth.Width = length(t, "150 cm")
		}
		ms = append(ms, m)
	}
	if _, err := shelf.Take(t.Context(), v, record.Moment(b.now), ms); err != nil {
		t.Fatal(err)
	}
	for _, l := range []struct {
		key, material record.Key
		quantity      string
		price         int64
	}{{"ply-1", "birch-ply-3mm", "3 sheets", 9000}, {"linen-1", "linen-fine", "10 m", 22000}, {"sealer-1", "acrylic-sealer", "2.5 L", 4100}, {"ground-1", "acrylic-ground", "1 kg", 2200}} {
		lot := record.Lot{Key: l.key, Material: l.material}
		if err := lot.Quantity.UnmarshalText([]byte(l.quantity)); err != nil {
			t.Fatal(err)
		}
		if l.key == "ply-1" {
			lot.Sheet = size(t, "2440 x 1220 mm")
		}
		if _, err := shelf.AddLot(t.Context(), b.look(), record.Moment(b.now), lot, private.Price{Minor: l.price, Currency: "EUR"}); err != nil {
			t.Fatal(err)
		}
	}
	return b
}

func (b *bookAt) look(terms ...string) *studio.View {
	b.t.Helper()
	v, err := b.Look(context.Background(), terms, nil)
	if err != nil {
		b.t.Fatal(err)
	}
	return v
}

func (b *bookAt) workshop() *record.Workshop {
	b.t.Helper()
	w, err := b.Book.Workshop(context.Background())
	if err != nil {
		b.t.Fatal(err)
	}
	return w
}

func length(t *testing.T, s string) (l record.Length) {
	t.Helper()
	if err := l.UnmarshalText([]byte(s)); err != nil {
		t.Fatal(err)
	}
	return l
}

func size(t *testing.T, s string) (x record.Size) {
	t.Helper()
	if err := x.UnmarshalText([]byte(s)); err != nil {
		t.Fatal(err)
	}
	return x
}

func part(k record.Key) []record.Part { return []record.Part{{Parts: 1, Material: k}} }

// usual is a recipe: seal all round, lay linen on the front, answer on the back,
// prime the front and answer on the back.
func usual() []planning.Step {
	front, back := []record.Face{record.Front}, []record.Face{record.Back}
	spread := func(ml float64) plan.Amount { return plan.Amount{Microliters: ml * 1000} }
	return []planning.Step{
		{Do: plan.Coating, Purpose: record.Sealer, Faces: record.Faces, Extra: []record.Face{record.Edges}, Mix: part("acrylic-sealer"), Spread: spread(100)},
		{Do: plan.LayingCloth, Purpose: record.Adhesive, Faces: front, Mix: part("acrylic-sealer"), Cloth: "linen-fine", Spread: spread(220)},
		{Do: plan.Coating, Purpose: record.Sealer, Faces: back, Mix: part("acrylic-sealer"), Spread: spread(150)},
		{Do: plan.Coating, Purpose: record.Ground, Faces: front, Mix: part("acrylic-ground"), Spread: spread(110)},
		{Do: plan.Coating, Purpose: record.Ground, Faces: back, Mix: part("acrylic-ground"), Spread: spread(110)},
	}
}

func wishes(t *testing.T, b *bookAt, start time.Time) map[string]planning.Wish {
	t.Helper()
	r := typed.For(b.look())
	base := planning.Wish{Board: "ply-1", Cloth: "linen-1", Kerf: length(t, "2.5 mm"), Trim: length(t, "5 mm"), Start: start, Recipe: usual()}
	if err := base.Humidity.UnmarshalText([]byte("55 %")); err != nil {
		t.Fatal(err)
	}
	few, more, inch := base, base, base
	few.Panels = planning.ParsePanels(r, "6 of 30x40 cm")
	more.Panels, more.Bench = planning.ParsePanels(r, "14 of 30x40 cm, 5 of 40 x 50 cm grain height"), 10
	inch.Panels = planning.ParsePanels(r, "8 of 8 x 10 in, 3 of 11 x 14 in grain width")
	if r.Err() != nil {
		t.Fatal(r.Err())
	}
	return map[string]planning.Wish{"few": few, "two batches": more, "inches": inch}
}

// tasks are what the list of what is due calls the acts of a recipe.
func task(a plan.Act, next int) []check.Task {
	switch a.Do {
	case plan.LayingCloth:
		return []check.Task{check.TaskLay}
	case plan.Trimming:
		return []check.Task{check.TaskTrim}
	case plan.Sanding:
		return []check.Task{check.TaskSand}
	}
	return [][]check.Task{0: {check.TaskSeal}, 3: {check.TaskAnswer}, 5: {check.TaskPrime}, 6: {check.TaskAnswer}}[next]
}

// A plan carried out as it was planned: at each hour the list of what is due
// asks for the act, neither too early nor too late, in the same window, and so
// does the bench when the act is written down; and in
// the end the panels cost what was planned, and took what was planned.
func TestCarriedOut(t *testing.T) {
	zone, err := time.LoadLocation("Europe/Riga")
	if err != nil {
		t.Fatal(err)
	}
	start := time.Date(2026, 5, 4, 10, 0, 0, 0, zone)
	for name := range wishes(t, newBook(t, start), start) {
		t.Run(name, func(t *testing.T) {
			b := newBook(t, start)
			wish := wishes(t, b, start)[name]
			d, err := planning.Make(t.Context(), b.Book, b.workshop(), tell.English(), wish)
			if err != nil {
				t.Fatal(err)
			}
			b.now = start
			if _, err := d.Write(t.Context(), b.look(), record.Moment(start), record.Cut{Batch: "may"}, false); err != nil {
				t.Fatal(err)
			}
			first := make([]int, len(d.Job.Batches)+1)
			for i, batch := range d.Job.Batches {
				first[i+1] = first[i] + batch.Panels
			}
			for _, s := range d.Job.Table.Slots {
				numbers := d.Job.Names[first[s.Batch]:first[s.Batch+1]]
				act := d.Job.Acts[s.Act]
				holdsDue(t, b, numbers, s, task(act, s.Act))
				b.now = s.End
				w, err := bench.Do(t.Context(), b.look(numbers...), record.Moment(s.End), done(b, d, s.Act, numbers))
				if err != nil {
					t.Fatal(err)
				}
				for _, x := range w.Warnings {
					if x.Code == "too-early" || x.Code == "too-late" {
						t.Errorf("act %d at %v: the bench finds it %s: %v", s.Act, s.End, x.Code, x.Values)
					}
				}
			}
			if len(d.Job.Table.Slots) != 7*len(d.Job.Batches) {
				t.Errorf("%d slots", len(d.Job.Table.Slots))
			}
			holdsCost(t, b, d)
		})
	}
}

// holdsDue holds a slot against the list of what is due when it begins.
func holdsDue(t *testing.T, b *bookAt, numbers []string, s plan.Slot, tasks []check.Task) {
	t.Helper()
	found := 0
	for _, st := range check.Due(b.workshop(), s.Start) {
		if !slices.Contains(numbers, string(st.Panels[0])) || !slices.Contains(tasks, st.Task) {
			continue
		}
		found++
		if st.Overdue || st.From.After(s.Start) || st.Safe.After(s.Start) {
			t.Errorf("act %d at %v: due says %v, %v to %v", s.Act, s.Start, st.Task, st.From, st.Until)
		}
		if !st.Until.IsZero() && (s.Until.IsZero() || s.Until.Sub(st.Until).Abs() > time.Minute) {
			t.Errorf("act %d: until %v, due says %v", s.Act, s.Until, st.Until)
		}
	}
	if found != len(numbers) {
		t.Errorf("act %d at %v: %d of %d panels wait for %v", s.Act, s.Start, found, len(numbers), tasks)
	}
}

// done is what is written down of an act: the amounts as planned, shared out by
// area, the lots as planned.
func done(b *bookAt, d planning.Day, act int, numbers []string) record.Body {
	a := d.Job.Acts[act]
	var c record.Coating
	if len(a.Mix) > 0 {
		lot := lotOf(d, a)
		l, _ := b.workshop().Lot(lot)
		c.Mix = []record.Part{{Parts: 1, Material: l.Material, Lot: lot}}
		_ = c.Humidity.UnmarshalText([]byte("55 %"))
		mL := a.PerSquare.Microliters / 1000 * squareMeters(b.workshop(), numbers, a)
		if err := c.WetTotal.UnmarshalText([]byte(strconv.FormatFloat(mL, 'f', 3, 64) + " mL")); err != nil {
			b.t.Fatal(err)
		}
	}
	var faces []record.Face
	for _, f := range a.Faces {
		faces = append(faces, record.Face(f))
	}
	switch a.Do {
	case plan.Trimming:
		return record.Trimmed{}
	case plan.Sanding:
		return record.Sanded{Faces: faces, Scale: "P", Grit: 180}
	case plan.LayingCloth:
		body := record.ClothLaid{Faces: faces, Cloth: "linen-fine", ClothLot: "linen-1", Coating: c}
		_ = body.Oversize.UnmarshalText([]byte("30 mm"))
		return body
	}
	coat := record.Coat{Faces: faces, Coating: c, Purpose: record.Sealer}
	for _, f := range a.Extra {
		coat.Extra = append(coat.Extra, record.Face(f))
	}
	if c.Mix[0].Lot == "ground-1" {
		coat.Purpose = record.Ground
	}
	return coat
}

func density(b *bookAt, k record.Key) int64 {
	m, _ := b.workshop().MaterialNow(k)
	rho, _ := m.Density.MilligramsPerMilliliter()
	return rho
}

// squareMeters is the area of an act on panels, reckoned anew.
func squareMeters(w *record.Workshop, numbers []string, a plan.Act) (area float64) {
	for _, n := range numbers {
		size := w.Panel(record.Number(n)).Size()
		h, _ := size.Height.Micrometers()
		b, _ := size.Width.Micrometers()
		d, _ := size.Depth.Micrometers()
		for _, f := range a.Faces {
			one := float64(h) / 1e6 * float64(b) / 1e6
			if f == plan.Edges {
				one = 2 * (float64(h) + float64(b)) / 1e6 * float64(d) / 1e6
			}
			if slices.Contains(a.Extra, f) {
				one *= 2
			}
			area += one
		}
	}
	return area
}

// holdsCost holds the planned amounts and prices against those of the panels
// that were made, and against a sum of the test's own.
func holdsCost(t *testing.T, b *bookAt, d planning.Day) {
	t.Helper()
	w := b.workshop()
	used := map[record.Key]float64{} // mL
	for _, a := range d.Job.Acts {
		if len(a.Mix) > 0 {
			used[lotOf(d, a)] += a.PerSquare.Microliters / 1000 * squareMeters(w, d.Job.Names, a)
		}
	}
	sealer, ground := 2500.0, 1000/(float64(density(b, "acrylic-ground"))/1000)
	own := used["sealer-1"]/sealer*4100 + used["ground-1"]/ground*2200
	for _, n := range d.Job.Wet.Products {
		lot := record.Key(d.Job.Tins[n.From[0].Tin].Name)
		if got := n.Laid.Microliters / 1000; math.Abs(got-used[lot]) > 1e-6*used[lot] {
			t.Errorf("%s: %v mL planned, %v reckoned", lot, got, used[lot])
		}
		if got := n.Taken.Microliters / 1000; math.Abs(got-used[lot]/0.9) > 1e-6*used[lot] {
			t.Errorf("%s: %v mL to take, %v reckoned with a tenth lost", lot, got, used[lot]/0.9)
		}
	}
	for _, n := range d.Job.Names {
		size := w.Panel(record.Number(n)).Size()
		h, _ := size.Height.Micrometers()
		wd, _ := size.Width.Micrometers()
		mm := func(um int64, more float64) float64 { return float64(um)/1000 + more }
		own += mm(h, 2.5)*mm(wd, 2.5)/(3*2440*1220)*9000 + mm(h, 60)*mm(wd, 60)/(10000*1500)*22000
	}
	_, batches, _, err := questions.Costs(t.Context(), tell.English(), b.Book, d.Job.Names, nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(batches) != 1 || !batches[0].Complete || len(d.Job.Sums) != 1 {
		t.Fatalf("%+v, planned %+v", batches, d.Job.Sums)
	}
	// Of panels each line is rounded, of a plan each lot.
	lines := float64(len(d.Job.Names) * 7)
	planned, made := float64(d.Job.Sums[0].Minor), float64(batches[0].Sums[0].Minor)
	if math.Abs(planned-own) > 3 || math.Abs(planned-made) > lines/2 {
		t.Errorf("planned %v, reckoned %v, made %v", planned, own, made)
	}
}

func lotOf(d planning.Day, a plan.Act) record.Key {
	for _, t := range d.Job.Tins {
		if t.Product == a.Mix[0].Product {
			return record.Key(t.Name)
		}
	}
	return ""
}

func TestParsePanels(t *testing.T) {
	for _, c := range []struct {
		typed string
		want  []planning.Panels
	}{
		{"14 of 30x40 cm", []planning.Panels{{Count: 14, Size: size(t, "30 x 40 cm")}}},
		{"14 of 30x40 cm, 6 of 8x10 in grain height", []planning.Panels{{Count: 14, Size: size(t, "30 x 40 cm")}, {Count: 6, Size: size(t, "8 x 10 in"), Grain: "height"}}},
		{"2 of 30,5 x 40 cm and 3 of 30.5x40 cm", []planning.Panels{{Count: 5, Size: size(t, "30.5 x 40 cm")}}},
		{"1 of 20x20 cm x 4 mm grain width; 2 of 8 1/2 x 11 in", []planning.Panels{{Count: 1, Size: size(t, "20 x 20 cm x 4 mm"), Grain: "width"}, {Count: 2, Size: size(t, "8 1/2 x 11 in")}}},
		{"3 of 30x40", []planning.Panels{{Count: 3, Size: size(t, "30 x 40 mm")}}},
		{"", nil}, {"fourteen", nil}, {"14", nil}, {"14 of", nil}, {"14 of big", nil}, {"x 14 of 30x40 cm", nil}, {"14 of 30x40 cm grain sideways", nil}, {"-3 of 30x40 cm", nil},
	} {
		r := &typed.Reader{Units: "mm"}
		got := planning.ParsePanels(r, c.typed)
		if !slices.Equal(got, c.want) || (r.Err() == nil) != (c.want != nil) {
			t.Errorf("%q: %+v, %v", c.typed, got, r.Err())
		}
	}
}

func FuzzParsePanels(f *testing.F) {
	f.Add("14 of 30x40 cm, 6 of 8x10 in grain height")
	f.Add("1 of 1 of 1x1 mm")
	f.Fuzz(func(t *testing.T, s string) {
		r := &typed.Reader{Units: "mm"}
		got := planning.ParsePanels(r, s)
		if (len(got) == 0) != (r.Err() != nil) {
			t.Errorf("%q: %v, %v", s, got, r.Err())
		}
	})
}

// Sheets that the lot does not hold are to be bought: of three, 1.22 × 2.44 m
// (24.8 panels of 30 × 40 cm by area, so fewer than 25), one is begun by the
// panels that were cut, and two whole ones are left.
func TestSheetsToBuy(t *testing.T) {
	start := time.Date(2026, 5, 4, 10, 0, 0, 0, time.UTC)
	b := newBook(t, start)
	ask := func(panels string) (planning.Day, string) {
		r := typed.For(b.look())
		d, err := planning.Make(t.Context(), b.Book, b.workshop(), tell.English(), planning.Wish{Board: "ply-1", Trim: length(t, "5 mm"), Start: start, Panels: planning.ParsePanels(r, panels)})
		if err != nil || r.Err() != nil {
			t.Fatal(err, r.Err())
		}
		return d, strings.Join(d.Job.Sections()[0].Lines, "\n")
	}
	few, said := ask("6 of 30x40 cm")
	if strings.Contains(said, "to buy") {
		t.Errorf("of three sheets, one is enough: %s", said)
	}
	b.now = start
	if _, err := few.Write(t.Context(), b.look(), record.Moment(start), record.Cut{Batch: "may"}, false); err != nil {
		t.Fatal(err)
	}
	d, said := ask("120 of 30x40 cm")
	buy := len(d.Job.Plan.Sheets) - 2
	if want := fmt.Sprintf("Of ply-1 at most 2 whole sheets should be left: to buy %d.", buy); !strings.Contains(said, want) {
		t.Errorf("%q is not in %s", want, said)
	}
	if v := d.View().Buy; len(v) != 1 || v[0] != (worksheet.Buy{Sheet: "ply-1", Left: 2, Buy: buy}) || few.View().Buy != nil {
		t.Errorf("for programs: %v", v)
	}
}

// A recipe taken from slips of a panel: what was trimmed before any cloth lay is
// not planned; of a tin from which one coat takes nobody knows how much, what
// the others take is told as the least.
func TestSlipsOfARecipe(t *testing.T) {
	start := time.Date(2026, 5, 4, 10, 0, 0, 0, time.UTC)
	b := newBook(t, start)
	wish := wishes(t, b, start)["few"]
	r := usual()
	r[1].Mix, r[1].Spread = part("acrylic-ground"), plan.Amount{}
	wish.Recipe = append([]planning.Step{{Do: plan.Trimming}}, r...)
	d, err := planning.Make(t.Context(), b.Book, b.workshop(), tell.English(), wish)
	if err != nil {
		t.Fatal(err)
	}
	var done []plan.Work
	for _, s := range d.Job.Table.Slots {
		done = append(done, d.Job.Batches[s.Batch].Acts[s.Act].Do)
	}
	if lay, trim := slices.Index(done, plan.LayingCloth), slices.Index(done, plan.Trimming); lay < 0 || trim < lay || slices.Contains(done[trim+1:], plan.Trimming) {
		t.Errorf("cloth is laid and trimmed in the order %v", done)
	}
	if text := d.Job.Text(); strings.Count(text, ": take at least ") != 1 || strings.Count(text, ": take ") != 2 {
		t.Errorf("two products, of one the least:\n%s", text)
	}
}
