package questions

import (
	"context"
	"errors"
	"slices"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/ask"
	"backleaf/record/deed"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/verify"
	"backleaf/record/tell"
)

// Reply is what the record says to a question, and how the question was read.
type Reply struct {
	Panel   record.Number `json:"panel"`
	AsOf    record.When   `json:"as_of,omitzero"` // of a file: when it was issued
	First   string        `json:"first,omitzero"` // the panel was discarded, or stolen
	Answers []Answer      `json:"answers"`
	Taken   []Taken       `json:"taken,omitzero"`
	Passed  []string      `json:"passed_over,omitzero"`
}

// Taken is a misspelt word and what it was read as.
type Taken struct {
	Typed string `json:"typed"`
	Meant string `json:"meant"`
}

// Answer is what the record says on one topic.
type Answer struct {
	Topic    record.Code `json:"topic"`
	Asked    string      `json:"understood_as"`
	Lines    []string    `json:"lines"`
	Entries  []int64     `json:"entry_numbers"`
	Recorded bool        `json:"recorded"`
}

// Ask answers a short question about a panel of a book in the words of a
// catalogue.
func Ask(ctx context.Context, c *tell.Catalogue, s *studio.Session, panel, question string) (Reply, error) {
	if err := studio.Known(s.Book); err != nil {
		return Reply{}, err
	}
	roll, err := s.Book.Roll(ctx, append(strings.Fields(question), panel)...)
	if err != nil {
		return Reply{}, err
	}
	n, err := roll.Find(panel)
	if err != nil {
		return Reply{}, panelFirst(roll, err, panel, question)
	}
	w, err := s.Book.Story(ctx, n)
	if err != nil {
		return Reply{}, err
	}
	if err := studio.Readable(w.Panel(n)); err != nil {
		return Reply{}, err
	}
	w, err = s.Book.Around(ctx, append([]record.Number{n}, roll.Batches[w.Panel(n).Batch]...)...)
	if err != nil {
		return Reply{}, err
	}
	return answer(c, w, w.Panel(n), s.Clock(), question)
}

// panelFirst refuses what is no panel where a question was asked: a word of the
// question itself may stand there.
func panelFirst(roll record.Roll, err error, first, question string) error {
	u, ok := errors.AsType[*record.Unnamed](err)
	if !ok || u.Is != "name" {
		return studio.NoPanel(err)
	}
	words, panel := append([]string{first}, strings.Fields(question)...), record.Number("")
	for i, w := range words {
		if n, err := roll.Find(w); err == nil && panel == "" {
			panel, words = n, slices.Delete(slices.Clone(words), i, i+1)
		}
	}
	return refuse.Because("panel-comes-first", err, record.With("panel", panel), record.With("question", strings.Join(words, " ")))
}

// AskFile answers from a certificate or a record alone, without any book: what
// was recorded when it was issued. A file that does not hold is not asked.
func AskFile(c *tell.Catalogue, file string, now time.Time, question string) (Reply, error) {
	found, err := verify.Open(file)
	if err != nil {
		return Reply{}, err
	}
	if found, err = verify.Together(found); err != nil {
		return Reply{}, err
	}
	for _, e := range found {
		report := deed.Verify(e.Files)
		switch {
		case e.Kind == verify.Foreign, e.Kind == verify.Symbol, e.Kind == verify.Bare:
			continue
		case e.Unread != nil || !report.Holds():
			return Reply{}, refuse.Breaks("paper-does-not-hold", "%s was changed or damaged after it was made: no answer is given from it", file)
		case report.Record == nil:
			continue
		}
		if err := studio.Readable(report.Record.Panel); err != nil {
			return Reply{}, err
		}
		r, err := answer(c, report.Record.Workshop, report.Record.Panel, now, question)
		r.AsOf = report.Record.Issued
		return r, err
	}
	return Reply{}, refuse.Cannot("no-evidence", "%s holds no record of a panel", file).With(record.With("file", deed.RecordName))
}

func answer(c *tell.Catalogue, w *record.Workshop, p *record.Panel, now time.Time, question string) (Reply, error) {
	said, err := ask.Ask(c, w, p, now, question)
	if not, ok := errors.AsType[*ask.NotUnderstood](err); ok {
		return Reply{}, refuse.Unclearly("not-understood", "%w", err).With(record.With("panel", p.Number),
			tell.Told("first", c.Question(not.Nearest[0])), tell.Told("second", c.Question(not.Nearest[1])))
	}
	r := Reply{Panel: p.Number, First: said.First, Passed: said.Passed, Answers: []Answer{}}
	for _, t := range said.Taken {
		r.Taken = append(r.Taken, Taken{t[0], t[1]})
	}
	for _, x := range said.Answers {
		r.Answers = append(r.Answers, Answer{x.Topic, c.Asked(x.Topic), x.Lines, append([]int64{}, x.Entries...), x.Recorded})
	}
	return r, err
}
