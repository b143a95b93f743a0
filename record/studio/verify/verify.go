// Package verify checks what somebody brings: a certificate, a record, single
// files of one, a deposit, the text of a symbol. It needs no book; what the
// studio's book or its signed list of papers knows besides is asked of a
// [Witness]. All that is said is codes with values.
package verify

import (
	"context"
	"os"
	"slices"
	"time"

	"backleaf/record"
	"backleaf/record/bag"
	"backleaf/record/deed"
	"backleaf/record/seal"
)

// Witness knows what became of papers: the studio's book, or a list that the
// studio signed. It says so in the codes of the first line, see [Paper].
type Witness interface {
	// Paper says what is known of a certificate, a record or a head.
	Paper(context.Context, Evidence, deed.Report) ([]deed.Result, error)
	// Deposit says whether it knows the word by which a deposit is signed.
	Deposit(context.Context, seal.Deposit) ([]deed.Result, error)
	// Symbol says what is known of the panel that a symbol names, and whether
	// the text is one of this studio's at all.
	Symbol(ctx context.Context, n record.Number, text string) ([]deed.Result, error)
	// NAAN is the ARK prefix of the studio's numbers, if it has one.
	NAAN() string
}

// Books reads the books among what is checked.
type Books interface {
	// Book says what holds of a book.
	Book(ctx context.Context, path string) []deed.Result
	// Deposit reads the journal of a deposit against the book, the keys and the
	// heads in it, and makes its pages anew. signed is the word for the whole, if
	// it holds. The archive is nil if there is no journal that holds.
	Deposit(ctx context.Context, dir string, root *os.Root, report bag.Report, signed *seal.Deposit) (Archive, []deed.Result)
}

// Archive is the journal of a deposit, against which its records are read.
type Archive interface {
	// Record says what of a record or certificate is not as in the journal.
	Record(Kind, deed.Record, *seal.PublicKey) []deed.Result
	// End says what is missing after all records were read.
	End() []deed.Result
}

// Checker checks evidence. Without a witness it says what it cannot know;
// without books it leaves them unread and says so.
type Checker struct {
	Witnesses []Witness
	Books     Books
	Remarks   []deed.Result // on the witnesses themselves
	Now       time.Time     // what is dated later is remarked on; zero: nothing is
}

// Paper is what was found of one thing.
type Paper struct {
	Name     string          `json:"name"`
	Kind     Kind            `json:"kind"`
	Sum      []record.Said   `json:"sum"`           // the first line: all that applies, the worst first
	Verified bool            `json:"verified"`      // a signature, a book or a witness was asked and holds
	Says     []record.Said   `json:"says,omitzero"` // what the record says
	Results  []deed.Result   `json:"results"`       // all that was looked at
	Failed   int             `json:"does_not_hold"` // how many of these do not hold
	of       []record.Number // the panels that it is of, as far as is known
}

// Check checks evidence.
func (c Checker) Check(ctx context.Context, all []Evidence) ([]Paper, error) {
	papers := []Paper{}
	var of []record.Number // what the papers are of
	for _, e := range all {
		p := Paper{Name: e.Name, Kind: e.Kind}
		if err := c.examine(ctx, e, &p); err != nil {
			return nil, err
		}
		for _, r := range p.Results {
			if r.Verdict == deed.Fails {
				p.Failed++
			}
		}
		p.Sum, p.Verified = sum(p.Results)
		papers = append(papers, p)
		if e.Kind != Symbol {
			of = append(of, p.of...)
		}
	}
	for i := range papers { // a label, and papers of another panel beside it
		if p := &papers[i]; p.Kind == Symbol && len(p.of) == 1 && of != nil && !slices.Contains(of, p.of[0]) {
			others := slices.Compact(slices.Sorted(slices.Values(of)))
			p.Results = append(p.Results, deed.Found(deed.Fails, "symbol-of-other", record.With("panel", p.of[0]), record.With("others", others[:min(len(others), MaxProblems)])))
			p.Failed++
			p.Sum, p.Verified = sum(p.Results)
		}
	}
	return papers, nil
}

// examine checks one thing.
func (c Checker) examine(ctx context.Context, e Evidence, p *Paper) (err error) {
	p.Results = append(p.Results, e.Remarks...)
	switch {
	case e.Kind == Foreign:
		p.Results = append(p.Results, *e.Unread)
		return nil
	case e.Kind == Symbol && e.Unread == nil:
		var results []deed.Result
		p.of, results, err = c.symbol(ctx, e.Symbol)
		p.Results = append(p.Results, results...)
		return err
	case e.Kind == Deposit:
		p.Results, p.of, err = c.deposit(ctx, e.Name)
		return err
	case e.Kind == Book:
		p.Results = c.book(ctx, e.Name)
		return nil
	}
	rep := deed.Report{}
	if e.Unread != nil {
		p.Results = append(p.Results, *e.Unread)
	} else {
		rep = deed.Verify(e.Files)
		p.Says = says(rep)
		if rep.Record != nil {
			p.of = []record.Number{rep.Record.Number}
		} else if rep.Statement != nil {
			p.of = []record.Number{record.Number(rep.Statement.Number)}
		}
		p.Results = append(p.Results, rep.Results...)
		p.Results = append(p.Results, c.remarks(rep)...)
		if e.Kind != File && stripped(e.Files, rep) {
			p.Results = append(p.Results, partsMissing)
		}
	}
	if e.Kind == Certificate && e.Files.Record != nil {
		p.Results = append(p.Results, deed.Found(deed.Unknown, "page-not-signed"))
	}
	for _, w := range c.Witnesses {
		more, err := w.Paper(ctx, e, rep)
		if err != nil {
			return err
		}
		p.Results = append(p.Results, more...)
	}
	all := slices.Clone(p.Results)
	p.Results = slices.DeleteFunc(p.Results, func(r deed.Result) bool {
		return slices.ContainsFunc(all, func(by deed.Result) bool { return by.Said.Code == answeredBy[r.Said.Code] && by.Verdict == deed.Holds })
	})
	if rep.Record != nil || rep.Statement != nil {
		p.Results = append(p.Results, c.Remarks...)
	}
	// A book that holds the record knows what came after.
	if rep.Record != nil && !slices.ContainsFunc(p.Results, func(r deed.Result) bool { return r.Said.Code == "history-begins" }) {
		p.Results = append(p.Results, Whereabouts(rep.Record.Panel)...)
	}
	if len(c.Witnesses) == 0 && (rep.Record != nil || rep.Statement != nil) {
		p.Results = append(p.Results, deed.Found(deed.Unknown, "no-witness"))
	}
	return nil
}

// answeredBy is what a witness says where the thing alone could not tell.
var answeredBy = map[string]string{"pdf-without-record": "label-known", "head-without-key": "book-begins-with-head"}

// issued is the day that a record or statement names as that of its issue.
func issued(rep deed.Report) string {
	if rep.Record == nil && rep.Statement != nil {
		return rep.Statement.Issued
	}
	if rep.Record != nil {
		if at, ok := rep.Record.Issued.Exact(); ok {
			return at.Format(time.DateOnly)
		}
	}
	return ""
}

// remarks are on what a record or statement says of itself.
func (c Checker) remarks(rep deed.Report) (out []deed.Result) {
	day, word := issued(rep), ""
	switch r, s := rep.Record, rep.Statement; {
	case r != nil:
		word = mixed(append(names(r.Workshop, r.Panel), r.Panel.Description().Title)...)
	case s != nil:
		word = mixed(s.Maker, s.Title)
	}
	if when, err := record.ParseWhen(day); err == nil && !c.Now.IsZero() && day > c.Now.AddDate(0, 0, 1).Format(time.DateOnly) {
		out = append(out, deed.Found(deed.Unknown, "dated-ahead", record.With("when", when)))
	}
	if word != "" {
		out = append(out, deed.Found(deed.Unknown, "letters-alike", record.With("word", word)))
	}
	return out
}

func (c Checker) book(ctx context.Context, path string) []deed.Result {
	if c.Books == nil {
		return []deed.Result{deed.Found(deed.Unknown, "book-unread")}
	}
	return c.Books.Book(ctx, path)
}

var partsMissing = deed.Found(deed.Fails, "parts-missing")

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
