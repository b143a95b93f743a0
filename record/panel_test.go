package record_test

import (
	"fmt"
	"strings"
	"testing"

	"backleaf/record"
)

// The order of events is that of writing unless a date certainly contradicts.
func TestOrderOfInexactDates(t *testing.T) {
	for _, c := range []struct{ dates, want string }{
		{"2026-05-02 2026-05-01", "2026-05-01 2026-05-02"},
		{"2026-05-02T10:00:00Z 2026-05-02T11:00:00+02:00", "2026-05-02T11:00:00+02:00 2026-05-02T10:00:00Z"},
		{"2026 2026-05 2026-05-01", "2026 2026-05 2026-05-01"}, // each could be after the one before
		{"2026-05-01 2026 unknown", "2026-05-01 2026 unknown"},
		{"2020 unknown 2010", "2010 2020 unknown"},
		{"2020 - 2010", "2010 2020 -"},
		{"2015 2018 200X 2016/2017", "200X 2015 2016/2017 2018"},
		{"unknown - 2027~", "unknown - 2027~"},
	} {
		j := stocked(t)
		for i, at := range strings.Fields(c.dates) {
			field := fmt.Sprintf(`,"at":"%s"`, at)
			if at == "-" {
				field = ""
			}
			j.add(fmt.Sprintf(`{"kind":"note","panels":%s%s,"text":"%d"}`, names(a), field, i))
		}
		var got []string
		for _, n := range record.Each[record.Note](j.fold().Panel(a)) {
			s := n.At.String()
			if s == "" {
				s = "-"
			}
			got = append(got, s)
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s: %s, expected %s", c.dates, strings.Join(got, " "), c.want)
		}
	}
}

func TestBuildUpAndStages(t *testing.T) {
	j := stocked(t)
	words := func(f record.Face) string {
		var out []string
		for _, l := range j.fold().Panel(a).BuildUp(f) {
			w := l.Name()
			if l.Extra {
				w += " (extra)"
			}
			out = append(out, w)
		}
		return strings.Join(out, ", ")
	}
	sealer := `"mix":[{"parts":1,"material":"sealer","lot":"tin"}],`
	for _, s := range []struct {
		in                 string
		stage              record.Stage
		front, back, edges string
	}{
		{`{"kind":"note","panels":` + names(a) + `,"text":"x"}`, "board", "", "", ""},
		{coat(sealer+`"purpose":"sealer","faces":["front","back","edges"],"extra":["edges"]`, a), "sealed", "sealer", "sealer", "sealer (extra)"},
		{`{"kind":"cloth","panels":` + names(a) + `,"faces":["front"],"cloth":"linen"}`, "cloth laid", "sealer, adhesive, cloth", "sealer", "sealer (extra)"},
		{coat(`"purpose":"ground","faces":["back"]`, a), "cloth laid", "sealer, adhesive, cloth", "sealer, ground", "sealer (extra)"},
		{coat(`"purpose":"ground","faces":["front"]`, a), "ground laid", "sealer, adhesive, cloth, ground", "sealer, ground", "sealer (extra)"},
		{coat(`"purpose":"unknown","faces":["edges"]`, a), "ground laid", "sealer, adhesive, cloth, ground", "sealer, ground", "sealer (extra), coat"},
		{`{"kind":"paint","panels":` + names(a) + `,"medium":"oil"}`, record.StagePainted, "sealer, adhesive, cloth, ground, paint", "sealer, ground", "sealer (extra), coat"},
		{`{"kind":"varnish","panels":` + names(a) + `}`, record.StageVarnished, "sealer, adhesive, cloth, ground, paint, varnish", "sealer, ground", "sealer (extra), coat"},
		{`{"kind":"withdrawn","entry":15,"because":"x"}`, record.StagePainted, "sealer, adhesive, cloth, ground, paint", "sealer, ground", "sealer (extra), coat"},
		{`{"kind":"amended","entry":9,"because":"x","change":{"faces":["front","edges"]}}`, record.StagePainted, "sealer, adhesive, cloth, ground, paint", "ground", "sealer (extra), coat"},
		{`{"kind":"cloth","panels":` + names(a) + `,"faces":["front"],"cloth":"linen","again_of":10}`, record.StagePainted, "sealer, adhesive, adhesive, cloth, ground, paint", "ground", "sealer (extra), coat"},
	} {
		j.add(s.in)
		p := j.fold().Panel(a)
		if p.Stage() != s.stage || words(record.Front) != s.front || words(record.Back) != s.back || words(record.Edges) != s.edges {
			t.Errorf("after %s: %s; front %s; back %s; edges %s", s.in, p.Stage(), words(record.Front), words(record.Back), words(record.Edges))
		}
		if j.fold().Panel(b).Stage() != "board" {
			t.Errorf("after %s: another panel is no bare board", s.in)
		}
	}
}

func TestCertificateThatStands(t *testing.T) {
	hex := strings.Repeat("0", 64)
	issue := func(replaces int) string {
		r := ""
		if replaces != 0 {
			r = fmt.Sprintf(`,"replaces":%d`, replaces)
		}
		return `{"kind":"certificate-issued","panels":` + names(a) + `,"record_sha256":"` + hex + `"` + r + `}`
	}
	revoke := func(n int) string {
		return fmt.Sprintf(`{"kind":"certificate-withdrawn","panels":%s,"certificate":%d,"because":"lost"}`, names(a), n)
	}
	for _, c := range []struct {
		name string
		in   []string // the first is entry 8
		want int64    // entry of the certificate that stands, 0 for none
	}{
		{"none", nil, 0},
		{"issued", []string{issue(0)}, 8},
		{"taken back", []string{issue(0), revoke(8)}, 0},
		{"replaced", []string{issue(0), issue(8)}, 9},
		{"replacement taken back", []string{issue(0), issue(8), revoke(9)}, 0},
		{"old one taken back", []string{issue(0), issue(8), revoke(8)}, 9},
		{"two, the second taken back", []string{issue(0), issue(0), revoke(9)}, 8},
		{"three, a replacement of the first taken back", []string{issue(0), issue(0), issue(8), revoke(10)}, 9},
		{"taken back, then issued again", []string{issue(0), revoke(8), issue(8)}, 10},
	} {
		j := stocked(t)
		for _, in := range c.in {
			j.add(in)
		}
		got, ok := j.fold().Panel(a).Certificate()
		if got.Seq != c.want || ok != (c.want != 0) {
			t.Errorf("%s: %d %v, expected %d", c.name, got.Seq, ok, c.want)
		}
	}
}

func TestDescriptionAwayDiscarded(t *testing.T) {
	j := stocked(t)
	p := func() *record.Panel { return j.fold().Panel(a) }
	j.add(`{"kind":"described","panels":` + names(a) + `,"title":"One","made":"2026~","own_reference":"Q 1"}`)
	j.add(`{"kind":"described","panels":` + names(a, b) + `,"title":"Two","meant_for_humidity":"50 %"}`)
	if d := p().Description(); d.Title != "Two" || d.Made.String() != "2026~" || d.Owner != "Q 1" || d.MeantFor.String() != "50 %" {
		t.Errorf("%+v", d)
	}
	for _, how := range []string{"loan", "return", "sale"} {
		j.add(`{"kind":"handed-over","panels":` + names(a) + `,"how":"` + how + `"}`)
		if h, away := p().Away(); away != (how != "return") || away && string(h.Body.How) != how {
			t.Errorf("after %s: %v %v", how, h, away)
		}
	}
	if _, gone := p().Discarded(); gone {
		t.Error("discarded without an entry")
	}
	n := j.add(`{"kind":"discarded","panels":` + names(a) + `,"because":"split"}`)
	if dd, gone := p().Discarded(); !gone || dd.Body.Because != "split" {
		t.Errorf("%v %v", dd, gone)
	}
	j.add(fmt.Sprintf(`{"kind":"withdrawn","entry":%d,"because":"glued"}`, n))
	if _, gone := p().Discarded(); gone {
		t.Error("still discarded")
	}
}

// valuesOf is the texts of all values of something said.
func valuesOf(s record.Said) string {
	out := ""
	for _, v := range s.Values {
		out += " " + strings.Join(v.Texts, ", ")
	}
	return out
}

func TestGaps(t *testing.T) {
	j := stocked(t)
	gaps := func(n record.Number) []string {
		w := j.fold()
		var out []string
		for _, g := range w.Gaps(w.Panel(n)) {
			s := fmt.Sprintf("%s: %s%s @%d", g.Topic, strings.TrimPrefix(g.Said.Code, "gap-"), valuesOf(g.Said), g.Seq)
			if g.Unknown {
				s += " (unknown)"
			}
			out = append(out, s)
		}
		return out
	}
	check := func(what string, n record.Number, want ...string) {
		t.Helper()
		if got := gaps(n); strings.Join(got, "; ") != strings.Join(want, "; ") {
			t.Errorf("%s:\n%s\nexpected\n%s", what, strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
	}
	bare := []string{"support: grain @7", "support: sealing front @0", "support: sealing back @0", "support: sealing edges @0"}
	check("a bare board, recorded as made: nothing was laid on it", a, bare[0])
	j.add(coat(`"at":"2026-05-02","purpose":"sealer","faces":["front","back","edges"],"mix":[{"parts":1,"material":"sealer","lot":"unknown"}],"wet_total":"unknown"`, a)) // 8
	check("sealed", a, bare[0], "sealer: material-lot sealer Sealer @8 (unknown)", "sealer: amount @8 (unknown)")
	j.add(`{"kind":"cloth","panels":` + names(a) + `,"faces":["front","back"],"cloth":"linen","mix":[{"parts":1,"material":"unknown"}],"wet_each":"9 g"}`) // 9
	cloth := []string{"adhesive: date @9", "adhesive: material @9 (unknown)", "cloth: cloth-lot @9", "cloth: thread-run @9"}
	check("cloth on two faces is told once", a, append([]string{bare[0], "sealer: material-lot sealer Sealer @8 (unknown)", "sealer: amount @8 (unknown)"}, cloth...)...)
	j.add(`{"kind":"paint","at":"unknown","panels":` + names(b) + `,"medium":"unknown"}`)              // 10
	j.add(`{"kind":"described","panels":` + names(b) + `,"signed":"unknown","inscription":"unknown"}`) // 11
	check("painted on a bare board, recorded as made", b, append([]string{bare[0]}, "paint: date @10 (unknown)", "paint: medium @10 (unknown)", "paint: pigments @10",
		"identification: title @0", "identification: date-of-work @0", "identification: signature @0 (unknown)", "identification: front-photograph @0")...)
	j.add(`{"kind":"cut","at":"unknown","panels":` + names(d) + `,"batch":"old","size":"unknown x unknown","board":"unknown"}`) // 12
	j.add(`{"kind":"left-bare","panels":` + names(d) + `,"faces":["back"]}`)                                                    // 13
	check("an old panel of which little is known", d, "support: size @12 (unknown)", "support: thickness @12", "support: board @12 (unknown)", "support: board-lot @12", "support: cutting-date @12 (unknown)", bare[1], bare[3])
}
