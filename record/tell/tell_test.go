package tell_test

import (
	"os"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/tell"
	"backleaf/record/trade"
)

// exampleTexts are the published examples, one entry each.
func exampleTexts(t testing.TB) []jsontext.Value {
	t.Helper()
	b, err := os.ReadFile("../../schema/examples/entries.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Entries []jsontext.Value `json:"entries"`
	}
	if err := json.Unmarshal(b, &file); err != nil {
		t.Fatal(err)
	}
	return file.Entries
}

// workshop folds them.
func workshop(t testing.TB) *record.Workshop {
	t.Helper()
	var es []record.Entry
	for _, text := range exampleTexts(t) {
		e, err := accept.Parse(text)
		if err != nil {
			t.Fatal(err)
		}
		es = append(es, e)
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// everything is all that a teller says of a panel.
func everything(k *tell.Teller) []string {
	out := []string{k.Title(), k.Dimensions(), k.MeasuredSize(), k.DateOfWork(), k.MadeBetween(), k.MediumLine(), k.SupportLine(),
		k.BuildUpSentence(), k.SealedFaces(), k.VarnishLine(), k.CareLine()}
	for _, list := range [][]string{k.BuildUp(), k.Care(trade.Owner), k.Gaps(), k.Corrections()} {
		out = append(out, list...)
	}
	s := k.Section()
	out = append(out, s.Title, s.Words.Front, s.Words.NotRecorded, strings.NewReplacer("{first}", "1", "{last}", "2", "{all}", "3").Replace(s.Words.Part))
	for _, b := range s.Bands {
		out = append(out, b.Label, b.Note)
	}
	return out
}

// A catalogue whose every letter is masked leaves no letter but those of the
// record and of dates' figures.
func TestNoWordOutsideTheCatalogue(t *testing.T) {
	w := workshop(t)
	masked := tell.English().Each(func(s string) string {
		return strings.Map(func(r rune) rune {
			if unicode.IsLetter(r) {
				return '#'
			}
			return r
		}, s)
	})
	var recorded strings.Builder
	for _, text := range exampleTexts(t) {
		recorded.Write(text)
	}
	unmasked := regexp.MustCompile(`\pL+`)
	for _, p := range w.Panels {
		for _, line := range everything(tell.New(masked, w, p)) {
			for _, word := range unmasked.FindAllString(line, -1) {
				if !strings.Contains(strings.ToLower(recorded.String()), strings.ToLower(word)) {
					t.Errorf("%s: %q in %q is neither in the catalogue nor in the record", p.Number, word, line)
				}
			}
		}
	}
}
