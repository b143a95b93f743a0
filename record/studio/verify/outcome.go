package verify

import (
	"context"
	"slices"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/studio/refuse"
)

// Outcome is what papers come to together.
type Outcome int

const (
	AllHolds    Outcome = iota
	Broken              // something does not hold
	FilesBroken         // of that, a file kept beside a book
	Unverified          // nothing fails, and of some paper nothing could be verified
)

// OutcomeOf is what papers come to. The number on a label stands beside what is
// signed.
func OutcomeOf(papers []Paper) (o Outcome) {
	verified := slices.ContainsFunc(papers, func(p Paper) bool { return p.Verified })
	for _, p := range papers {
		said := func(code string) bool {
			return slices.ContainsFunc(p.Results, func(r deed.Result) bool { return r.Said.Code == code })
		}
		switch {
		case p.Failed > 0 && said("kept-file-bad"):
			return FilesBroken
		case p.Failed > 0:
			o = Broken
		case o == AllHolds && !p.Verified && !(verified && said("symbol-well-formed")):
			o = Unverified
		}
	}
	return o
}

// Sound refuses a deposit or book of which something does not hold, but for kept
// files that are missing: those are told otherwise. It returns what there is to
// say: what does not hold, and that a signature is missing.
func (c Checker) Sound(ctx context.Context, e Evidence) (told []deed.Result, err error) {
	papers, err := c.Check(ctx, []Evidence{e})
	if err != nil {
		return nil, err
	}
	for _, x := range papers[0].Results {
		switch {
		case x.Said.Code == "deposit-key-unused":
			told = append(told, x)
		case x.Verdict == deed.Fails && !ofKeptFile(x.Said):
			told, err = append(told, x), refuse.Breaks("not-whole", "%s does not hold", e.Name)
		}
	}
	return told, err
}

// ofKeptFile reports a result about a file beside a book, or its key.
func ofKeptFile(s record.Said) bool {
	codes := []string{s.Code}
	for _, v := range s.Values {
		if v.Name == "about" {
			codes = append(codes, v.Texts...)
		}
	}
	return slices.ContainsFunc(codes, func(code string) bool {
		return slices.ContainsFunc(standings, func(s standing) bool { return s.code == "files-bad" && slices.Contains(s.from, code) })
	})
}
