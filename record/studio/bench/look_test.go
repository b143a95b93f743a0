package bench_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/book"
	"backleaf/record/plan"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/stock"
	"backleaf/record/toolcheck"
)

// An act is judged by look-ups: what was taken of a lot, and the readings of the
// room near the layers. They say what a fold of the whole journal says, whatever
// was amended, withdrawn, written late, or not known.
func TestLookAsWhole(t *testing.T) {
	for seed := range uint64(toolcheck.Rounds(20, 3)) {
		r := rand.New(rand.NewPCG(seed, 31))
		s := aMess(t, r)
		ctx := t.Context()
		if _, err := s.Book.Verify(ctx, nil); err != nil {
			t.Fatal(seed, err)
		}
		w, err := s.Book.Workshop(ctx)
		if err != nil {
			t.Fatal(err)
		}
		all := takenOf(w)
		for _, l := range w.Lots {
			got, err := stock.TakenOf(ctx, s.Book, w, l.Body.Key)
			want := all[l.Body.Key]
			if err != nil || !near(got.Area, want.Area) || !near(got.Wet.Milligrams, want.Wet.Milligrams) || !near(got.Wet.Microliters, want.Wet.Microliters) || got.Open != want.Open || got.Unsure != want.Unsure {
				t.Errorf("seed %d, %s: %+v, %v; the whole journal says %+v", seed, l.Body.Key, got, err, want)
			}
		}
		for range 4 {
			term := fmt.Sprint(1+r.IntN(4), "-", 5+r.IntN(4))
			light, err := s.Look(ctx, []string{term}, nil)
			if err != nil {
				t.Fatal(err)
			}
			whole, err := s.LookWhole(ctx, []string{term}, nil)
			if err != nil {
				t.Fatal(err)
			}
			for _, p := range light.Shop.Panels {
				for _, l := range p.Layers() {
					got, want := light.Shop.Readings(l.At), whole.Shop.Readings(l.At)
					same := slices.EqualFunc(got, want, func(a, b record.Done[record.Climate]) bool { return reflect.DeepEqual(a, b) })
					if _, _, _, ok := l.At.Air(); ok && !same {
						t.Errorf("seed %d: near %s the air was %v, by the whole journal %v", seed, l.At, got, want)
					}
				}
			}
			for _, text := range []string{aCoat(r), `{"kind":"sanded","faces":["front"],"grit":180,"scale":"P"}`, `{"kind":"trimmed"}`, `{"kind":"varnish","faces":["front"],"mix":[{"parts":1,"material":"sealer","lot":"tin-1"}]}`} {
				e := entry(t, "{"+these(1, 1)+","+text[1:])
				at := record.Moment(s.Clock().Add(-time.Duration(r.IntN(1500)) * time.Hour))
				one, two := *light, *whole
				body, said, err := bench.Before(ctx, &one, at, e.Body)
				body2, said2, err2 := bench.Before(ctx, &two, at, e.Body)
				if !reflect.DeepEqual(body, body2) || !reflect.DeepEqual(said, said2) || fmt.Sprint(err) != fmt.Sprint(err2) {
					t.Errorf("seed %d, %s at %s: %v, %v; by the whole journal %v, %v", seed, text, at, said, err, said2, err2)
				}
			}
		}
	}
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(math.Abs(a), math.Abs(b)) }

// aMess is a book of ten panels, of which much was put right.
func aMess(t *testing.T, r *rand.Rand) *studio.Session {
	t.Helper()
	start := time.Date(2026, 5, 2, 8, 0, 0, 0, time.UTC)
	texts := []string{`{"kind":"studio","maker":"Anna","mark":"KB"}`,
		`{"kind":"material","key":"sealer","name":"sealer","uses":["sealer","ground","varnish"],"binder":"acrylic-dispersion","density":"1.04 g/mL","touch_dry_from":"20 min","touch_dry_to":"40 min","cure_from":"24 h","cure_to":"40 h"}`,
		`{"kind":"material","key":"other","name":"other","uses":["sealer","ground"]}`,
		`{"kind":"material","key":"linen","name":"linen","uses":["cloth"]}`, `{"kind":"material","key":"ply","name":"ply","uses":["board"]}`,
		`{"kind":"lot","key":"tin-1","material":"sealer","quantity":"2 L"}`, `{"kind":"lot","key":"tin-2","material":"other","quantity":"1 kg"}`,
		`{"kind":"lot","key":"bolt","material":"linen","quantity":"5 m"}`, `{"kind":"lot","key":"sheets","material":"ply","quantity":"2 sheets","sheet":"1 x 1 m"}`,
		`{"kind":"cut","batch":"a","size":"30 x 40 cm","board":"ply","board_lot":"sheets",` + these(1, 6) + `}`, `{"kind":"cut","batch":"b","size":"20 x 20 cm","board":"ply",` + these(7, 10) + `}`}
	var fixable []int64
	kindOf := map[int64]string{}
	all := map[int64]string{}
	for n := int64(len(texts)) + 1; n < 70; n++ {
		from := 1 + r.IntN(6)
		panels := these(from, from+r.IntN(5))
		at := func(week, weeks int) string { // what is amended is moved to weeks of its own
			at := start.Add(time.Duration(168*(week+r.IntN(weeks))+r.IntN(20)) * time.Hour)
			return `"at":"` + []string{at.Format(time.RFC3339), at.Format(time.RFC3339), at.Format(time.DateOnly), "2026-05", "unknown", "../2026-05-06"}[r.IntN(6)] + `"`
		}
		when := at(0, 6)
		pick := func(of ...string) string { return of[r.IntN(len(of))] }
		var text string
		switch k := r.IntN(10); {
		case k < 3:
			text = aCoat(r)
		case k < 4:
			text = `{"kind":"cloth","faces":["front"],"cloth":"linen","cloth_lot":"bolt"` + pick(``, `,"oversize":"2 cm"`) + `,"mix":[{"parts":1,"material":"sealer","lot":"tin-1"}]` + pick(``, `,"wet_each":"20 mL"`) + `}`
		case k < 5:
			text = `{"kind":"varnish","faces":["front"],"mix":[{"parts":1,"material":"other","lot":"tin-2"}],"wet_total":"` + fmt.Sprint(1+r.IntN(9)) + ` mL"}`
		case k < 7:
			when = at(0, 9)
			text, panels = fmt.Sprintf(`{"kind":"climate","temperature":"%d °C"%s}`, 15+r.IntN(9), pick(``, fmt.Sprintf(`,"humidity":"%d %%"`, 40+r.IntN(50)))), ""
		case k < 8 && len(fixable) > 0:
			text = fmt.Sprintf(`{"kind":"withdrawn","entry":%d,"because":"b"}`, fixable[r.IntN(len(fixable))])
		case k < 9 && len(fixable) > 0:
			of := fixable[r.IntN(len(fixable))]
			change := at(6, 3)
			if k := kindOf[of]; k != "climate" && k != "amended" && k != "withdrawn" {
				change = pick(change, `"thinned":"10 %"`, `"wet_total":"90 g","wet_each":null`, `"mix":[{"parts":1,"material":"other","lot":"tin-2"}]`)
			}
			text = fmt.Sprintf(`{"kind":"amended","entry":%d,"because":"b","change":{%s}}`, of, change)
		default:
			text, panels = `{"kind":"resized","how":"cut-down","size":"18 x 18 cm","because":"a dent"}`, these(from, from)
		}
		fields := strings.Split(text, `"`)
		kind := fields[3]
		if kind == "withdrawn" || kind == "amended" {
			when = ""
			var of int64
			fmt.Sscan(strings.Trim(fields[6], ":,"), &of)
			if panels = all[of]; panels != "" && r.IntN(2) == 0 {
				first := strings.SplitN(strings.TrimSuffix(strings.TrimPrefix(panels, `"panels":[`), "]"), ",", 2)[0]
				panels = `"panels":[` + first + `]`
			}
		} else if kind != "resized" {
			all[n] = panels
		}
		fixable, kindOf[n] = append(fixable, n), kind
		if kind == "resized" {
			fixable = fixable[:len(fixable)-1]
		}
		texts = append(texts, "{"+strings.Join(append(nonempty(panels, when), text[1:]), ","))
	}
	b, err := book.Create(t.Context(), filepath.Join(t.TempDir(), "studio.sqlite"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	now := start.Add(1500 * time.Hour)
	moved, next := map[int64]int64{}, int64(1) // what is refused has no number
	for i := 0; i < len(texts); {
		if err := b.Fill(t.Context(), now, func(d *book.Draft) error {
			for portion := 1 + r.IntN(15); portion > 0 && i < len(texts); portion-- {
				e := entry(t, texts[i])
				i++
				switch c := e.Body.(type) {
				case record.Withdrawn:
					c.Entry = moved[c.Entry]
					e.Body = c
				case record.Amended:
					c.Entry = moved[c.Entry]
					e.Body = c
				}
				if _, err := d.Put(e); err == nil {
					moved[int64(i)], next = next, next+1
				}
			}
			return nil
		}); err != nil {
			t.Fatal(err)
		}
	}
	if int(next) < len(texts)*3/4 {
		t.Fatalf("%d of %d were taken", next, len(texts))
	}
	return &studio.Session{Book: b, Clock: func() time.Time { return now }}
}

func nonempty(parts ...string) (out []string) {
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return out
}

func aCoat(r *rand.Rand) string {
	mix := []string{`{"parts":1,"material":"sealer","lot":"tin-1"}`, `{"parts":1,"material":"sealer","lot":"tin-1"}`, `{"parts":1,"material":"other","lot":"tin-2"}`,
		`{"parts":2,"material":"sealer","lot":"tin-1"},{"parts":1,"material":"other","lot":"tin-2"}`, `{"parts":1,"material":"sealer"}`, `{"parts":3,"material":"sealer","lot":"tin-1"},{"parts":1,"material":"sealer","lot":"tin-1"}`}
	wet := []string{``, `,"wet_each":"12 g"`, `,"wet_each":"9 mL"`, `,"wet_total":"80 g"`, `,"wet_total":"70 mL"`, `,"wet_total":"90 g","thinned":"25 %"`, `,"wet_total":"unknown"`, `,"wet_each":"10 mL","thinned":"5 %","thinned_with":"white spirit"`}
	return fmt.Sprintf(`{"kind":"coat","purpose":"sealer","faces":[%q],"mix":[%s]%s}`, record.Faces[r.IntN(3)], mix[r.IntN(len(mix))], wet[r.IntN(len(wet))])
}

// these is the "panels" member for serials from to to.
func these(from, to int) string {
	var ns []string
	for i := from; i <= to; i++ {
		n, err := record.NewNumber("KB", 2026, i, "")
		if err != nil {
			panic(err)
		}
		ns = append(ns, fmt.Sprintf("%q", n))
	}
	return `"panels":[` + strings.Join(ns, ",") + "]"
}

func entry(t *testing.T, text string) record.Entry {
	t.Helper()
	e, err := accept.Parse([]byte(text))
	if err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	return e
}

// takenOf adds up what was taken from each lot, each entry once, as it stands on
// each of its panels.
func takenOf(w *record.Workshop) map[record.Key]stock.Taken {
	all := map[record.Key]stock.Taken{}
	seen := map[int64]bool{}
	wet := func(c record.Coating, e record.Event) {
		a := plan.Act{NotWater: c.Thinner != ""}
		a.Thinned, _ = c.Thinned.Millipercent()
		var products []plan.Product
		for i, part := range c.Mix {
			products = append(products, stock.Product(w, part.Material))
			a.Mix = append(a.Mix, plan.Portion{Product: i, Parts: part.Parts})
		}
		if len(c.Mix) == 0 {
			return
		}
		mg, ul := w.Laid(e)
		laid := plan.Amount{Milligrams: mg, Microliters: ul}
		_, parts, why := a.Split(laid, products)
		for i, part := range c.Mix {
			t := all[part.Lot]
			if why != "" || laid == (plan.Amount{}) {
				t.Open, t.Unsure = t.Open+1, true
			} else {
				t.Wet.Milligrams += parts[i].Milligrams
				t.Wet.Microliters += parts[i].Microliters
			}
			all[part.Lot] = t
		}
	}
	for _, panel := range w.Panels {
		for _, e := range panel.Events {
			if seen[e.Seq] {
				continue
			}
			seen[e.Seq] = true
			for _, e := range w.Alike(e.Seq, e.Panels) {
				switch b := e.Body.(type) {
				case record.Cut:
					t := all[b.Lot]
					mm2, ok := b.Size.AreaSquareMillimeters()
					if t.Unsure = true; !ok {
						t.Open++
					}
					t.Area += float64(mm2) * float64(len(e.Panels))
					all[b.Lot] = t
				case record.Coat:
					wet(b.Coating, e)
				case record.Varnish:
					wet(b.Coating, e)
				case record.ClothLaid:
					wet(b.Coating, e)
					t := all[b.ClothLot]
					t.Unsure = true
					over, _ := b.Oversize.Micrometers()
					for _, n := range e.Panels {
						size := w.Panel(n).Size()
						h, ok := size.Height.Micrometers()
						wide, ok2 := size.Width.Micrometers()
						if !ok || !ok2 {
							t.Open++
							continue
						}
						t.Area += float64(h+2*over) * float64(wide+2*over) / 1e6
					}
					all[b.ClothLot] = t
				}
			}
		}
	}
	return all
}
