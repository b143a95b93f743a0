package questions

import (
	"bytes"
	"compress/flate"
	"crypto/sha256"
	"fmt"
	"io"
	"iter"
	"maps"
	"slices"

	"github.com/go-json-experiment/json"

	"backleaf/record"
	"backleaf/record/check"
)

// A Group is panels of which the same is said, and what is shown of it.
type Group struct {
	Panels []record.Number `json:"-"`
	Title  string          // of the first
	Count  map[check.Outcome]int
	Shown
	Place int // among the groups in the order of their first panels
}

// Groups are panels of which the same is said, of every rule or, briefly, only of
// open findings.
type Groups struct {
	Brief  bool
	places map[[sha256.Size]byte]int // by what is said
	panels [][]record.Number         // by place
	weighs map[int]*pile
}

// pile is groups of one weight: nothing can be shown before all are known, and of
// many panels much is said, so but for the last they are held compressed.
type pile struct {
	packed [][]byte
	last   []Group
}

// packing is how many groups are compressed together.
const packing = 64

// Add puts a panel into its group. Only what is shown is kept.
func (g *Groups) Add(f Findings) {
	said := sha256.New()
	fmt.Fprint(said, f.Count())
	for _, x := range f.Findings {
		if !g.Brief || x.Open() {
			for _, text := range []string{x.Rule, string(x.Outcome), string(x.Severity), x.Text, fmt.Sprint(x.Entries), x.Remedy} {
				io.WriteString(said, text+"\x00")
			}
		}
	}
	if g.places == nil {
		g.places, g.weighs = map[[sha256.Size]byte]int{}, map[int]*pile{}
	}
	key := [sha256.Size]byte(said.Sum(nil))
	place, there := g.places[key]
	if !there {
		place = len(g.panels)
		g.places[key], g.panels = place, append(g.panels, nil)
		if g.weighs[f.weight()] == nil {
			g.weighs[f.weight()] = &pile{}
		}
		g.weighs[f.weight()].add(Group{Title: f.Title, Count: f.Count(), Shown: f.shown(!g.Brief), Place: place})
	}
	g.panels[place] = append(g.panels[place], f.Panel)
}

func (p *pile) add(g Group) {
	if p.last = append(p.last, g); len(p.last) < packing {
		return
	}
	var packed bytes.Buffer
	w, err := flate.NewWriter(&packed, flate.BestSpeed)
	if err == nil {
		err = json.MarshalWrite(w, p.last)
	}
	if err == nil {
		err = w.Close()
	}
	if err != nil {
		panic("questions: what was found is always JSON: " + err.Error())
	}
	p.packed, p.last = append(p.packed, packed.Bytes()), nil
}

// Worst are the groups, the gravest first.
func (g *Groups) Worst() iter.Seq[Group] {
	return func(yield func(Group) bool) {
		for _, weight := range slices.Backward(slices.Sorted(maps.Keys(g.weighs))) {
			p := g.weighs[weight]
			for i := range len(p.packed) + 1 {
				some := p.last
				if i < len(p.packed) {
					some = unpacked(p.packed[i])
				}
				for _, x := range some {
					x.Panels = g.panels[x.Place]
					if !yield(x) {
						return
					}
				}
			}
		}
	}
}

func unpacked(packed []byte) (some []Group) {
	if err := json.UnmarshalRead(flate.NewReader(bytes.NewReader(packed)), &some); err != nil {
		panic("questions: what was packed is whole: " + err.Error())
	}
	return some
}

// A panel of which nothing falls short by more than information takes at most
// so many lines: of those that much may be notes, and so many questions are put
// at once.
const (
	soundLines    = 12
	noteLines     = 4
	manyQuestions = 7
)

// Shown is what is told of a group: of each list the first, and how many more
// there are.
type Shown struct {
	Findings, Notes          []Printed
	Questions                []string
	MoreNotes, MoreQuestions int
	Noted                    int // how many notes there are, however they are shown
}

// Printed is what is printed of a finding.
type Printed struct {
	Rule                         string
	Outcome                      check.Outcome
	Severity                     check.Severity
	Text, Short, Remedy, Sources string
}

func (f Findings) printed(x Finding) Printed {
	return Printed{x.Rule, x.Outcome, x.Severity, x.Text, x.Short, x.Remedy, f.words.Clauses(x.Sources)}
}

// shown is every finding in full, or in few lines what falls short and what is
// not recorded.
func (f Findings) shown(every bool) (s Shown) {
	for _, x := range f.Findings {
		if every || x.FallsShort() {
			if !every {
				x.Text = x.Short
			}
			s.Findings = append(s.Findings, f.printed(x))
		}
	}
	notes := f.notes()
	s.Noted = len(notes)
	if every {
		return s
	}
	s.Notes, s.MoreNotes = fit(notes, noteLines)
	left := soundLines - 3 - len(s.Notes) // without the panel, the head of the questions and the count
	if s.MoreNotes > 0 {
		left--
	}
	s.Questions, s.MoreQuestions = fit(f.Questions(), min(left, manyQuestions))
	return s
}

// fit is what of a list is shown in some lines, the last of which says how many
// more there are where not all are.
func fit[T any](all []T, lines int) (shown []T, more int) {
	if len(all) <= lines {
		return all, 0
	}
	return all[:lines-1], len(all) - lines + 1
}
