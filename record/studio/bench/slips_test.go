package bench_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/handover"
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/shelf"
)

// What is most often a slip is doubted when it is written down, and what is
// just within is not.
func TestSlips(t *testing.T) {
	ctx := t.Context()
	now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
	s := newStudio(t, func() time.Time { return now })
	look := func() *studio.View {
		v, err := s.Look(ctx, nil, nil)
		if err == nil && len(v.Roll.Batches) > 0 {
			v, err = s.Look(ctx, []string{"1"}, nil)
		}
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	at := record.Moment(now)
	varnish := record.Material{Key: "v", Name: "v", Uses: []record.Use{"varnish"}}
	if _, err := shelf.Take(ctx, look(), at, []record.Material{varnish}); err != nil {
		t.Fatal(err)
	}
	for key, until := range map[record.Key]string{"old": "2026-04", "good": "2026-05"} {
		if _, err := shelf.AddLot(ctx, look(), record.Moment(now.Add(-24*time.Hour)), record.Lot{Key: key, Material: "v", Expires: read[record.When](t, until)}, private.Price{}); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := bench.Cut(ctx, look(), record.Moment(now.Add(-48*time.Hour)), []record.Cut{{Size: size(t, "30 x 40 cm x 3 mm")}}); err != nil {
		t.Fatal(err)
	}
	mark := func(face record.Face, left, top string) record.Feature {
		return record.Feature{What: "dent", Face: face, Left: length(t, left), Top: length(t, top)}
	}
	bow := func(span string) record.Inspection {
		return record.Inspection{Bow: length(t, "2 mm"), Span: length(t, span)}
	}
	of := func(lot record.Key) record.Varnish {
		return record.Varnish{Coating: record.Coating{Mix: []record.Part{{Parts: 1, Material: "v", Lot: lot}}}}
	}
	for _, x := range []struct {
		what  string
		ago   time.Duration
		body  record.Body
		warns []string
	}{
		{"a mark at the rim", 0, mark("front", "40 cm", "30 cm"), nil}, // height stands first: 30 cm high
		{"a mark beside the board", 0, mark("front", "82 cm", "10 cm"), []string{"outside-panel"}},
		{"a mark below it", 0, mark("back", "10 cm", "40 cm"), []string{"outside-panel"}},
		{"a mark on an edge", 0, mark("edges", "40 cm", "1 mm"), nil},
		{"a span from corner to corner", 0, bow("50 cm"), nil},
		{"a span beyond", 0, bow("51 cm"), []string{"outside-panel"}},
		{"varnish without paint", 5 * time.Hour, of("good"), []string{"no-paint-to-varnish"}},
		{"varnish out of an old tin", 3 * time.Hour, of("old"), []string{"no-paint-to-varnish", "lot-past"}},
		{"varnish before the tin came", 44 * time.Hour, of("good"), []string{"no-paint-to-varnish", "lot-not-yet"}},
		{"page taken down that never was", 0, record.Published{Shown: record.No}, []string{"was-not-shown"}},
		{"oil paint", 30 * time.Minute, record.PaintLayer{Medium: "oil"}, []string{"out-of-order"}},
		{"varnish at once, of what is not said", 0, record.Varnish{}, []string{"material-not-recorded", "too-early"}},
		{"sold", 30 * time.Minute, record.HandedOver{How: "sale"}, nil},
		{"back before it left", 2 * time.Hour, record.HandedOver{How: "return"}, []string{"left-after"}},
		{"back", 10 * time.Minute, record.HandedOver{How: "return"}, nil},
	} {
		var w studio.Written
		var err error
		when := record.Moment(now.Add(-x.ago))
		if h, ok := x.body.(record.HandedOver); ok {
			w, err = handover.Write(ctx, look(), when, h, private.Part{})
		} else {
			w, err = bench.Do(ctx, look(), when, x.body)
		}
		var warns []string
		for _, s := range w.Warnings {
			warns = append(warns, s.Code)
		}
		if err != nil || len(w.Entries) != 1 || !slices.Equal(warns, x.warns) {
			t.Errorf("%s: warns of %v, not of %v; %v", x.what, warns, x.warns, err)
		}
	}
}

// What was before the board was cut is doubted by the day, or from an hour on,
// wherever the studio is; so is trimming before the cloth was laid.
func TestBefore(t *testing.T) {
	ctx := t.Context()
	for name, hours := range map[string]int{"UTC": 0, "east": 10, "west": -10} {
		zone := time.FixedZone(name, hours*3600)
		now := time.Date(2026, 5, 2, 21, 0, 0, 0, zone)
		s := newStudio(t, func() time.Time { return now })
		look := func(terms ...string) *studio.View {
			v, err := s.Look(ctx, terms, nil)
			if err != nil {
				t.Fatal(err)
			}
			v.Zone = zone
			return v
		}
		clock := func(hour, minute int) record.When {
			return record.Moment(time.Date(2026, 5, 2, hour, minute, 0, 0, zone))
		}
		if _, err := bench.Cut(ctx, look(), clock(14, 0), []record.Cut{{Size: size(t, "30 x 40 cm x 3 mm")}}); err != nil {
			t.Fatal(err)
		}
		cloth := record.ClothLaid{Faces: []record.Face{record.Front}}
		for _, x := range []struct {
			at   record.When
			body record.Body
			code string
			is   bool
		}{
			{read[record.When](t, "2026-05-01"), record.Coat{Faces: record.Faces}, "before-cutting", true},
			{read[record.When](t, "2026-05-02"), record.Coat{Faces: record.Faces}, "before-cutting", false},
			{read[record.When](t, "2026-05-01"), record.Note{Text: "x"}, "before-cutting", true},
			{read[record.When](t, "2024"), record.Inspection{Edges: "sound"}, "before-cutting", true},
			{clock(9, 0), record.Coat{Faces: record.Faces}, "before-cutting", true},
			{clock(13, 10), record.Coat{Faces: record.Faces}, "before-cutting", false}, // numbered after the first coat
			{clock(15, 0), record.Coat{Faces: record.Faces}, "before-cutting", false},
			{clock(16, 0), record.Trimmed{}, "no-cloth-to-trim", true},
			{clock(17, 0), cloth, "no-cloth-to-trim", false},
			{clock(16, 30), record.Trimmed{}, "no-cloth-to-trim", true},
			{clock(18, 0), record.Trimmed{}, "no-cloth-to-trim", false},
		} {
			w, err := bench.Do(ctx, look("1"), x.at, x.body)
			if is := slices.ContainsFunc(w.Warnings, func(s record.Said) bool { return s.Code == x.code }); err != nil || is != x.is {
				t.Errorf("%s: %s at %s: %s %v, want %v; %v", name, x.body.Kind(), x.at, x.code, is, x.is, err)
			}
		}
	}
}

// What the record says already is doubted when it is said once more, and not
// when something else was said in between.
func TestAlready(t *testing.T) {
	ctx := t.Context()
	now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
	s := newStudio(t, func() time.Time { return now })
	at := record.Moment(now)
	look := looking(t, s)
	if _, err := bench.Cut(ctx, look(), at, []record.Cut{{Size: size(t, "30 x 40 cm x 3 mm")}}); err != nil {
		t.Fatal(err)
	}
	note, err := bench.Do(ctx, look("1"), at, record.Note{Text: "a"})
	if err != nil {
		t.Fatal(err)
	}
	old := note.Entries[0]
	photo := func(digit string, role record.PhotoRole) record.Photograph {
		return record.Photograph{Role: role, SHA256: strings.Repeat(digit, 64), Type: "image/png", Width: 1, Height: 1}
	}
	amend := func(text string) record.Amended {
		return record.Amended{Entry: old.Seq, Because: "x", Change: []byte(`{"text":"` + text + `"}`)}
	}
	var last int64
	for i, x := range []struct {
		body record.Body
		is   bool
	}{
		{photo("a", "front"), false}, {photo("a", "front"), true}, {photo("a", "back"), false}, {photo("b", "front"), false}, {photo("a", "front"), true},
		{record.Published{Shown: record.Yes}, false}, {record.Published{Shown: record.Yes}, true}, {record.Published{Shown: record.Yes, Photograph: record.Yes}, false},
		{record.Published{Shown: record.No}, false}, {record.Published{Shown: record.Yes}, false},
		{record.Condition{By: "b", Text: "fine"}, false}, {record.Condition{By: "b", Text: "dent"}, false}, {record.Condition{By: "b", Text: "fine"}, true},
		{record.UsedAgain{}, false}, {record.UsedAgain{}, true}, {record.Intended{Cloth: record.No}, false}, {record.Intended{Cloth: record.Yes}, false}, {record.Intended{Cloth: record.No}, false},
		{amend("b"), false}, {amend("b"), true}, {amend("c"), false}, {amend("b"), false},
		{record.Withdrawn{Because: "x"}, false}, {amend("b"), false}, // the last but one was c
	} {
		var w studio.Written
		switch b := x.body.(type) {
		case record.Amended:
			w, _, err = bench.Correct(ctx, look(), at, old, b)
		case record.Withdrawn:
			b.Entry = last
			e, err2 := bench.Entry(ctx, look().Book, last)
			if err2 != nil {
				t.Fatal(err2)
			}
			w, _, err = bench.Correct(ctx, look(), at, e, b)
		default:
			w, err = bench.Do(ctx, look("1"), at, x.body)
		}
		if err != nil {
			t.Fatal(err)
		}
		last = w.Entries[0].Seq
		if is := slices.ContainsFunc(w.Warnings, func(s record.Said) bool { return s.Code == "said-already" }); is != x.is {
			t.Errorf("%d, %s: said already %v, want %v", i+1, x.body.Kind(), is, x.is)
		}
	}
}

// A reference of the studio's own that other panels bear is doubted, whether
// they are numbered with it or described so later.
func TestCalledSo(t *testing.T) {
	ctx := t.Context()
	now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
	s := newStudio(t, func() time.Time { return now })
	at := record.Moment(now)
	for i, x := range []struct {
		panel string // empty: a new one
		ref   string
		is    bool
	}{{"", "17", false}, {"", "17", true}, {"", "", false}, {"3", "18", false}, {"3", "18", false}, {"3", "17", true}, {"1", "Seventeen", false}, {"2", "seventeen", true}} {
		var terms []string
		if x.panel != "" {
			terms = []string{x.panel}
		}
		v, err := s.Look(ctx, terms, nil)
		if err != nil {
			t.Fatal(err)
		}
		var w studio.Written
		if x.panel == "" {
			w, err = bench.Cut(ctx, v, at, []record.Cut{{Size: size(t, "30 x 40 cm x 3 mm"), Owner: x.ref}})
		} else {
			w, err = bench.Do(ctx, v, at, record.Described{Owner: x.ref})
		}
		if is := slices.ContainsFunc(w.Warnings, func(s record.Said) bool { return s.Code == "called-so" }); err != nil || is != x.is {
			t.Errorf("%d, %q: doubted %v, want %v; %v", i+1, x.ref, is, x.is, err)
		}
	}
}

// What a reader would miss is asked for, and nothing is said where it is there
// or said to be unknown; a panel that is sold is hardly the one discarded.
func TestLeftOpen(t *testing.T) {
	ctx := t.Context()
	now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
	s := newStudio(t, func() time.Time { return now })
	at, old := record.Moment(now), read[record.When](t, "1998")
	of := size(t, "30 x 40 cm x 3 mm")
	look := looking(t, s)
	if _, err := bench.Cut(ctx, look(), old, []record.Cut{{Size: of}}); err != nil {
		t.Fatal(err)
	}
	for i, x := range []struct {
		at   record.When
		body record.Body
		code string
		is   bool
	}{
		{at, record.Cut{Size: of}, "left-open", true}, {old, record.Cut{Size: of}, "left-open", false},
		{at, record.Cut{Size: of, Recorded: "afterwards"}, "left-open", false}, {at, record.Cut{Size: of, Board: record.Unknown}, "left-open", false},
		{at, record.Braced{}, "left-open", true}, {at, record.Braced{Bracing: "cradle"}, "left-open", false},
		{at, record.WarmAir{}, "left-open", true}, {at, record.WarmAir{For: read[record.Duration](t, "5 min")}, "left-open", false},
		{at, record.PaintLayer{}, "left-open", true}, {at, record.PaintLayer{Medium: "oil"}, "left-open", false},
		{at, record.Discarded{Because: "x"}, "discarded-away", true},
	} {
		var w studio.Written
		var err error
		if c, ok := x.body.(record.Cut); ok {
			w, err = bench.Cut(ctx, look(), x.at, []record.Cut{c})
		} else {
			if x.code == "discarded-away" {
				if _, err := handover.Write(ctx, look("1"), at, record.HandedOver{How: "sale"}, private.Part{}); err != nil {
					t.Fatal(err)
				}
			}
			w, err = bench.Do(ctx, look("1"), x.at, x.body)
		}
		if is := slices.ContainsFunc(w.Warnings, func(s record.Said) bool { return s.Code == x.code }); err != nil || is != x.is {
			t.Errorf("%d, %s: %s %v, want %v; %v", i+1, x.body.Kind(), x.code, is, x.is, err)
		}
	}
}

// The same within the hour is doubted, with the nearest entry; another layer of
// paint is not the same.
func TestTwice(t *testing.T) {
	ctx := t.Context()
	now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
	s := newStudio(t, func() time.Time { return now })
	look := looking(t, s)
	if _, err := bench.Cut(ctx, look(), record.Moment(now.Add(-48*time.Hour)), []record.Cut{{Size: size(t, "30 x 40 cm x 3 mm")}}); err != nil {
		t.Fatal(err)
	}
	white, ochre := []record.Pigment{{Name: "white", Index: "PW 6"}}, []record.Pigment{{Name: "ochre", Index: "PY 43"}}
	for _, x := range []struct {
		what string
		ago  time.Duration
		body record.PaintLayer
		like string // the entry it is like
	}{
		{"the first", 40 * time.Minute, record.PaintLayer{}, ""},
		{"with a medium", 30 * time.Minute, record.PaintLayer{Medium: "acrylic"}, ""},
		{"with pigments", 25 * time.Minute, record.PaintLayer{Medium: "acrylic", Pigments: white}, ""},
		{"other pigments", 20 * time.Minute, record.PaintLayer{Medium: "acrylic", Pigments: ochre}, ""},
		{"the same again", 15 * time.Minute, record.PaintLayer{Medium: "acrylic", Pigments: white}, "5"},
		{"and again", 10 * time.Minute, record.PaintLayer{Medium: "acrylic", Pigments: white}, "7"},
		{"nearer to the first of them", 24 * time.Minute, record.PaintLayer{Medium: "acrylic", Pigments: white}, "5"},
		{"after an hour", -51 * time.Minute, record.PaintLayer{Medium: "acrylic", Pigments: white}, ""},
	} {
		now = now.Add(2 * time.Hour) // the act lies where it is said to lie, and the clock after it
		w, err := bench.Do(ctx, look("1"), record.Moment(time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC).Add(-x.ago)), x.body)
		if err != nil {
			t.Fatalf("%s: %v", x.what, err)
		}
		like := ""
		for _, said := range w.Warnings {
			if said.Code == "done-twice" {
				like = said.Value("entry").Text()
			}
		}
		if like != x.like {
			t.Errorf("%s: like %q, want %q", x.what, like, x.like)
		}
	}
}

// What no panel can have is refused when it is written down, and when an entry
// is amended to say it; what is only odd is taken.
func TestNoPanelHasThat(t *testing.T) {
	ctx := t.Context()
	now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
	s := newStudio(t, func() time.Time { return now })
	at := record.Moment(now)
	look := looking(t, s)
	ply := record.Material{Key: "ply", Name: "ply", Uses: []record.Use{"board"}, Board: record.Board{Kind: "plywood", Thickness: length(t, "3 mm")}}
	if _, err := shelf.Take(ctx, look(), at, []record.Material{ply}); err != nil {
		t.Fatal(err)
	}
	if _, err := shelf.AddLot(ctx, look(), at, record.Lot{Key: "ply-1", Material: "ply", Sheet: size(t, "122 x 244 cm")}, private.Price{}); err != nil {
		t.Fatal(err)
	}
	cut := func(text string) record.Cut { return record.Cut{Board: "ply", Lot: "ply-1", Size: size(t, text)} }
	if _, err := bench.Cut(ctx, look(), at, []record.Cut{cut("30 x 40 cm x 3 mm")}); err != nil {
		t.Fatal(err)
	}
	coat := func(c record.Coating) record.Body { return record.Coat{Faces: []record.Face{record.Back}, Coating: c} }
	bow := func(bow string) record.Body {
		return record.Inspection{Bow: length(t, bow), Span: length(t, "30 cm")}
	}
	grit := func(n int64) record.Body {
		return record.Sanded{Faces: []record.Face{record.Front}, Scale: "P", Grit: n}
	}
	to := func(text string) record.Body {
		return record.Resized{How: "enlarged", Before: size(t, "30 x 40 cm"), Size: size(t, text)}
	}
	for _, x := range []struct {
		good, bad     record.Body
		change, meant string
	}{
		{cut("30 x 40 cm x 2 cm"), cut("30 x 40 cm x 3 cm"), `"size":"30 x 40 cm x 3 cm"`, "3 mm"},
		{cut("122 x 244 cm x 3 mm"), cut("123 x 260 cm x 3 mm"), `"size":"123 x 260 cm x 3 mm"`, "123 x 260 mm x 3 mm"},
		{cut("244 x 122 cm x 3 mm"), cut("300 x 400 cm"), `"size":"300 x 400 cm"`, "300 x 400 mm"},
		{coat(record.Coating{WetTotal: amount(t, "5 kg")}), coat(record.Coating{WetTotal: amount(t, "12 kg")}), `"wet_total":"12 kg"`, "12 g"},
		{coat(record.Coating{WetEach: amount(t, "5 L")}), coat(record.Coating{WetEach: amount(t, "12 L")}), `"wet_each":"12 L"`, "12 mL"},
		{coat(record.Coating{}), coat(record.Coating{DryFilm: length(t, "6 cm")}), `"dry_film":"6 cm"`, "6 mm"},
		{coat(record.Coating{}), coat(record.Coating{WetTotal: amount(t, "0 g")}), `"wet_total":"0 g"`, ""},
		{coat(record.Coating{}), coat(record.Coating{Temperature: temperature(t, "200 °C")}), `"temperature":"200 °C"`, ""},
		{bow("29 cm"), bow("30 cm"), `"bow":"30 cm"`, "30 mm"},
		{grit(180), grit(17), `"grit":17`, ""},
		{to("299 x 399 cm"), to("300 x 400 cm"), `"size":"300 x 400 cm"`, "300 x 400 mm"},
	} {
		do := func(b record.Body) (studio.Written, error) {
			if c, ok := b.(record.Cut); ok {
				return bench.Cut(ctx, look(), at, []record.Cut{c})
			}
			return bench.Do(ctx, look("1"), at, b)
		}
		_, err := do(x.bad)
		r, ok := err.(*refuse.Error)
		if !ok || r.Said.Value("meant").Text() != x.meant {
			t.Errorf("%s, %s: %v, %v", x.bad.Kind(), x.change, err, r)
			continue
		}
		w, err := do(x.good)
		if err != nil {
			t.Errorf("%s, beside %s: %v", x.good.Kind(), x.change, err)
			continue
		}
		_, _, err = bench.Correct(ctx, look(), at, w.Entries[0], record.Amended{Entry: w.Entries[0].Seq, Because: "x", Change: []byte("{" + x.change + "}")})
		if refuse.Code(err) != r.Said.Code {
			t.Errorf("%s amended to %s: %v, want %s", x.good.Kind(), x.change, err, r.Said.Code)
		}
	}
}
