// Package register is the studio's book asked about papers: what became of a
// certificate, whether a head is one of its own, whether an older state is the
// beginning of today's.
package register

import (
	"context"
	"fmt"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/studio/verify"
	"backleaf/record/tell"
)

// Register is the studio's book, opened to be asked. It is a [verify.Witness].
type Register struct {
	book *book.Book
	shop *record.Workshop
	ring deed.Keyring
	size int64
	root seal.Hash
}

// Open opens the studio's book; the error wraps book.ErrNoBook if there is
// none.
func Open(ctx context.Context, path string) (*Register, error) {
	b, err := book.OpenReadOnly(ctx, path)
	if err != nil {
		return nil, err
	}
	r, err := Of(ctx, b)
	if err != nil {
		b.Close()
		return nil, err
	}
	return r, nil
}

// Of asks an open book.
func Of(ctx context.Context, b *book.Book) (*Register, error) {
	r := &Register{book: b}
	var err error
	if r.shop, err = b.Workshop(ctx); err == nil {
		r.ring, err = deed.Keys(r.shop.Keys)
	}
	if err == nil {
		r.size, r.root, err = b.Tree(ctx)
	}
	return r, err
}

// Close closes the book.
func (r *Register) Close() error { return r.book.Close() }

// NAAN is the ARK prefix of the studio's numbers.
func (r *Register) NAAN() string { return r.shop.Studio.NAAN }

// judgement gathers what the book says.
type judgement []deed.Result

func (j *judgement) say(v deed.Verdict, format string, args ...any) {
	*j = append(*j, deed.Result{Verdict: v, Text: fmt.Sprintf(format, args...)})
}

// Paper says what the studio's book knows of a certificate, a record or a head.
func (r *Register) Paper(ctx context.Context, f deed.Files, rep deed.Report) ([]deed.Result, error) {
	var j judgement
	number := record.Number("")
	switch {
	case rep.Record != nil:
		number = rep.Record.Number
	case rep.Statement != nil:
		number = record.Number(rep.Statement.Number)
	}
	if number == "" {
		return r.judgeHead(ctx, f)
	}
	origin := ""
	if rep.Statement != nil {
		origin = rep.Statement.Origin
	}
	if rep.Record != nil {
		origin, _ = seal.Origin(rep.Record.Workshop.Studio.Mark, rep.Record.Workshop.Studio.Journal)
	}
	if mine, _ := seal.Origin(r.shop.Studio.Mark, r.shop.Studio.Journal); origin != mine {
		if mark := "backleaf/" + r.shop.Studio.Mark; origin == mark || strings.HasPrefix(origin, mark+"/") {
			j.say(deed.Fails, "the studio's book did not issue it: it is of another journal with the same mark, %s", origin)
			return j, nil
		}
		j.say(deed.Unknown, "whether a certificate was replaced or withdrawn: the book here is of another studio, mark %s", r.shop.Studio.Mark)
		return j, nil
	}
	lost := false
	if rep.Key != nil {
		switch s := r.ring.Standing(*rep.Key); s {
		case deed.Unrecorded:
			j.say(deed.Fails, "the key is none of the studio whose book is here: this paper is not from it")
			return j, nil
		case deed.Retired:
			j.say(verify.SinceThen, "the key has been retired, and named its successor")
		case deed.Lost:
			j.say(verify.SinceThen, "the key has been declared lost")
			lost = true
		}
	}
	p := r.shop.Panel(number)
	if p == nil {
		j.say(deed.Fails, "the studio's book has no panel %s", number)
		return j, nil
	}
	digest := ""
	if f.Record != nil {
		digest = seal.DigestOf(f.Record).String()
	} else {
		digest = rep.Statement.Record.String()
	}
	j.certificate(p, digest, lost)
	if rep.Record != nil {
		err := r.judgeRecord(ctx, &j, *rep.Record, digest)
		return j, err
	}
	return j, nil
}

// Symbol says what the book knows of the panel that a symbol names.
func (r *Register) Symbol(n record.Number, text string) []deed.Result {
	var j judgement
	p := r.shop.Panel(n)
	if p == nil {
		j.say(deed.Fails, "the book here has no panel %s", n)
		return j
	}
	j.say(deed.Holds, "the book here knows it: %s%s, %s", p.Size(), tell.Say(tell.English, record.Say("with-title", record.With("title", p.Description().Title))), p.Stage())
	if d, ok := p.Discarded(); ok {
		j.say(deed.Fails, "as a panel in use: it was discarded (E%d): %s", d.Seq, d.Body.Because)
	}
	if c, ok := p.Certificate(); ok {
		j.say(verify.SinceThen, "a certificate is in force, issued on %s (E%d)", sayDay(c.At), c.Seq)
	}
	if base := r.shop.Studio.LinkBase; verify.Typed(text) != text && !strings.HasPrefix(strings.ToUpper(text), base) {
		j.say(deed.Unknown, "where the link leads: it is not the one the studio prints now")
	}
	return j
}
