package ask_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/ask"
	"backleaf/record/tell"
)

// full is a panel of which much is recorded, bare one of which hardly
// anything is. The places of the number are filled in.
const full = `
"kind":"studio","maker":"Ada Exemple","mark":"DM","place":"Riga, Latvia","contact":"studio@example.org"
"kind":"material","key":"ply","name":"thin birch plywood","uses":["board"],"board":{"kind":"plywood","species":"birch","plies":3,"formaldehyde_class":"E1"},"basis":"data sheet"
"kind":"lot","key":"ply-1","material":"ply","producer_lot":"P-2206"
"kind":"material","key":"linen","name":"fine linen","uses":["cloth"],"cloth":{"fibre":"linen","weave":"plain","warp":"18 /cm","weft":"17 /cm","mass":"185 g/m2"},"basis":"weaver's sheet"
"kind":"material","key":"sealer","name":"Quayside sealer","uses":["sealer","adhesive"],"binder":"acrylic-dispersion","waterborne":"yes","solids_by_volume":"42 %","density":"1.04 g/mL","cure_from":"24 h","cure_to":"36 h","hazard":"Wear gloves.","basis":"data sheet"
"kind":"lot","key":"sealer-3","material":"sealer","producer_lot":"4471B"
"kind":"material","key":"ground","name":"Quayside ground","uses":["ground"],"binder":"acrylic-dispersion","pigments":[{"name":"titanium white","colour_index":"PW 6"}]
"kind":"material","key":"gloss","name":"Quayside varnish","uses":["varnish"],"binder":"hydrocarbon-resin","resin":"hydrocarbon resin","removable":"yes","removed_with":"white spirit","basis":"data sheet"
"kind":"cut","at":"2026-05-02T13:30:00+03:00","panels":["NUMBER"],"batch":"may","size":"30 x 40 cm x 3 mm","board":"ply","board_lot":"ply-1","grain":"width","own_reference":"old 17"
"kind":"coat","at":"2026-05-02T14:05:00+03:00","panels":["NUMBER"],"purpose":"sealer","faces":["front","back","edges"],"extra":["edges"],"mix":[{"parts":1,"material":"sealer","lot":"sealer-3"}],"wet_total":"24 g","tool":"roller","temperature":"21 °C","humidity":"54 %"
"kind":"cloth","at":"2026-05-02T14:40:00+03:00","panels":["NUMBER"],"faces":["front"],"cloth":"linen","threads":"along-grain","mix":[{"parts":1,"material":"sealer","lot":"sealer-3"}]
"kind":"trimmed","at":"2026-05-02T15:05:00+03:00","panels":["NUMBER"],"tool":"a fresh blade","edges_eased":"yes"
"kind":"sanded","at":"2026-05-04T09:30:00+03:00","panels":["NUMBER"],"faces":["front"],"scale":"P","grit":180
"kind":"coat","at":"2026-05-04T10:00:00+03:00","panels":["NUMBER"],"purpose":"ground","faces":["front"],"mix":[{"parts":1,"material":"ground"}],"thinned":"10 %","dry_film":"60 µm"
"kind":"inspection","at":"2026-05-06","panels":["NUMBER"],"bow":"0.8 mm","span":"40 cm","hollow_to":"front","edges":"sound","adhesion":"sound"
"kind":"paint","at":"2026-06","panels":["NUMBER"],"medium":"oil","technique":"wet in wet","pigments":[{"name":"lead white","colour_index":"PW 1"}],"underdrawing":"charcoal","oil_content":"fat"
"kind":"described","at":"2026-08-12","panels":["NUMBER"],"title":"Low tide, evening","made":"2026-08","subject":"harbour with two boats","signed":"lower right","distinguishing_features":"a thumb mark"
"kind":"varnish","at":"2027-04-12","panels":["NUMBER"],"mix":[{"parts":1,"material":"gloss"}],"gloss":"satin"
"kind":"label-printed","at":"2027-04-15","panels":["NUMBER"],"layout":"small"
"kind":"certificate-issued","at":"2027-04-15","panels":["NUMBER"],"record_sha256":"9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08"
"kind":"handed-over","at":"2027-05-01","panels":["NUMBER"],"how":"sale"
"kind":"condition","at":"2031-02-20","panels":["NUMBER"],"by":"R. Invented","text":"one scratch"
"kind":"treatment","at":"2031-02-24","panels":["NUMBER"],"by":"R. Invented","text":"cleaned dry","with":"soft brush"
"kind":"warm-air","at":"2026-05-02T15:50:00+03:00","panels":["NUMBER"],"for":"5 min"
"kind":"amended","entry":12,"because":"seen again","change":{"tool":"a new blade"}
"kind":"note","at":"2031","panels":["NUMBER"],"text":"hangs in the hall"`

const bare = `
"kind":"studio","maker":"Ada Exemple","mark":"DM"
"kind":"cut","panels":["NUMBER"],"batch":"old","size":"unknown x unknown"`

func panel(t testing.TB, text string) (*record.Workshop, *record.Panel) {
	t.Helper()
	n, err := record.NewNumber("DM", 2026, 7, "")
	if err != nil {
		t.Fatal(err)
	}
	var es []record.Entry
	for line := range strings.SplitSeq(strings.TrimSpace(strings.ReplaceAll(text, "NUMBER", string(n))), "\n") {
		e, err := accept.Parse([]byte(fmt.Sprintf(`{"v":1,"seq":%d,"written":"2031-03-01T10:00:00+02:00",%s}`, len(es)+1, line)))
		if err != nil {
			t.Fatalf("%s: %v", line, err)
		}
		es = append(es, e)
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	return w, w.Panels[0]
}

// Questions, and what of the full record must be in the answer, with the
// entries it rests on. Thin and fixed spaces are written as ordinary ones.
var questions = []struct {
	asked, topic, says string
	entries            string
}{
	{"adhesive", "adhesive", "acrylic dispersion adhesive, front: Quayside sealer, lot 4471B, 2 May 2026", "[11]"},
	{"what glue holds the linen?", "adhesive", "Quayside sealer, lot 4471B", "[11]"},
	{"How was the cloth stuck down", "adhesive", "acrylic dispersion", "[11]"},
	{"is the back sealed", "back", "the back is sealed", "[10]"},
	{"reverse", "back", "acrylic dispersion sealer", "[10]"},
	{"verso sealed?", "back", "the back is sealed", "[10]"},
	{"are the edges sealed", "edges", "the edges are sealed", "[10]"},
	{"sealed all round?", "sealing", "the edges are sealed", "[10 11]"},
	{"sealer", "sealer", "Quayside sealer, lot 4471B", "[10]"},
	{"varnish remover", "varnish removal", "removable by a conservator with white spirit (as stated for the product: data sheet)", "[18]"},
	{"how do I remove the varnish", "varnish removal", "test first; a conservator decides", "[18]"},
	{"is the varnish removable", "varnish removal", "white spirit", "[18]"},
	{"which solvent", "varnish removal", "white spirit", "[18]"},
	{"varnish", "varnish", "Hydrocarbon resin varnish, satin", "[18]"},
	{"when was it varnished", "varnish", "12 April 2027", "[18]"},
	{"surface coating", "varnish", "Hydrocarbon resin varnish", "[18]"},
	{"isolation coat", "isolation coat", "not recorded", "[]"},
	{"lead", "lead and toxic pigments", "lead white (PW 1) in the oil paint: lead", "[16]"},
	{"does the paint contain lead", "lead and toxic pigments", "do not sand dry", "[16]"},
	{"is it toxic", "lead and toxic pigments", "lead white", "[16]"},
	{"zinc white", "zinc", "none among the pigments that are recorded", "[]"},
	{"hazards", "hazards", "Wear gloves.", "[16]"},
	{"ground", "ground", "acrylic dispersion ground, front: Quayside ground, lot not recorded, thinned 10 %, 4 May 2026", "[14]"},
	{"gesso", "ground", "Quayside ground, lot not recorded, thinned 10 %", "[14]"},
	{"what primer", "ground", "acrylic dispersion ground", "[14]"},
	{"when was it primed?", "ground", "4 May 2026", "[14]"},
	{"who", "maker", "Ada Exemple, Riga, Latvia", "[]"},
	{"who made it", "maker", "contact: studio@example.org", "[]"},
	{"artist", "maker", "Ada Exemple", "[]"},
	{"size", "size", "dimensions: 30 × 40 cm × 3 mm (11 3⁄4 × 15 3⁄4 × 1⁄8 in)", "[9 10 11]"},
	{"dimensions", "dimensions", "30 × 40 cm × 3 mm", "[9]"},
	{"how large is it", "dimensions", "30 × 40 cm", "[9]"},
	{"sizing", "sizing", "no coat of size by that name", "[10 11]"},
	{"was the linen sized", "sizing", "acrylic dispersion sealer", "[10 11]"},
	{"thread count", "thread count", "warp 18 threads/cm, weft 17 threads/cm (as stated for the product: weaver's sheet)", "[11]"},
	{"threads per cm of the linen", "thread count", "warp 18 threads/cm", "[11]"},
	{"weave", "thread count", "plain weave", "[11]"},
	{"weight of the cloth", "weight of the cloth", "185 g/m²", "[11]"},
	{"gsm", "weight of the cloth", "185 g/m²", "[11]"},
	{"which way does the warp run", "run of the threads", "along the grain", "[11]"},
	{"cloth", "cloth", "linen, plain weave", "[11]"},
	{"canvas", "cloth", "fine linen, lot not recorded", "[11]"},
	{"when was the cloth laid", "cloth", "2 May 2026", "[11]"},
	{"trimmed", "trimming", "trimmed, a new blade, edges eased: yes", "[12]"},
	{"when cured", "cure", "24 h to 36 h", "[18]"},
	{"is it dry", "cure", "not recorded as such", "[18]"},
	{"is it dry?", "cure", "the time stated to cure has passed, surely since 4 May 2026, 14:40, of acrylic dispersion sealer and acrylic dispersion adhesive", "[18]"},
	{"is the sealer dry", "cure", "the time stated to cure has passed", "[10]"},
	{"how many coats", "build-up", "on record today: 6 layers on the front, one layer on the back and one layer on the edges", "[9 10 11 14 16 18]"},
	{"how many coats of varnish", "varnish", "on record today: one layer on the front", "[18]"},
	{"how many coats on the back", "back", "on record today: one layer on the back", "[10]"},
	{"what grit was it sanded with", "sanding", "P 180", "[13 16]"},
	{"thinned?", "thinning", "acrylic dispersion ground: 10 %", "[14]"},
	{"brush or roller", "tools", "roller", "[10]"},
	{"amount of sealer", "amounts", "24 g", "[10]"},
	{"hair dryer", "warm air", "5 min", "[24]"},
	{"pigments", "pigments", "lead white (PW 1) in the oil paint", "[14 16]"},
	{"underdrawing", "underdrawing", "charcoal", "[16]"},
	{"fat over lean", "fat over lean", "oil paint: fat", "[16]"},
	{"medium", "paint", "oil paint, front: product not recorded, June 2026", "[16]"},
	{"oil or acrylic?", "paint", "oil paint", "[16]"},
	{"technique", "paint", "wet in wet", "[16]"},
	{"formaldehyde", "formaldehyde", "E1", "[9]"},
	{"grain direction", "grain", "along the width", "[9]"},
	{"how thick is the board", "thickness of the board", "3 mm", "[9]"},
	{"how thick is the ground", "thickness of the layers", "60 µm, measured", "[10 11 14 16 18]"},
	{"board", "board", "birch plywood, 3 mm, grain along the width", "[9]"},
	{"what substrate", "board", "thin birch plywood, lot P-2206", "[9]"},
	{"is there a cradle", "bracing", "not recorded", "[]"},
	{"date", "date of the work", "August 2026", "[17]"},
	{"when was the painting made", "date of the work", "August 2026", "[17]"},
	{"timeline", "steps and dates", "cut 2 May 2026", "[9 10 11 12 13 14 16 18]"},
	{"where was it made", "place", "Riga, Latvia", "[]"},
	{"where is it now", "whereabouts", "sold on 1 May 2027", "[21]"},
	{"who bought it", "owner and price", "kept privately, outside the journal", "[21]"},
	{"price", "owner and price", "not told here", "[21]"},
	{"title", "title", "Low tide, evening", "[17]"},
	{"subject", "subject", "harbour with two boats", "[17]"},
	{"where is it signed", "signature and inscriptions", "lower right", "[17]"},
	{"distinguishing features", "distinguishing features", "a thumb mark", "[17]"},
	{"inventory number", "number", "old 17", "[9]"},
	{"batch", "sisters", "may", "[9]"},
	{"lot numbers", "lots", "Quayside sealer, lot 4471B", "[9 10 11 14 18]"},
	{"products", "products", "thin birch plywood", "[9 10 11 14 18]"},
	{"is it sensitive to water", "binders", "acrylic dispersion", "[10 11 14 18]"},
	{"build-up", "build-up", "On the back: acrylic dispersion sealer.", "[9 10 11 14 16 18]"},
	{"stratigraphy", "build-up", "Birch plywood, 3 mm.", "[9 10 11 14 16 18]"},
	{"what is it made of", "build-up", "Birch plywood", "[9 10 11 14 16 18]"},
	{"is it warped", "bow", "0.8 mm over 40 cm, hollow at the front", "[15]"},
	{"bow", "bow", "6 May 2026", "[15]"},
	{"humidity", "air at work", "21 °C, 54 %", "[10]"},
	{"how should I display it", "care", "35–65 % relative humidity, no quick swings; no sun", "[]"},
	{"light", "care", "200 lux", "[]"},
	{"is the adhesion sound", "edges and adhesion", "adhesion sound", "[15]"},
	{"condition", "condition", "by R. Invented: one scratch, 20 February 2031", "[15 22 23]"},
	{"has it been restored", "treatment", "cleaned dry; with soft brush", "[23]"},
	{"certificate", "certificate", "one certificate was issued, on 15 April 2027: it is the latest, and in force", "[20]"},
	{"label", "label", "15 April 2027", "[19]"},
	{"photographs", "photographs", "not recorded", "[]"},
	{"corrections", "changes", "E12 changed, tool: a fresh blade → a new blade (seen again)", "[25 12 23]"},
	{"what is not recorded", "what is not recorded", "lot of the cloth", "[]"},
	{"notes", "notes", "hangs in the hall", "[26]"},
}

// code is the code of a topic by its name.
func code(name string) record.Code { return record.Code(strings.ReplaceAll(name, " ", "-")) }

var ordinary = strings.NewReplacer("\u202f", " ", "\u00a0", " ")

// now is when the questions are asked.
var now = time.Date(2031, 3, 2, 12, 0, 0, 0, time.UTC)

func TestQuestions(t *testing.T) {
	w, p := panel(t, full)
	for _, q := range questions {
		r, err := ask.Ask(tell.English(), w, p, now, q.asked)
		if err != nil {
			t.Errorf("%q: %v", q.asked, err)
			continue
		}
		as := r.Answers
		if len(as) != 1 || as[0].Topic != code(q.topic) {
			t.Errorf("%q: %d answers, the first on %q, want %q", q.asked, len(as), as[0].Topic, q.topic)
			continue
		}
		a := as[0]
		if got := ordinary.Replace(strings.Join(a.Lines, "\n")); !strings.Contains(got, q.says) {
			t.Errorf("%q: %q is not in the answer:\n%s", q.asked, q.says, got)
		}
		if got := fmt.Sprint(a.Entries); got != q.entries {
			t.Errorf("%q: rests on %s, want %s", q.asked, got, q.entries)
		}
		if len(a.Lines) < 1 || len(a.Lines) > 12 {
			t.Errorf("%q: %d lines", q.asked, len(a.Lines))
		}
	}
}

// Of a panel of which nothing is recorded, nothing is answered as if it were;
// what is always known is the number, the batch, the maker and general advice.
func TestNothingIsGuessed(t *testing.T) {
	w, p := panel(t, bare)
	always := []string{"number", "sisters", "maker", "care", "build-up", "what is not recorded", "changes", "steps and dates", "written down", "rules", "cleaning", "hanging", "shipping", "new varnish"}
	for _, q := range questions {
		r, err := ask.Ask(tell.English(), w, p, now, q.asked)
		if err != nil {
			t.Errorf("%q: %v", q.asked, err)
			continue
		}
		for _, a := range r.Answers {
			if a.Recorded && !slices.Contains(always, tell.English().Question(a.Topic)) {
				t.Errorf("%q is answered of a panel of which nothing is recorded: %q", q.asked, a.Lines)
			}
		}
	}
}

// What leaves it open whether a panel holds lead is named.
func TestOpenHarmIsNamed(t *testing.T) {
	for pigments, says := range map[string]string{
		``:                                    "oil paint (what is in it is not recorded)",
		`"pigments":[{"name":"old yellow"}],`: "oil paint (no Colour Index name is recorded of old yellow)",
		`"pigments":[{"name":"ultramarine","colour_index":"PB 29"}],`: "hydrocarbon resin varnish (whether Quayside varnish is harmful is not recorded)",
	} {
		w, p := panel(t, strings.Replace(full, `"pigments":[{"name":"lead white","colour_index":"PW 1"}],`, pigments, 1))
		r, err := ask.Ask(tell.English(), w, p, now, "is there lead in it")
		if err != nil {
			t.Fatal(err)
		}
		if got := ordinary.Replace(strings.Join(r.Answers[0].Lines, "\n")); !strings.Contains(got, "cannot be ruled out, because of ") || !strings.Contains(got, says) {
			t.Errorf("%s: %q is not in the answer:\n%s", pigments, says, got)
		}
	}
}

func TestTwoTopics(t *testing.T) {
	w, p := panel(t, full)
	r, err := ask.Ask(tell.English(), w, p, now, "title and maker")
	if err != nil || len(r.Answers) != 2 {
		t.Fatalf("%v, %v", r, err)
	}
}

// Where more is in no list than was understood, that is named and nothing answered.
func TestNotUnderstood(t *testing.T) {
	w, p := panel(t, full)
	for asked, words := range map[string]string{
		"tensile strength modulus of the sealer": "[tensile strength modulus]",
		"how blue is the sky tomorrow":           "[sky]",
		"":                                       "[]",
		"is it the":                              "[]",
		"\x1b[31m lead isotope ratio":            "[31m isotope ratio]",
		"DROP TABLE":                             "[drop table]",
	} {
		_, err := ask.Ask(tell.English(), w, p, now, asked)
		var e *ask.NotUnderstood
		if !errors.As(err, &e) {
			t.Errorf("%q: %v", asked, err)
			continue
		}
		if got := fmt.Sprint(e.Words); got != words {
			t.Errorf("%q: not understood %s, want %s", asked, got, words)
		}
	}
}

// Every topic can be asked by its own name.
func TestTopicsByName(t *testing.T) {
	w, p := panel(t, full)
	for _, topic := range ask.Topics() {
		name := tell.English().Question(topic)
		if topic != code(name) {
			t.Errorf("%q has no name of its own: %q", topic, name)
		}
		r, err := ask.Ask(tell.English(), w, p, now, name)
		if err != nil {
			t.Errorf("%q: %v", name, err)
			continue
		}
		if !slices.ContainsFunc(r.Answers, func(a ask.Answer) bool { return a.Topic == topic }) {
			t.Errorf("%q is answered as %q", name, r.Answers[0].Topic)
		}
	}
}

func FuzzAsk(f *testing.F) {
	for _, q := range questions {
		f.Add(q.asked)
	}
	w, p := panel(f, full)
	f.Fuzz(func(t *testing.T, asked string) {
		r, err := ask.Ask(tell.English(), w, p, now, asked)
		if (err == nil) != (len(r.Answers) > 0) {
			t.Errorf("%q: %d answers, error %v", asked, len(r.Answers), err)
		}
	})
}
