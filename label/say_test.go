package label_test

import (
	"fmt"
	"strings"
	"testing"

	"backleaf/label"
	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
)

// shop is a small studio with one panel, KB26-0001-K, and what is added to it.
func shop(t testing.TB, studio record.Studio, entries ...string) (*record.Workshop, *record.Panel) {
	t.Helper()
	if studio.Maker == "" {
		studio.Maker = "Ilze Kārkla"
	}
	studio.Mark = "KB"
	es := []record.Entry{{Body: studio}}
	for _, text := range append([]string{
		`{"v":1,"kind":"material","key":"ply","name":"Birch ply","uses":["board"],"board":{"kind":"plywood","species":"birch"}}`,
		`{"v":1,"kind":"material","key":"sealer","name":"Sealer","uses":["sealer"],"binder":"acrylic-dispersion"}`,
		`{"v":1,"kind":"cut","panels":["KB26-0001-K"],"at":"2026-05-02","batch":"may","size":"40 x 30 cm x 3 mm","board":"ply"}`,
		`{"v":1,"kind":"coat","panels":["KB26-0001-K"],"at":"2026-05-02","purpose":"sealer","faces":["front","back","edges"],"mix":[{"parts":1,"material":"sealer"}]}`,
	}, entries...) {
		e, err := accept.Parse([]byte(text))
		if err != nil {
			t.Fatalf("%s: %v", text, err)
		}
		es = append(es, e)
	}
	for i := range es {
		es[i].Seq = int64(i + 1)
		es[i].Written = record.Moment(day)
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	return w, w.Panels[0]
}

const (
	painted   = `{"v":1,"kind":"paint","panels":["KB26-0001-K"],"at":"2026-06-01","medium":"oil"}`
	varnished = `{"v":1,"kind":"varnish","panels":["KB26-0001-K"],"at":"2027-01-10","resin":"ketone resin","removable":"yes","removed_with":"white spirit"}`
	described = `{"v":1,"kind":"described","panels":["KB26-0001-K"],"title":"Low Tide","made":"2026"}`
	labelled  = `{"v":1,"kind":"label-printed","panels":["KB26-0001-K"],"at":"2027-02-01","layout":"large"}`
	treated   = `{"v":1,"kind":"treatment","panels":["KB26-0001-K"],"at":"2031-03-12","by":"A. Example","text":"loose corner laid down"}`
)

func say(t testing.TB, stage label.Stage, studio record.Studio, entries ...string) label.Input {
	t.Helper()
	w, p := shop(t, studio, entries...)
	in, err := label.Say(tell.English(), w, p, stage, strings.Repeat("3f2a91bc", 8))
	if err != nil {
		t.Fatal(err)
	}
	return in
}

var linked = record.Studio{LinkBase: "HTTPS://EXAMPLE.ORG/P/", Place: "Riga, Latvia"}

// What stands on a label follows the stage of the panel.
func TestStages(t *testing.T) {
	blank := say(t, label.StageAuto, linked)
	if blank.Title != "Blank panel" || !blank.Blank || blank.Varnish != "" || blank.Made != "Made 2 May 2026" || blank.Medium != "Birch plywood" {
		t.Errorf("blank: %+v", blank)
	}
	done := say(t, label.StageAuto, linked, painted, varnished, described)
	if done.Title != "Low Tide" || done.Date != "2026" || done.Medium != "Oil on birch plywood" || done.Blank || done.Changed != "" ||
		done.Varnish != "Ketone resin varnish, removable by a conservator with white spirit" {
		t.Errorf("finished: %+v", done)
	}
	if done.Back != (label.Area{WidthMM: 300, HeightMM: 400}) || done.Link != "HTTPS://EXAMPLE.ORG/P/KB260001K" || done.Where != "Record: https://example.org/P/KB260001K" {
		t.Errorf("finished: %+v", done)
	}
	if done.Fingerprint != "SHA-256 of the record begins 3f2a 91bc 3f2a 91bc" {
		t.Errorf("fingerprint %q", done.Fingerprint)
	}
	if front := done.BuildUp[:3]; front[0] != "Ketone resin varnish" || front[1] != "Oil paint" || front[2] != "Acrylic dispersion sealer" {
		t.Errorf("build-up %q", done.BuildUp)
	}
	undated := say(t, label.StageAuto, linked, painted)
	if undated.Title != "Untitled" || undated.Date != "" || undated.Made != "Painted 1 June 2026" {
		t.Errorf("a painting that nobody described: %+v", undated)
	}
	changed := say(t, label.StageAuto, linked, painted, described, labelled, treated)
	if want := "Treated 12 March 2031: loose corner laid down"; changed.Changed != want {
		t.Errorf("changed: %q, want %q", changed.Changed, want)
	}
	if want := "Label of 9 May 2026, record as of entry 9; replaces the label of 9\u00a0May\u00a02026"; changed.Issue != want {
		t.Errorf("changed: %q, want %q", changed.Issue, want)
	}
	long := strings.Replace(treated, "loose corner laid down", "and so on"+strings.Repeat(" and so on", 50), 1)
	if got := say(t, label.StageChanged, linked, painted, long).Changed; got != "Treated 12 March 2031, told in the record" {
		t.Errorf("a long treatment: %q", got)
	}
	if got := say(t, label.StageBlank, linked, painted, described); got.Title != "Blank panel" {
		t.Errorf("blank was asked for: %+v", got)
	}
}

// Without a link base the symbol says number, maker and contact.
func TestWithoutALink(t *testing.T) {
	in := say(t, label.StageAuto, record.Studio{Contact: "studio@example.org"})
	if in.Link != "" || in.Plain != "KB26-0001-K\nIlze Kārkla\nstudio@example.org" || !strings.Contains(in.Where, "studio@example.org") {
		t.Errorf("%+v", in)
	}
	if in := say(t, label.StageAuto, record.Studio{}); in.Where != "The record of this panel is kept by its maker." {
		t.Errorf("%+v", in)
	}
}

// A demonstration says so on the label of every size.
func TestDemonstration(t *testing.T) {
	studio := linked
	studio.Demo = true
	in := say(t, label.StageAuto, studio)
	for _, size := range []label.Size{label.Small, label.Medium, label.Large} {
		text := toolcheck.Run(t, "pdftotext", save(t, "demo.pdf", draw(t, options(size), in)), "-")
		if !strings.Contains(text, "Demonstration") {
			t.Errorf("%v: %q", size, text)
		}
	}
}

func TestBadDigest(t *testing.T) {
	w, p := shop(t, linked)
	if _, err := label.Say(tell.English(), w, p, label.StageAuto, "3F2A"); err == nil {
		t.Error("a digest that is none was printed")
	}
}

// Sixty coats, each of another kind, go on every size from the record on.
func TestManyCoats(t *testing.T) {
	var coats []string
	for i := range 60 {
		coats = append(coats, fmt.Sprintf(`{"v":1,"kind":"coat","panels":["KB26-0001-K"],"at":"2026-05-%02d","purpose":%q,"faces":["front"],"mix":[{"parts":1,"material":"sealer"}]}`,
			3+i/4, []string{"size", "ground", "isolation", "barrier"}[i%4]))
	}
	in := say(t, label.StageAuto, linked, coats...)
	if len(in.BuildUp) < 60 {
		t.Fatalf("%d lines of build-up", len(in.BuildUp))
	}
	for _, size := range []label.Size{label.Small, label.Medium, label.Large} {
		ls, err := label.Arrange([]label.Input{in}, options(size))
		if err != nil {
			t.Fatal(err)
		}
		checkBoxes(t, ls[0], in)
	}
}

// The second symbol begins with the number, says what the label says, and has no
// sign that a plain reader could stumble over.
func TestWithFacts(t *testing.T) {
	in := hazards()
	facts := in.WithFacts()
	if !strings.HasPrefix(facts.Facts, in.Number+"\n") || !strings.HasPrefix(facts.FactsShort, in.Number+"\n") {
		t.Errorf("the first line is not the number: %q", facts.Facts)
	}
	for _, want := range append([]string{in.Title, in.Maker, in.Medium, in.Varnish, in.Sealed, in.Where, in.Issue, in.BuildUp[0]}, in.Hazards...) {
		if !strings.Contains(facts.Facts, want) {
			t.Errorf("%q is not in %q", want, facts.Facts)
		}
	}
	if strings.ContainsAny(facts.Facts, "\u00a0\u202f\u2044") || strings.Contains(facts.FactsShort, " / ") {
		t.Errorf("%q, %q", facts.Facts, facts.FactsShort)
	}
}
