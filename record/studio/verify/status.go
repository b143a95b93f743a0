package verify

import (
	"context"
	"slices"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/safefile"
	"backleaf/record/seal"
	"backleaf/record/studio/refuse"
)

// Listed is a studio's status as a [Witness]: what a stranger has who lacks the
// book.
type Listed struct{ seal.Status }

// OpenStatus reads a status. Whose key signed it shows when a paper is held
// against it.
func OpenStatus(path string) (Listed, error) {
	data, err := safefile.Read(path, seal.MaxStatusBytes)
	var l Listed
	if err == nil {
		l.Status, err = seal.OpenStatus(data)
	}
	return l, refuse.Because("no-status", err, record.With("file", path))
}

// listed are the codes by which a status says how a paper stands.
var listed = []struct {
	seal.Standing
	verdict deed.Verdict
	code    string
}{
	{seal.Withdrawn, deed.Fails, "listed-withdrawn"},
	{seal.Replaced, deed.Fails, "listed-replaced"},
	{seal.Stolen, deed.Fails, "listed-stolen"},
	{seal.Missing, deed.Fails, "listed-lost"},
}

// Paper says how the status names a record, and what it says of its key.
func (l Listed) Paper(_ context.Context, e Evidence, rep deed.Report) (out []deed.Result, err error) {
	day, err := record.ParseWhen(l.Date)
	if err != nil {
		return nil, err
	}
	say := func(v deed.Verdict, code string) {
		out = append(out, deed.Found(v, code, record.With("date", day), record.With("when", record.When{}), record.With("because", "")))
	}
	var digest seal.Digest
	switch {
	case e.Files.Record != nil:
		digest = seal.DigestOf(e.Files.Record)
	case rep.Statement != nil:
		digest = rep.Statement.Record
	default:
		return nil, nil
	}
	if rep.Key != nil && *rep.Key != l.Key {
		switch says := l.Says(rep.Key.Fingerprint()); {
		case slices.Contains(says, seal.KeyLost):
			say(deed.Since, "key-lost-since")
		case slices.Contains(says, seal.KeyRetired):
			say(deed.Since, "key-retired-since")
		default:
			say(deed.Unknown, "status-of-other-key")
			return out, nil
		}
	}
	says := l.Says(digest)
	good := true
	for _, x := range listed {
		if slices.Contains(says, x.Standing) {
			good = false
			say(x.verdict, x.code)
		}
	}
	switch {
	case !good:
	case slices.Contains(says, seal.Issued):
		say(deed.Holds, "listed-issued")
	case slices.Contains(says, seal.Shown):
		say(deed.Holds, "listed-page")
	default:
		say(deed.Unknown, "listed-not")
	}
	say(deed.Unknown, "since-status")
	return out, nil
}

// Symbol has nothing to say: a status names no panels.
func (Listed) Symbol(record.Number, string) []deed.Result { return nil }

// NAAN is not in a status.
func (Listed) NAAN() string { return "" }
