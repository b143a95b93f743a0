// Package register is the studio's book asked about papers: what became of a
// certificate, whether a head is one of its own, whether an older state is the
// beginning of today's.
package register

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/verify"
)

// Register is the studio's book, opened to be asked. It is a [verify.Witness].
type Register struct {
	book *book.Book
	shop *record.Workshop // without panels
	ring deed.Keyring
	size int64
	root seal.Hash

	filed  map[string][]paper       // by the digest of the PDF; nil: nobody asked
	issued map[string]record.Number // the panel, by the digest of the record
}

// Open opens the studio's book and reads it back, for a witness whose entries
// were changed vouches for nothing; the error wraps book.ErrNoBook if there is
// none.
func Open(ctx context.Context, path string, progress studio.Progress) (*Register, error) {
	b, err := book.OpenReadOnly(ctx, path)
	if err != nil {
		return nil, err
	}
	var r *Register
	if _, err = b.Verify(ctx, progress.Of("entries")); err == nil {
		r, err = Of(ctx, b)
	}
	if err != nil {
		b.Close()
		return nil, fmt.Errorf("cannot ask the book %s: %w", path, err)
	}
	return r, nil
}

// Checker asks the book at a path, if there is one or must be, and a status if one is
// named. What it opened is closed by done.
func Checker(ctx context.Context, path string, must bool, status string, now time.Time, progress studio.Progress) (c verify.Checker, done func() error, err error) {
	done = func() error { return nil }
	r, err := Open(ctx, path, progress)
	switch {
	case err == nil:
		c.Witnesses, done = []verify.Witness{r}, r.Close
	case must || !errors.Is(err, book.ErrNoBook):
		return c, done, err
	}
	if status == "" {
		return c, done, nil
	}
	l, err := verify.OpenStatus(status, now)
	if c.Witnesses = append(c.Witnesses, l); err == nil && r != nil {
		c.Remarks, err = r.Status(ctx, l.Status)
	}
	if err != nil {
		err = errors.Join(err, done())
	}
	return c, done, err
}

// Of asks an open book.
func Of(ctx context.Context, b *book.Book) (*Register, error) {
	r := &Register{book: b}
	var err error
	if r.shop, err = b.WorkshopOf(ctx); err == nil {
		r.ring, err = deed.Keys(r.shop.Keys)
	}
	if err == nil {
		r.size, r.root, err = b.Tree(ctx)
	}
	return r, err
}

// Close closes the book.
func (r *Register) Close() error { return r.book.Close() }

// panel is a panel as the book tells it; nil if it has none of this number.
func (r *Register) panel(ctx context.Context, n record.Number) (*record.Panel, error) {
	w, err := r.book.Story(ctx, n)
	if err != nil {
		return nil, err
	}
	return w.Panel(n), nil
}

// NAAN is the ARK prefix of the studio's numbers.
func (r *Register) NAAN() string { return r.shop.Studio.NAAN }

// judgement gathers what the book says.
type judgement []deed.Result

func (j *judgement) say(v deed.Verdict, code string, values ...record.Value) {
	*j = append(*j, deed.Found(v, code, values...))
}

func (j judgement) fails() bool {
	return slices.ContainsFunc(j, func(r deed.Result) bool { return r.Verdict == deed.Fails })
}

// Paper says what the studio's book knows of a certificate, a record or a head.
func (r *Register) Paper(ctx context.Context, e verify.Evidence, rep deed.Report) ([]deed.Result, error) {
	j := judgement{deed.Found(deed.Unknown, "book-asked", record.With("file", r.book.Path()), record.With("mark", r.shop.Studio.Mark), record.With("entries", r.size))}
	number := record.Number("")
	switch {
	case rep.Record != nil:
		number = rep.Record.Number
	case rep.Statement != nil:
		number = record.Number(rep.Statement.Number)
	case e.Files.Record != nil && e.Unread == nil:
		err := r.judgeUnread(ctx, &j, e, rep)
		return j, err
	case e.Kind == verify.Certificate, e.Kind == verify.Bare: // of which no record could be read
		err := r.judgeFile(ctx, &j, e)
		return j, err
	default:
		return r.judgeHead(ctx, e.Files)
	}
	origin := ""
	if rep.Statement != nil {
		origin = rep.Statement.Origin
	}
	if rep.Record != nil {
		origin, _ = seal.Origin(rep.Record.Workshop.Studio.Mark, rep.Record.Workshop.Studio.Journal)
	}
	if r.otherJournal(&j, origin) {
		return j, nil
	}
	lost := false
	if rep.Key != nil {
		switch r.ring.Standing(*rep.Key) {
		case deed.Unrecorded:
			j.say(deed.Fails, "key-not-of-book")
			return j, nil
		case deed.Retired:
			j.say(deed.Since, "key-retired-since")
			if at := r.retired(*rep.Key); rep.Record != nil && rep.Record.Size >= at || rep.Head != nil && rep.Head.Size >= at {
				j.say(deed.Fails, "signed-after-retired", record.With("entry", record.EntryRef(at)))
				return j, nil
			}
		case deed.Lost:
			j.say(deed.Since, "key-lost-since")
			lost = true
		}
	}
	digest := ""
	if e.Files.Record != nil {
		digest = seal.DigestOf(e.Files.Record).String()
	} else {
		digest = rep.Statement.Record.String()
	}
	same := true
	if rep.Record != nil {
		var err error
		if same, err = r.sameHistory(ctx, &j, *rep.Record); err != nil {
			return j, err
		}
	}
	p, err := r.panel(ctx, number)
	if p == nil {
		if same && err == nil {
			j.say(deed.Fails, "panel-not-in-book", record.With("panel", number))
		}
		return j, err
	}
	r.certificate(&j, p, e, rep, digest, same, lost)
	if rep.Record == nil {
		return j, nil
	}
	err = r.judgeRecord(ctx, &j, p, *rep.Record, digest, same)
	return j, err
}

// otherJournal says that something is of another journal than the book's.
func (r *Register) otherJournal(j *judgement, origin string) bool {
	mark := "backleaf/" + r.shop.Studio.Mark
	switch mine, _ := seal.Origin(r.shop.Studio.Mark, r.shop.Studio.Journal); {
	case origin == mine:
		return false
	case origin == mark || strings.HasPrefix(origin, mark+"/"):
		j.say(deed.Fails, "other-journal", record.With("journal", origin))
	default:
		j.say(deed.Unknown, "other-studio", record.With("mark", r.shop.Studio.Mark))
	}
	return true
}

// retired returns the entry by which a key handed over to its heir.
func (r *Register) retired(p seal.PublicKey) int64 {
	for _, e := range r.shop.Keys {
		if b, ok := e.Body.(record.KeyRetired); ok && b.Fingerprint == p.Fingerprint().String() {
			return e.Seq
		}
	}
	return 0
}

// hostFolded spells scheme and host of a link in one way: capitals count from the
// path on, and no other letters than those of ASCII have a second form here, since
// what looks like one of them leads elsewhere (RFC 3986, 6.2.2.1).
func hostFolded(link string) string {
	host := 0
	if _, after, ok := strings.Cut(link, "://"); ok {
		host = len(link) - len(after)
	}
	path := len(link)
	if at := strings.IndexAny(link[host:], "/?#"); at >= 0 {
		path = host + at
	}
	return smallASCII(link[:path]) + link[path:]
}

func smallASCII(s string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'A' && r <= 'Z' {
			return r + 'a' - 'A'
		}
		return r
	}, s)
}

// Symbol says what the book knows of the panel that a symbol names.
func (r *Register) Symbol(ctx context.Context, n record.Number, text string) ([]deed.Result, error) {
	var j judgement
	p, err := r.panel(ctx, n)
	if p == nil {
		if err == nil {
			j.say(deed.Fails, "panel-not-in-book", record.With("panel", n))
		}
		return j, err
	}
	j.say(deed.Holds, "symbol-known", record.With("panel", n), record.With("size", p.Size()), record.With("title", p.Description().Title), record.With("stage", p.Stage()))
	j.whereabouts(p)
	if c, ok := p.Certificate(); ok {
		j.say(deed.Since, "certificate-in-force", record.With("when", c.At), record.With("entry", record.EntryRef(c.Seq)))
	}
	// What stands before the number: nothing, the studio's base, or its ARK.
	link, _, more := strings.Cut(strings.TrimSpace(text), "\n")
	link = strings.TrimPrefix(strings.TrimSpace(link), "\ufeff")
	before := strings.TrimSuffix(link, verify.Typed(link))
	ark, naan := smallASCII(before), smallASCII(r.shop.Studio.NAAN)
	if isARK := naan != "" && (ark == "ark:/"+naan+"/" || ark == "ark:"+naan+"/"); before != "" && !isARK && hostFolded(before) != hostFolded(r.shop.Studio.LinkBase) {
		j.say(deed.Unknown, "other-link")
	}
	if more {
		j.digestIn(p, text)
		j.say(deed.Unknown, "symbol-more-lines")
	}
	return j, nil
}
