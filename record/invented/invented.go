// Package invented makes the journal of a studio that never was, as large as a
// test or a benchmark asks for: the same seed, the same entries. It is used by
// tests only, so it panics where it is asked for nonsense.
//
// TestJournal shows that a book takes every entry, and that every kind that a
// person can write by hand is among them.
package invented

import (
	"fmt"
	"iter"
	"math/rand/v2"
	"strings"
	"time"

	"backleaf/record"
)

// Batch is how many panels are cut together, PerYear how many in a year.
const (
	Batch   = 14
	PerYear = 5000
)

// shelf is what the studio begins with, in 1990.
var shelf = []string{
	`{"kind":"studio","at":"1990","maker":"Ada Kell","mark":"KB","place":"Harbour Street","contact":"post@kell.invalid"}`,
	`{"kind":"maker","key":"jon","name":"Jon Berg","at":"1990"}`,
	`{"kind":"material","key":"ply","at":"1990","name":"birch plywood","uses":["board"],"board":{"kind":"plywood","thickness":"3 mm"}}`,
	`{"kind":"material","key":"linen","at":"1990","name":"fine linen","uses":["cloth"],"cloth":{"fibre":"linen","weave":"plain","mass":"190 g/m2"}}`,
	`{"kind":"material","key":"sealer","at":"1990","name":"clear sealer","uses":["sealer","adhesive"],"binder":"acrylic-dispersion","solids_by_mass":"48 %"}`,
	`{"kind":"material","key":"gesso","at":"1990","name":"white gesso","uses":["ground"],"binder":"acrylic-dispersion","solids_by_mass":"55 %"}`,
	`{"kind":"material","key":"varnish","at":"1990","name":"final varnish","uses":["varnish"],"removable":"yes","removed_with":"white spirit"}`,
	`{"kind":"recipe","key":"usual","at":"1990","steps":[{"purpose":"sealer","faces":["front","back"],"material":"sealer","spread":"90 g/m2"}]}`,
}

// Journal yields the entries of a studio until it has cut so many panels: a
// batch of fourteen is about 28 entries.
func Journal(seed uint64, panels int) iter.Seq[record.Entry] {
	return func(yield func(record.Entry) bool) {
		j := &journal{rand: rand.New(rand.NewPCG(seed, 26)), yield: yield, at: time.Date(1990, 1, 2, 8, 0, 0, 0, time.UTC)}
		for _, s := range shelf {
			j.write(s)
		}
		for first := 0; first < panels && !j.over; first += Batch {
			j.batch(first, min(Batch, panels-first))
		}
	}
}

type journal struct {
	rand  *rand.Rand
	yield func(record.Entry) bool
	over  bool
	seq   int64
	at    time.Time
}

// write yields one entry, written down an hour after it happened.
func (j *journal) write(text string, panels ...record.Number) (seq int64) {
	if j.over {
		return j.seq
	}
	e, err := record.Parse([]byte(`{"v":1,` + text[1:]))
	if err != nil {
		panic(fmt.Sprintf("invented: %s: %v", text, err))
	}
	j.seq++
	e.Panels = panels
	if !e.At.Known() && e.Corrects() == 0 && e.Kind() != "recipe" {
		e.At = record.Moment(j.at)
	}
	e.Written = record.Moment(j.at.Add(time.Hour))
	j.at = j.at.Add(11 * time.Minute)
	j.over = !j.yield(e)
	return j.seq
}

// Number is the number of the n-th panel, from 0.
func Number(n int) record.Number {
	number, err := record.NewNumber("KB", (90+n/PerYear)%100, n%PerYear+1, "")
	if err != nil {
		panic(err)
	}
	return number
}

func (j *journal) batch(first, count int) {
	start := time.Date(1990+first/PerYear, 1, 2, 8, 0, 0, 0, time.UTC).Add(time.Duration(first%PerYear/Batch) * 24 * time.Hour)
	j.at = start
	ps := make([]record.Number, count)
	for i := range ps {
		ps[i] = Number(first + i)
	}
	if first%(Batch*20) == 0 {
		j.write(fmt.Sprintf(`{"kind":"lot","key":"tin-%d","material":"sealer","producer_lot":"L %d","quantity":"5 L"}`, first, first))
	}
	tin := first - first%(Batch*20)
	j.write(fmt.Sprintf(`{"kind":"cut","batch":"b%d","size":"%d x %d x 3 mm","board":"ply"}`, first/Batch+1, 200+10*j.rand.IntN(30), 200+10*j.rand.IntN(30)), ps...)
	j.write(fmt.Sprintf(`{"kind":"climate","temperature":"%d °C","humidity":"%d %%"}`, 16+j.rand.IntN(8), 40+j.rand.IntN(25)))
	sealed := j.write(fmt.Sprintf(`{"kind":"coat","purpose":"sealer","faces":["front","back","edges"],"wet_total":"%d g","mix":[{"parts":1,"material":"sealer","lot":"tin-%d"}]}`, 150+j.rand.IntN(60), tin), ps...)
	laid := j.write(fmt.Sprintf(`{"kind":"cloth","faces":["front"],"cloth":"linen","threads":"along-grain","wet_through":"yes","mix":[{"parts":1,"material":"sealer","lot":"tin-%d"}]}`, tin), ps...)
	j.write(`{"kind":"trimmed","tool":"scalpel","edges_eased":"yes"}`, ps...)
	j.at = j.at.Add(40 * time.Hour)
	j.write(`{"kind":"sanded","faces":["front","edges"],"grit":180,"scale":"P"}`, ps...)
	for range 2 {
		j.write(`{"kind":"coat","purpose":"ground","faces":["front"],"wet_each":"25 g","mix":[{"parts":1,"material":"gesso"}]}`, ps...)
	}
	j.write(`{"kind":"coat","purpose":"ground","faces":["back"],"wet_each":"40 g","mix":[{"parts":1,"material":"gesso"}]}`, ps...)
	j.write(fmt.Sprintf(`{"kind":"inspection","bow":"%.1f mm","span":"300 mm","hollow_to":"front"}`, float64(j.rand.IntN(12))/10), ps...)
	j.at = j.at.Add(20 * 24 * time.Hour)
	for i, p := range ps {
		switch i % 2 {
		case 0:
			j.write(`{"kind":"paint","faces":["front"],"medium":"oil","pigments":[{"name":"titanium white","colour_index":"PW 6"}]}`, p)
		case 1:
			j.write(fmt.Sprintf(`{"kind":"described","title":%q,"subject":"still life","signed":"lower right"}`, j.title()), p)
		}
	}
	rare := rareKinds(sealed, laid, first)
	for range 3 {
		j.write(rare[j.rand.IntN(len(rare))], ps[j.rand.IntN(count)])
	}
	if first%(Batch*10) == 0 { // each kind in its turn, whatever chance says
		j.write(rare[first/(Batch*10)%len(rare)], ps[0])
	}
}

// title is two words.
func (j *journal) title() string {
	a, b := strings.Fields("quince harbour lemon dune winter stair ladder salt window orchard"), strings.Fields("evening study morning rain light shadow table road wall summer")
	return a[j.rand.IntN(len(a))] + " " + b[j.rand.IntN(len(b))]
}

func rareKinds(sealed, laid int64, first int) []string {
	return []string{
		`{"kind":"varnish","faces":["front"],"removable":"yes","mix":[{"parts":1,"material":"varnish"}]}`,
		`{"kind":"warm-air","faces":["front"],"for":"15 min"}`,
		`{"kind":"braced","bracing":"battens","fixing":"sliding","run":"across-grain"}`,
		`{"kind":"left-bare","faces":["edges"],"because":"to see the ply"}`,
		`{"kind":"intended","cloth":"no"}`,
		fmt.Sprintf(`{"kind":"removed","layers":[%d],"what":"cloth","faces":["front"],"extent":"in-part","where":"a corner","because":"it lifted"}`, laid),
		`{"kind":"resized","how":"cut-down","size":"180 x 180 x 3 mm","because":"a dent"}`,
		`{"kind":"used-again","over_earlier_paint":"yes","earlier_work":"a study"}`,
		`{"kind":"feature","what":"knot","face":"back","from_left":"40 mm","from_top":"120 mm"}`,
		`{"kind":"photograph","role":"front","sha256":"1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b1b","media_type":"image/jpeg","width_px":4000,"height_px":3000}`,
		`{"kind":"condition","by":"a conservator","text":"stable"}`,
		`{"kind":"treatment","by":"a conservator","text":"surface cleaned","with":"dry sponge","faces":["front"]}`,
		`{"kind":"handed-over","how":"sale","note":"by hand"}`,
		`{"kind":"published","shown":"yes","photograph":"no"}`,
		`{"kind":"discarded","because":"the corner split"}`,
		fmt.Sprintf(`{"kind":"note","text":"batch %d smelt sour; ask the maker"}`, first/Batch+1),
		fmt.Sprintf(`{"kind":"amended","entry":%d,"because":"misread","change":{"note":"a thin coat"}}`, sealed),
		fmt.Sprintf(`{"kind":"withdrawn","entry":%d,"because":"it was another batch"}`, sealed-1+4),
	}
}
