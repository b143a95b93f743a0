package find_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/check"
	"backleaf/record/find"
)

var now = time.Date(2026, 5, 2, 12, 0, 0, 0, time.UTC)

func number(serial int) record.Number {
	n, err := record.NewNumber("KB", 26, serial, "")
	if err != nil {
		panic(err)
	}
	return n
}

// shop is six panels: 1 complete, 2 of other stuff, 3 a bare board, 4 of
// which little is known, 5 discarded, 6 back from a loan.
func shop(t testing.TB) *record.Workshop {
	t.Helper()
	panels := func(serials ...int) string {
		var s []string
		for _, i := range serials {
			s = append(s, fmt.Sprintf("%q", number(i)))
		}
		return `"panels":[` + strings.Join(s, ",") + `]`
	}
	texts := []string{
		`{"kind":"studio","maker":"Ilze Kraukle","mark":"KB"}`,
		`{"kind":"material","key":"ply","name":"birch plywood","uses":["board"],"board":{"kind":"plywood"}}`,
		`{"kind":"material","key":"sheet","name":"some board","uses":["board"]}`,
		`{"kind":"material","key":"sealer","name":"sealer","uses":["sealer","adhesive"],"binder":"acrylic-dispersion"}`,
		`{"kind":"material","key":"glue","name":"glue","uses":["size"],"binder":"animal-glue"}`,
		`{"kind":"material","key":"odd","name":"something","uses":["ground"]}`,
		`{"kind":"material","key":"linen","name":"linen","uses":["cloth"],"cloth":{"fibre":"linen"}}`,
		`{"kind":"material","key":"rag","name":"old cloth","uses":["cloth"]}`,
		`{"kind":"material","key":"gloss","name":"varnish","uses":["varnish"],"resin":"hydrocarbon resin","binder":"hydrocarbon-resin","removable":"yes"}`,
		`{"kind":"lot","key":"ply-1","material":"ply"}`,
		`{"kind":"lot","key":"sealer-1","material":"sealer"}`,
		`{"kind":"cut","batch":"a","size":"30 x 40 cm x 3 mm","board":"ply","board_lot":"ply-1","at":"2025-03-01",` + panels(1) + `}`,
		`{"kind":"cut","batch":"a","size":"40 x 30 cm","board":"sheet","at":"2026-04-01","own_reference":"No. 17b",` + panels(2) + `}`,
		`{"kind":"cut","batch":"b","size":"8 x 10 x 1/8 in","board":"ply",` + panels(3) + `}`,
		`{"kind":"cut","batch":"b","size":"unknown x unknown",` + panels(4) + `}`,
		`{"kind":"cut","batch":"b","size":"60 x 80 cm x 6 mm","board":"unknown","at":"2026-04-20",` + panels(5, 6) + `}`,
		`{"kind":"coat","purpose":"sealer","faces":["front","back","edges"],"mix":[{"parts":1,"material":"sealer","lot":"sealer-1"}],"dry_film":"40 µm",` + panels(1) + `}`,
		`{"kind":"coat","purpose":"size","faces":["front"],"mix":[{"parts":1,"material":"glue"}],` + panels(2) + `}`,
		`{"kind":"coat","faces":["front","back"],` + panels(4) + `}`,
		`{"kind":"coat","faces":["edges"],"mix":[{"parts":1,"material":"sealer"}],` + panels(5) + `}`,
		`{"kind":"cloth","faces":["back"],"cloth":"rag","mix":[{"parts":1,"material":"odd"}],` + panels(2) + `}`,
		`{"kind":"cloth","faces":["front"],"cloth":"linen",` + panels(6) + `}`,
		`{"kind":"paint","medium":"oil",` + panels(1, 2) + `}`,
		`{"kind":"varnish","mix":[{"parts":1,"material":"gloss"}],` + panels(1) + `}`,
		`{"kind":"varnish",` + panels(2) + `}`,
		`{"kind":"varnish","resin":"Dammar","removable":"no",` + panels(6) + `}`,
		`{"kind":"described","title":"Dune","made":"1998~","own_reference":"XII",` + panels(1) + `}`,
		`{"kind":"described","title":"Boats","made":"200X",` + panels(2) + `}`,
		`{"kind":"described","made":"unknown",` + panels(6) + `}`,
		`{"kind":"handed-over","how":"sale",` + panels(1) + `}`,
		`{"kind":"handed-over","how":"loan","at":"2026-04-21",` + panels(6) + `}`,
		`{"kind":"handed-over","how":"return","at":"2026-04-28",` + panels(6) + `}`,
		`{"kind":"discarded","because":"split",` + panels(5) + `}`,
	}
	var es []record.Entry
	for i, s := range texts {
		e, err := accept.Parse([]byte(s))
		if err != nil {
			t.Fatalf("%s: %v", s, err)
		}
		e.Seq, e.Written = int64(i+1), record.Moment(now)
		es = append(es, e)
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func TestFilters(t *testing.T) {
	w := shop(t)
	for _, x := range []struct {
		name string
		test find.Test
		want []int
	}{
		{"binder", find.Binder(record.Acrylic), []int{1, 5}},
		{"binder of one coat among others", find.Binder(record.AnimalGlue), []int{2}},
		{"binder not known", find.Binder(find.Unknown), []int{2, 4, 6}},
		{"kind of board", find.Board("plywood"), []int{1, 3}},
		{"board by lot", find.Board("ply-1"), []int{1}},
		{"board by material", find.Board("sheet"), []int{2}},
		{"board not known", find.Board(find.Unknown), []int{2, 4, 5, 6}},
		{"fibre", find.Cloth("linen"), []int{6}},
		{"cloth by material", find.Cloth("rag"), []int{2}},
		{"no cloth", find.Cloth(find.None), []int{1, 3, 4, 5}},
		{"cloth not known", find.Cloth(find.Unknown), []int{2}},
		{"front not sealed", find.Unsealed(record.Front), []int{3, 4, 5}},
		{"edges not sealed; 5 by a material that only seals", find.Unsealed(record.Edges), []int{2, 3, 4, 6}},
		{"back not sealed, purpose unknown does not count", find.Unsealed(record.Back), []int{3, 4, 5, 6}},
		{"varnish by words", find.Varnish("hydrocarbon"), []int{1}},
		{"varnish by its own word, any case", find.Varnish("dammar"), []int{6}},
		{"varnish by material", find.Varnish("gloss"), []int{1}},
		{"no varnish", find.Varnish(find.None), []int{3, 4, 5}},
		{"varnish not known", find.Varnish(find.Unknown), []int{2}},
		{"removable", find.Removable(record.Yes), []int{1}},
		{"not removable", find.Removable(record.No), []int{6}},
		{"removable not known", find.Removable(record.Unknown), []int{2}},
		{"a rule falls short", find.Finding("varnish-removable", check.FallsShort, now), []int{6}},
		{"a rule is not recorded", find.Finding("balanced-pull", check.NotRecorded, now), []int{2, 4, 6}},
		{"out of balance", find.OutOfBalance(now), nil},
		{"a rule does not apply", find.Finding("balanced-pull", check.NotApplicable, now), []int{3, 5}},
	} {
		var got []int
		for _, p := range w.Panels {
			if x.test(w, p) {
				got = append(got, p.Number.Serial())
			}
		}
		if !slices.Equal(got, x.want) {
			t.Errorf("%s: %v, want %v", x.name, got, x.want)
		}
	}
}

func TestParseBetween(t *testing.T) {
	for _, x := range []struct{ typed, from, to string }{
		{"1998 2004", "1998", "2004"},
		{"1998..2004", "1998", "2004"},
		{"1998 and 2004", "1998", "2004"},
		{" 2019-03  2019-06 ", "2019-03", "2019-06"},
		{"1998", "1998", "1998"},
		{"199X", "199X", "199X"},
		{"1998/2004", "1998/2004", "1998/2004"},
		{"../1999", "../1999", "../1999"},
	} {
		from, to, err := find.ParseBetween(x.typed)
		if err != nil || from.String() != x.from || to.String() != x.to {
			t.Errorf("%q: %s, %s, %v", x.typed, from, to, err)
		}
	}
	for _, bad := range []string{"", "then", "1998 2004 2010", "1998..", "98"} {
		if _, _, err := find.ParseBetween(bad); err == nil {
			t.Errorf("%q was accepted", bad)
		}
	}
	for _, bad := range []string{"2004 1998", "unknown", "1998 unknown"} {
		from, to, err := find.ParseBetween(bad)
		if err == nil {
			_, err = find.MadeBetween(from, to)
		}
		if err == nil {
			t.Errorf("%q was accepted", bad)
		}
	}
}

// FuzzParseBetween: whatever is accepted is a pair of dates that can be asked
// for, or is refused when it is.
func FuzzParseBetween(f *testing.F) {
	for _, s := range []string{"1998 2004", "1998..2004", "199X", "../1999", "2019-21 and 2020-03", "unknown", "1998/"} {
		f.Add(s)
	}
	var dates []record.When
	for _, s := range []string{"1998~", "200X", "unknown", "2026-04-20", "2019-21", "../1999", "2004-05/.."} {
		d, err := record.ParseWhen(s)
		if err != nil {
			f.Fatal(err)
		}
		dates = append(dates, d)
	}
	f.Fuzz(func(t *testing.T, s string) {
		from, to, err := find.ParseBetween(s)
		if err != nil {
			return
		}
		test, err := find.MadeBetween(from, to)
		if err != nil {
			return
		}
		for _, made := range dates {
			if test(made) && (made.Before(from) || to.Before(made)) {
				t.Errorf("%q fits %s", s, made)
			}
		}
	})
}
