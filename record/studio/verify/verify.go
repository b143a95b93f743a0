package verify

import (
	"bytes"
	"context"
	"os"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/studio/refuse"
)

// SinceThen is said of what happened after a paper was made.
const SinceThen deed.Verdict = "since then"

// Witness is the studio's book, asked about a paper.
type Witness interface {
	// Paper says what the book knows of a certificate, a record or a head.
	Paper(context.Context, deed.Files, deed.Report) ([]deed.Result, error)
	// NAAN is the ARK prefix of the studio's numbers, if it has one.
	NAAN() string
	// Symbol says what the book knows of the panel that a symbol names.
	Symbol(n record.Number, text string) []deed.Result
}

// Books reads the books that are among what is checked.
type Books interface {
	// Book says what holds of a book.
	Book(ctx context.Context, path string) []deed.Result
	// Journal reads the journal of a deposit against the book and the signed
	// head in it.
	Journal(ctx context.Context, dir string, root *os.Root) (entries int, signed bool, err error)
}

// Checker checks evidence. Without a witness it says what it cannot know;
// without books it leaves them unread and says so.
type Checker struct {
	Witness Witness
	Books   Books
}

// Paper is what was found of one thing.
type Paper struct {
	Name    string        `json:"name"`
	Results []deed.Result `json:"results"`
}

// Check checks evidence, and counts what does not hold.
func (c Checker) Check(ctx context.Context, all []Evidence) (papers []Paper, failed int, err error) {
	papers = []Paper{}
	for _, e := range all {
		results, err := c.examine(ctx, e)
		if err != nil {
			return nil, 0, err
		}
		p := Paper{Name: e.Name}
		for _, r := range results {
			p.Results = append(p.Results, r)
			if r.Verdict == deed.Fails {
				failed++
			}
		}
		papers = append(papers, p)
	}
	return papers, failed, nil
}

// examine checks one thing.
func (c Checker) examine(ctx context.Context, e Evidence) ([]deed.Result, error) {
	if e.Broken != nil {
		return []deed.Result{{Verdict: deed.Fails, Text: e.Broken.Error()}}, nil
	}
	switch e.Kind {
	case Symbol:
		return c.symbol(e.Symbol), nil
	case Deposit:
		return c.deposit(ctx, e.Name)
	case Book:
		return c.book(ctx, e.Name), nil
	}
	rep := deed.Verify(e.Files)
	results := rep.Results
	if e.Kind != File && stripped(e.Files, rep) {
		results = append(results, deed.Result{Verdict: deed.Fails, Text: partsMissing})
	}
	if c.Witness == nil {
		if rep.Record != nil || rep.Statement != nil {
			results = append(results, deed.Result{Verdict: deed.Unknown, Text: "whether a certificate was replaced or withdrawn: the studio's book is not here"})
		}
		return results, nil
	}
	more, err := c.Witness.Paper(ctx, e.Files, rep)
	return append(results, more...), err
}

func (c Checker) book(ctx context.Context, path string) []deed.Result {
	if c.Books == nil {
		return []deed.Result{{Verdict: deed.Unknown, Text: "whether the book holds: it was not read"}}
	}
	return c.Books.Book(ctx, path)
}

const partsMissing = "the record names the studio's key, but its signature or what belongs to it is missing"

// stripped reports that a whole record lacks what a studio with a key puts to
// it.
func stripped(f deed.Files, rep deed.Report) bool {
	if rep.Record == nil || f.Signature != nil && f.Key != nil && f.Head != nil && f.Proof != nil {
		return false
	}
	ring, err := deed.Keys(rep.Record.Workshop.Keys)
	_, ok := ring.Current()
	return err == nil && ok
}

// Together lays single files to the one record that they can belong to.
func Together(all []Evidence) ([]Evidence, error) {
	var out []Evidence
	into := -1
	for _, e := range all {
		if e.Kind == Certificate || e.Kind == Folder {
			if into >= 0 { // more than one: single files stay by themselves
				into = -2
			}
			if into == -1 {
				into = len(out)
			}
		}
		if e.Kind != File {
			out = append(out, e)
		}
	}
	if into < 0 {
		into = -1
	}
	for _, e := range all {
		if e.Kind != File {
			continue
		}
		if into < 0 {
			into = len(out)
			out = append(out, e)
			continue
		}
		to := &out[into]
		if to.Kind == File && to.Name != e.Name {
			to.Name += ", " + e.Name
		}
		for _, n := range Names {
			place, data := to.Files.Named(n), *e.Files.Named(n)
			if data != nil && *place != nil && !bytes.Equal(*place, data) {
				return nil, refuse.Unclearly("two-of-a-sort", "there are two different files of the sort of %s", n)
			}
			if data != nil {
				*place = data
			}
		}
	}
	return out, nil
}
