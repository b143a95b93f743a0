package verify

import (
	"context"
	"fmt"
	"slices"
	"time"

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
// against it. One of a day to come is refused: it would never grow old.
func OpenStatus(path string, now time.Time) (Listed, error) {
	data, err := safefile.Read(path, seal.MaxStatusBytes)
	var l Listed
	if err == nil {
		l.Status, err = seal.OpenStatus(data)
	}
	if tomorrow := now.AddDate(0, 0, 1).Format(time.DateOnly); err == nil && l.Date > tomorrow {
		err = fmt.Errorf("it is of %s, a day to come", l.Date)
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
	{seal.Discarded, deed.Fails, "listed-discarded"},
	{seal.Earlier, deed.Fails, "listed-earlier"},
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
	case rep.Record != nil:
		digest = seal.DigestOf(e.Files.Record)
	case rep.Statement != nil:
		digest = rep.Statement.Record
	default:
		return nil, nil
	}
	// Anyone can sign a status, and say in it what they like of another's key.
	origin := ""
	if rep.Record != nil {
		origin, _ = seal.Origin(rep.Record.Workshop.Studio.Mark, rep.Record.Workshop.Studio.Journal)
	} else {
		origin = rep.Statement.Origin
	}
	switch {
	case rep.Key == nil:
		say(deed.Unknown, "status-without-key")
		return out, nil
	case !l.SpeaksFor(*rep.Key) || origin != l.Origin:
		out = append(out, deed.Found(deed.Unknown, "status-of-other-key", record.With("date", day), record.With("key", l.Key.Fingerprint().Groups())))
		return out, nil
	}
	if *rep.Key != l.Key {
		out = append(out, deed.Found(deed.Holds, "status-of-heir", record.With("date", day), record.With("key", l.Key.Fingerprint().Groups())))
	}
	if slices.Contains(l.Says(rep.Key.Fingerprint()), seal.KeyLost) {
		out = append(out, deed.Found(deed.Since, "key-lost-since"))
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
	case slices.Contains(says, seal.Shown) && e.Kind == Certificate: // anyone can take a page's record and draw a paper round it
		say(deed.Fails, "page-as-certificate")
	case slices.Contains(says, seal.Shown):
		say(deed.Unknown, "listed-page")
	case issued(rep) > l.Date:
		say(deed.Unknown, "status-before-paper")
	default:
		say(deed.Unknown, "listed-not")
	}
	say(deed.Unknown, "since-status")
	return out, nil
}

// Deposit says whether the status speaks for the key that signed a deposit.
func (l Listed) Deposit(_ context.Context, d seal.Deposit) ([]deed.Result, error) {
	if l.SpeaksFor(d.Key) && l.Origin == d.Origin {
		return nil, nil
	}
	day, err := record.ParseWhen(l.Date)
	return []deed.Result{deed.Found(deed.Unknown, "status-of-other-key", record.With("date", day), record.With("key", l.Key.Fingerprint().Groups()))}, err
}

// Symbol has nothing to say: a status names no panels.
func (Listed) Symbol(context.Context, record.Number, string) ([]deed.Result, error) {
	return nil, nil
}

// NAAN is not in a status.
func (Listed) NAAN() string { return "" }
