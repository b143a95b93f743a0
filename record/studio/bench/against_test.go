package bench_test

import (
	"slices"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/handover"
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/shelf"

	"github.com/go-json-experiment/json/jsontext"
)

// What a check would find later is said at the moment of the act, by the hour
// or by the day; what is sound is not.
func TestSaidAtOnce(t *testing.T) {
	ctx := t.Context()
	now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
	s := newStudio(t, func() time.Time { return now })
	look := looking(t, s)
	on := func(text string) record.When { return read[record.When](t, text) }
	cut := record.Cut{Size: size(t, "30 x 40 cm x 3 mm"), Board: record.Unknown}
	if _, err := bench.Cut(ctx, look(), on("2026-01-02"), slices.Repeat([]record.Cut{cut}, 5)); err != nil {
		t.Fatal(err)
	}
	g, err := shelf.Generic("acrylic-sealer")
	if err != nil {
		t.Fatal(err)
	}
	for range 2 { // what stands there so is not written again
		w, err := shelf.Take(ctx, look(), on("2026-01-02"), []record.Material{g})
		if err != nil || (len(w.Entries) == 0) != (len(w.Warnings) == 1) {
			t.Errorf("%v, %v, %v", w.Entries, w.Warnings, err)
		}
	}
	front := []record.Face{record.Front}
	seal := record.Coat{Faces: front, Purpose: "sealer", Coating: record.Coating{Mix: []record.Part{{Parts: 1, Material: g.Key}}}}
	ground := record.Coat{Faces: front, Purpose: record.Ground}
	sand := func(through record.Answer) record.Sanded {
		return record.Sanded{Faces: front, Scale: "P", Grit: 220, Through: through}
	}
	oil, acrylic := record.PaintLayer{Medium: "oil"}, record.PaintLayer{Medium: "acrylic"}
	for i, x := range []struct {
		panel string
		at    string
		body  record.Body
		code  string
		is    bool
	}{
		{"1", "2026-01-03", sand(record.No), "against", false},
		{"1", "2026-01-04", sand(record.Yes), "against", true},
		{"1", "2026-01-05", ground, "against", true},
		{"1", "2026-01-06", seal, "against", false},
		{"1", "2026-01-09", ground, "against", false},
		{"2", "2026-03-01", oil, "against", false},
		{"2", "2026-03-02T10:00:00Z", acrylic, "against", true},
		{"3", "2026-03-01", acrylic, "against", false},
		{"3", "2026-03-05", oil, "against", false},
		{"4", "2026-03-01", oil, "too-early", false},
		{"4", "2026-03-20", record.Varnish{Resin: "damar"}, "too-early", true},
		{"4", "2026-03-20T10:00:00Z", record.Varnish{Resin: "damar"}, "too-early", true},
		{"3", "2026-03-20/2026-03-25", record.Varnish{Resin: "damar"}, "too-early", true},
		{"5", "2026-03-01", record.PaintLayer{Medium: "oil", Pigments: []record.Pigment{{Name: "titanium white", Index: "PW 6"}}}, "against", false},
		{"5", "2026-04-01", sand(""), "against", false},
		{"5", "2026-04-02", record.PaintLayer{Medium: "oil", Pigments: []record.Pigment{{Name: "lead white", Index: "PW 1"}}}, "against", true},
		{"5", "2026-05-01", sand(""), "against", true},
		{"5", "2026-05-01", record.Sanded{Faces: front, Scale: "P", Grit: 220, Wet: record.Yes}, "against", false},
		{"5", "2026-05-01", record.Sanded{Faces: []record.Face{record.Back}, Scale: "P", Grit: 220}, "against", false},
		{"4", "2026-05-02", record.UsedAgain{}, "no-earlier-work", false},
		{"1", "2026-05-02", record.UsedAgain{}, "no-earlier-work", true},
		{"1", "2026-05-02", record.Intended{Cloth: record.No}, "cloth-lies", false},
		{"2", "2026-05-01", record.ClothLaid{Faces: front}, "cloth-lies", false},
		{"2", "2026-05-02", record.Intended{Cloth: record.Yes}, "cloth-lies", false},
		{"2", "2026-05-02", record.Intended{Cloth: record.No}, "cloth-lies", true},
		{"1", "1998", record.Note{Text: "x"}, "too-early", false},
	} {
		w, err := bench.Do(ctx, look(x.panel), on(x.at), x.body)
		if is := slices.ContainsFunc(w.Warnings, func(s record.Said) bool { return s.Code == x.code }); err != nil || is != x.is {
			t.Errorf("%d, %s: %s %v, want %v; %v, %v", i+1, x.body.Kind(), x.code, is, x.is, w.Warnings, err)
		}
	}
	if w, err := bench.Do(ctx, look("3-4"), on("unknown"), record.Varnish{}); err != nil || slices.ContainsFunc(w.Warnings, func(s record.Said) bool { return s.Code == "too-early" }) {
		t.Errorf("of an unknown day: %v, %v", w.Warnings, err)
	}

	// Moved before the cut, an act is doubted as if it had been written so.
	all, err := s.Book.Entries(ctx, book.Filter{})
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range all {
		e := x.Entry
		if !e.Kind().Traits().Bench || e.Kind() == "cut" {
			continue
		}
		for _, at := range []string{"2025-12-31", "2026-01-02"} {
			w, _, err := bench.Correct(ctx, look(), on("2026-05-02"), e, record.Amended{Entry: e.Seq, Because: at, Change: jsontext.Value(`{"at":"` + at + `"}`)})
			is := slices.ContainsFunc(w.Warnings, func(s record.Said) bool {
				return s.Code == "before-cutting" && slices.Equal(s.Value("panels").Texts, record.With("", e.Panels).Texts)
			})
			if err != nil || is != (at < "2026") {
				t.Errorf("E%d, %s, moved to %s: %v, %v", e.Seq, e.Kind(), at, w.Warnings, err)
			}
		}
	}
}

// A size says which way it went; the name of a buyer stands in no text that stays.
func TestRefusedAtOnce(t *testing.T) {
	ctx := t.Context()
	s := newStudio(t, func() time.Time { return time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC) })
	look := looking(t, s)
	at := read[record.When](t, "2026-05-02")
	if _, err := bench.Cut(ctx, look(), at, slices.Repeat([]record.Cut{{Size: size(t, "30 x 40 cm x 3 mm")}}, 2)); err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct {
		how  record.Resizing
		to   string
		code string
	}{{"cut-down", "31 x 41 cm", "resized-otherwise"}, {"cut-down", "30 x 41 cm", "resized-otherwise"}, {"enlarged", "29 x 39 cm", "resized-otherwise"},
		{"cut-down", "38 x 28 cm", ""}, {"enlarged", "40 x 40 cm", ""}} {
		if _, err := bench.Resize(ctx, look("1"), at, record.Resized{How: x.how, Before: size(t, "30 x 40 cm"), Size: size(t, x.to)}); refuse.Code(err) != x.code {
			t.Errorf("%s to %s: %v", x.how, x.to, err)
		}
	}
	laid, err := bench.Do(ctx, look("1"), at, record.Varnish{Resin: "damar"})
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct {
		what record.Stratum
		code string
	}{{"cloth", "layer-of-other-sort"}, {"paint", "layer-of-other-sort"}, {"varnish", ""}, {"varnish", "layer-gone"}, {"other", ""}} {
		r := record.Removed{What: x.what, Extent: "whole", Layers: []int64{laid.Entries[0].Seq}}
		if _, err := bench.Remove(ctx, look("1"), at, r, false); refuse.Code(err) != x.code {
			t.Errorf("%s taken off where varnish lay: %v", x.what, err)
		}
	}
	for _, x := range []struct {
		to, text string
		code     string
	}{{"Mr Invented", "sold to Mr Invented at the fair", "name-in-journal"}, {"Mr Invented", "the Invented family", "name-in-journal"}, {"ann", "for ANN", "name-in-journal"},
		{"Mr Invented", "invented story", ""}, {"Gallery Bright", "through the gallery", ""}, {"", "for nobody", ""}, {"Mr Invented", "", ""}} {
		w, err := handover.Write(ctx, look("2"), at, record.HandedOver{How: "sale", Note: x.text}, private.Part{To: x.to})
		if refuse.Code(err) != x.code || (err == nil) == (len(w.Entries) == 0) {
			t.Errorf("to %q, note %q: %v", x.to, x.text, err)
		}
		if err != nil || x.to == "" {
			continue
		}
		if _, err := handover.Forget(ctx, s, w.Entries[0].Seq, "for "+x.to); refuse.Code(err) != "name-in-journal" {
			t.Errorf("forgotten with the name: %v", err)
		}
		if _, err := handover.Forget(ctx, s, w.Entries[0].Seq, "asked for"); err != nil {
			t.Error(err)
		}
	}
}
