package bench_test

import (
	"path/filepath"
	"slices"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/handover"
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/shelf"
)

// A day at the bench through this package alone: what is written, what it
// warns of and what it refuses, and that a refusal writes nothing.
func TestDay(t *testing.T) {
	ctx := t.Context()
	now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
	s := newStudio(t, func() time.Time { return now })
	at := record.Moment(now)
	look := looking(t, s)
	sealer, err := shelf.Generic("acrylic-sealer")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := shelf.Take(ctx, look(), at, []record.Material{sealer}); err != nil {
		t.Fatal(err)
	}
	if w, err := bench.Cut(ctx, look(), at, slices.Repeat([]record.Cut{{Size: size(t, "30 x 40 cm x 3 mm")}}, 2)); err != nil || len(w.Entries[0].Panels) != 2 || w.Entries[0].Body.(record.Cut).Batch != "2026-05-02" {
		t.Fatalf("%v, %v", w, err)
	}
	mix := []record.Part{{Parts: 1, Material: "acrylic-sealer"}}
	front := []record.Face{record.Front}
	for _, x := range []struct {
		what    string
		body    record.Body
		warns   []string
		refused string
	}{
		{"a coat", record.Coat{Faces: front, Purpose: record.Sealer, Coating: record.Coating{Mix: mix}}, nil, ""},
		{"a coat of a material for several things", record.Coat{Faces: front, Coating: record.Coating{Mix: mix}}, []string{"purpose-not-recorded", "done-twice", "too-early"}, ""},
		{"a coat on nothing", record.Coat{Coating: record.Coating{Mix: mix}}, nil, "no-faces"},
		{"more where there was none", record.Coat{Faces: front, Extra: []record.Face{record.Back}}, nil, "extra-not-coated"},
		{"a coat of nothing", record.Coat{Faces: front, Coating: record.Coating{WetEach: amount(t, "0 g")}}, nil, "coat-of-nothing"},
		{"a hot room", record.Climate{Temperature: temperature(t, "70 °C")}, nil, "room-temperature"},
		{"trimming without cloth", record.Trimmed{}, []string{"no-cloth-to-trim"}, ""},
		{"coarse paper", record.Sanded{Faces: front, Scale: "P", Grit: 80}, []string{"coarse-grit", "too-early"}, ""},
		{"a bow over nothing", record.Inspection{Bow: length(t, "1 mm")}, nil, "bow-without-span"},
		{"nothing", record.Described{}, nil, "nothing-described"},
		{"a title no face can print", record.Described{Title: "\U00013000"}, []string{"called-so", "not-printable"}, ""},
	} {
		before, _, err := s.Book.Tree(ctx)
		if err != nil {
			t.Fatal(err)
		}
		w, err := bench.Do(ctx, look("1", "2"), at, x.body)
		var warns []string
		for _, s := range w.Warnings {
			warns = append(warns, s.Code)
		}
		if refuse.Code(err) != x.refused || !slices.Equal(warns, x.warns) {
			t.Errorf("%s: %v, warns of %v", x.what, err, warns)
		}
		after, _, err := s.Book.Tree(ctx)
		if want := before + int64(len(w.Entries)); err != nil || after != want || (x.refused == "") != (len(w.Entries) == 1) {
			t.Errorf("%s: %d entries, want %d, %v", x.what, after, want, err)
		}
	}
	w, err := handover.Write(ctx, look("1"), at, record.HandedOver{How: "sale"}, private.Part{To: "Zeta Invented"})
	if err != nil || w.Entries[0].Body.(record.HandedOver).Private == "" {
		t.Fatalf("%v, %v", w, err)
	}
	v := look("1")
	ps, err := handover.Of(ctx, s.Book, v.Shop.Panel(v.Panels[0]))
	if err != nil || len(ps) != 1 || ps[0].State != handover.Here || ps[0].Private.To != "Zeta Invented" {
		t.Errorf("%v, %v", ps, err)
	}
	again, err := handover.Write(ctx, look("1"), at, record.HandedOver{How: "sale"}, private.Part{})
	if err != nil || len(again.Warnings) != 1 || again.Warnings[0].Code != "is-away" || again.Warnings[0].Value("entry").Text() == "" {
		t.Errorf("%v, %v", again, err)
	}
	if _, err := handover.Forget(ctx, s, ps[0].Entry, "asked for"); err != nil {
		t.Error(err)
	}
	if _, err := handover.Forget(ctx, s, ps[0].Entry, "asked for"); refuse.Code(err) != "no-private-part" {
		t.Errorf("erased twice: %v", err)
	}
}

func newStudio(t *testing.T, clock func() time.Time) *studio.Session {
	t.Helper()
	path := filepath.Join(t.TempDir(), "studio.sqlite")
	if err := studio.Create(t.Context(), path, clock, nil, record.Studio{Maker: "Anna", Mark: "KB", Zone: "UTC"}); err != nil {
		t.Fatal(err)
	}
	b, err := book.Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	return &studio.Session{Book: b, Clock: clock}
}

func read[T any, P interface {
	*T
	UnmarshalText([]byte) error
}](t *testing.T, s string) (v T) {
	t.Helper()
	if err := P(&v).UnmarshalText([]byte(s)); err != nil {
		t.Fatal(err)
	}
	return v
}

func size(t *testing.T, s string) record.Size               { return read[record.Size](t, s) }
func amount(t *testing.T, s string) record.Amount           { return read[record.Amount](t, s) }
func length(t *testing.T, s string) record.Length           { return read[record.Length](t, s) }
func temperature(t *testing.T, s string) record.Temperature { return read[record.Temperature](t, s) }

// looking is a look at the panels that terms name.
func looking(t *testing.T, s *studio.Session) func(terms ...string) *studio.View {
	return func(terms ...string) *studio.View {
		t.Helper()
		v, err := s.Look(t.Context(), terms, nil)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}
