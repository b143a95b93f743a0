package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/tell"
)

// register is the studio's book, asked about a paper. A nil register knows
// nothing.
type register struct {
	book *book.Book
	shop *record.Workshop
	ring deed.Keyring
	size int64
}

// sinceThen is said of what happened after a paper was made.
const sinceThen deed.Verdict = "since then"

// register opens the studio's book if it is here.
func (a *app) register(ctx context.Context) (*register, error) {
	b, err := book.OpenReadOnly(ctx, a.path())
	if errors.Is(err, book.ErrNoBook) && a.bookPath == "" {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	r := &register{book: b}
	if r.shop, err = b.Workshop(ctx); err == nil {
		r.ring, err = deed.Keys(r.shop.Keys)
	}
	if err == nil {
		r.size, _, err = b.Tree(ctx)
	}
	if err != nil {
		b.Close()
		return nil, err
	}
	return r, nil
}

func (r *register) close() {
	if r != nil {
		r.book.Close()
	}
}

// judgement gathers what the book says.
type judgement []deed.Result

func (j *judgement) say(v deed.Verdict, format string, args ...any) {
	*j = append(*j, deed.Result{Verdict: v, Text: fmt.Sprintf(format, args...)})
}

// judge says what the studio's book knows of a certificate or a head.
func (r *register) judge(ctx context.Context, f deed.Files, rep deed.Report) ([]deed.Result, error) {
	var j judgement
	number := record.Number("")
	switch {
	case rep.Record != nil:
		number = rep.Record.Number
	case rep.Statement != nil:
		number = record.Number(rep.Statement.Number)
	}
	if r == nil {
		if number != "" {
			j.say(deed.Unknown, "whether a certificate was replaced or withdrawn: the studio's book is not here")
		}
		return j, nil
	}
	if number == "" {
		return r.judgeHead(ctx, f)
	}
	origin := ""
	if rep.Statement != nil {
		origin = rep.Statement.Origin
	}
	if rep.Record != nil {
		origin, _ = seal.Origin(rep.Record.Workshop.Studio.Mark)
	}
	if mine, _ := seal.Origin(r.shop.Studio.Mark); origin != mine {
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
			j.say(sinceThen, "the key has been retired, and named its successor")
		case deed.Lost:
			j.say(sinceThen, "the key has been declared lost")
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
		return j, r.judgeRecord(ctx, &j, *rep.Record, digest)
	}
	return j, nil
}

// sayDay prints the day of something for a reader.
func sayDay(w record.When) string {
	if t, ok := w.Exact(); ok {
		return t.Format("2 January 2006")
	}
	return w.Date().Words()
}

// certificate says what became of a certificate with this record.
func (j *judgement) certificate(p *record.Panel, digest string, lost bool) {
	all := record.Each[record.Issued](p)
	for _, c := range all {
		if c.Body.Record != digest {
			continue
		}
		j.say(deed.Holds, "the studio's book knows it: issued on %s (E%d)", sayDay(c.At), c.Seq)
		for _, x := range all {
			if x.Body.Replaces == c.Seq {
				j.say(deed.Fails, "as a certificate in force: it was replaced on %s (E%d)%s", sayDay(x.At), x.Seq, tell.After(": ", x.Body.Reason))
			}
		}
		for _, x := range record.Each[record.Revoked](p) {
			if x.Body.Certificate == c.Seq {
				j.say(deed.Fails, "as a certificate in force: it was withdrawn on %s (E%d): %s", sayDay(x.At), x.Seq, x.Body.Because)
			}
		}
		return
	}
	if lost {
		j.say(deed.Fails, "the studio's book knows of no certificate with this record, and its key was declared lost")
		return
	}
	j.say(deed.Unknown, "whether the studio issued it: its book here knows of no certificate with this record")
}

// judgeRecord compares a record with the book.
func (r *register) judgeRecord(ctx context.Context, j *judgement, rec deed.Record, digest string) error {
	if ok, err := r.begins(ctx, rec.Size, rec.Root); err != nil {
		return err
	} else if !ok {
		j.say(deed.Fails, "the journal in the book here does not begin with the one that the record speaks of")
	} else {
		j.say(deed.Holds, "the journal in the book here begins with the one that the record speaks of, unchanged")
	}
	stored, err := deed.Entries(ctx, r.book, rec.Number, 0)
	if err != nil {
		return err
	}
	known, shown := map[int64][]byte{}, map[int64]bool{}
	for _, e := range rec.Entries {
		shown[e.Seq+1] = true
	}
	var since []string
	corrected := false
	for _, s := range stored {
		known[s.Seq] = s.Bytes
		k := s.Entry.Kind()
		if s.Seq <= rec.Size && !shown[s.Seq] && (slices.Contains(s.Entry.Panels, rec.Number) || shown[s.Entry.Corrects()]) {
			j.say(deed.Fails, "that the record shows all: entry %d (%s) is not in it", s.Seq, k)
		}
		if c, ok := s.Entry.Body.(record.Issued); ok && c.Record == digest || s.Seq <= rec.Size || k == "studio" || strings.HasPrefix(string(k), "key-") {
			continue // not about the panel, or said already
		}
		since = append(since, fmt.Sprintf("%s (E%d)", strings.ReplaceAll(string(k), "-", " "), s.Seq))
		corrected = corrected || s.Entry.Corrects() != 0
	}
	for _, e := range rec.Entries {
		if b, ok := known[e.Seq+1]; ok && !bytes.Equal(b, e.Bytes) {
			j.say(deed.Fails, "entry %d of the record is another one in the book here", e.Seq+1)
		}
	}
	switch {
	case since == nil:
		j.say(sinceThen, "nothing was written about this panel")
	case corrected:
		j.say(sinceThen, "the record of this panel was corrected: %s", strings.Join(since, ", "))
	default:
		j.say(sinceThen, "written about this panel: %s", strings.Join(since, ", "))
	}
	return nil
}

// begins reports whether the journal begins with one of that size and root.
func (r *register) begins(ctx context.Context, size int64, root seal.Hash) (bool, error) {
	if size > r.size {
		return false, nil
	}
	was, err := seal.Root(size, r.book.HashReader(ctx))
	return was == root, err
}

// judgeHead says whether a head is one of the book here.
func (r *register) judgeHead(ctx context.Context, f deed.Files) ([]deed.Result, error) {
	var j judgement
	if f.Head == nil {
		return nil, nil
	}
	h, err := r.openHead(f.Head)
	if err != nil {
		j.say(deed.Fails, "the head against the book here: %v", err)
		return j, nil
	}
	ok, err := r.begins(ctx, h.Size, h.Root)
	switch {
	case err != nil:
		return nil, err
	case ok:
		j.say(deed.Holds, "the journal in the book here begins with the %d entries of this head, unchanged", h.Size)
	default:
		j.say(deed.Fails, "the journal in the book here does not begin with the %d entries of this head", h.Size)
	}
	return j, nil
}

// openHead opens a head that any key of the studio signed.
func (r *register) openHead(msg []byte) (seal.Head, error) {
	for _, p := range r.ring.Keys {
		h, err := seal.OpenHead(msg, p)
		if errors.Is(err, seal.ErrOtherKey) {
			continue
		}
		if mine, _ := seal.Origin(r.shop.Studio.Mark); err == nil && h.Origin != mine {
			err = fmt.Errorf("it is of journal %s", h.Origin)
		}
		return h, err
	}
	return seal.Head{}, errors.New("no key of the studio signed it")
}

var arkPrefix = regexp.MustCompile(`(?i)ark:/?([0-9bcdfghjkmnpqrstvwxz]{5})/`)

// examineSymbol checks what the QR symbol of a label or certificate says: a
// number, or a link that ends with one.
func (a *app) examineSymbol(text string, r *register) []deed.Result {
	var j judgement
	typed := text[strings.LastIndexByte(text, '/')+1:]
	naan := ""
	if m := arkPrefix.FindStringSubmatch(text); m != nil {
		naan = strings.ToLower(m[1])
	}
	if r != nil {
		naan = r.shop.Studio.NAAN
	}
	n, err := record.ParseNumber(typed, naan)
	if err != nil {
		j.say(deed.Fails, "what it says: %v", err)
		return j
	}
	j.say(deed.Holds, "%s is a panel number, not mistyped", n)
	if r == nil {
		j.say(deed.Unknown, "what panel that is: the studio's book is not here")
	} else if p := r.shop.Panel(n); p == nil {
		j.say(deed.Fails, "the book here has no panel %s", n)
	} else {
		j.say(deed.Holds, "the book here knows it: %s%s, %s", p.Size(), tell.After(", ", tell.Quoted(p.Description().Title)), p.Stage())
		if d, ok := p.Discarded(); ok {
			j.say(deed.Fails, "as a panel in use: it was discarded (E%d): %s", d.Seq, d.Body.Because)
		}
		if c, ok := p.Certificate(); ok {
			j.say(sinceThen, "a certificate is in force, issued on %s (E%d)", sayDay(c.At), c.Seq)
		}
		if base := r.shop.Studio.LinkBase; typed != text && !strings.HasPrefix(strings.ToUpper(text), base) {
			j.say(deed.Unknown, "where the link leads: it is not the one the studio prints now")
		}
	}
	j.say(deed.Unknown, "whether this is that panel: a label can be copied; compare it with the record")
	return j
}
