package register

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/studio/verify"
)

// certificate says what became of a certificate with this record. same says
// that the book here begins with the journal that the record speaks of.
func (r *Register) certificate(j *judgement, p *record.Panel, e verify.Evidence, rep deed.Report, digest string, same, lost bool) {
	all := record.Each[record.Issued](p)
	for _, c := range all {
		if c.Body.Record != digest {
			continue
		}
		j.say(deed.Holds, "certificate-known", record.With("when", c.At), record.With("entry", record.EntryRef(c.Seq)))
		for _, x := range all {
			if x.Body.Replaces == c.Seq {
				j.say(deed.Fails, "was-replaced", record.With("when", x.At), record.With("entry", record.EntryRef(x.Seq)), record.With("because", x.Body.Reason))
			}
		}
		for _, x := range record.Each[record.Revoked](p) {
			if x.Body.Certificate == c.Seq {
				j.say(deed.Fails, "was-withdrawn", record.With("when", x.At), record.With("entry", record.EntryRef(x.Seq)), record.With("because", x.Body.Because))
			}
		}
		if again, ok := record.Latest[record.UsedAgain](p); ok && c.Seq < again.Seq {
			j.say(deed.Fails, "earlier-work", record.With("when", again.At), record.With("entry", record.EntryRef(again.Seq)))
		}
		if e.Kind == verify.Certificate && c.Body.PDF != "" {
			if c.Body.PDF == e.Digest.String() {
				j.say(deed.Holds, "very-file")
			} else {
				j.say(deed.Unknown, "other-file", record.With("panel", p.Number), record.With("digest", c.Body.PDF))
			}
		}
		j.whereabouts(p)
		return
	}
	switch {
	case lost:
		j.say(deed.Fails, "certificate-of-lost-key")
	case e.Kind == verify.Certificate && rep.Record != nil && same && r.size > rep.Record.Size:
		// A certificate's entry is the next after the head that it carries.
		j.say(deed.Fails, "certificate-not-in-journal", record.With("entry", record.EntryRef(rep.Record.Size+1)))
	default:
		j.say(deed.Unknown, "certificate-unknown", record.With("as", record.Code(e.Kind)))
	}
	j.whereabouts(p)
}

// whereabouts says what a buyer must hear of a panel.
func (j *judgement) whereabouts(p *record.Panel) { *j = append(*j, verify.Whereabouts(p)...) }

// paper is what of a kept file the journal says of one panel.
type paper struct {
	panel  record.Number
	entry  int64
	record string // the digest that is printed on a label
}

// file reads which papers left the studio, once.
func (r *Register) file(ctx context.Context) error {
	if r.filed != nil {
		return nil
	}
	filed, issued := map[string][]paper{}, map[string]record.Number{}
	kinds := []record.Kind{record.LabelPrinted{}.Kind(), record.Issued{}.Kind()}
	err := r.book.Walk(ctx, book.Narrow{Kinds: kinds}, func(p *record.Panel) error {
		for _, l := range record.Each[record.LabelPrinted](p) {
			filed[l.Body.PDF] = append(filed[l.Body.PDF], paper{p.Number, l.Seq, l.Body.Record})
		}
		for _, c := range record.Each[record.Issued](p) {
			filed[c.Body.PDF] = append(filed[c.Body.PDF], paper{p.Number, c.Seq, ""})
			issued[c.Body.Record] = cmp.Or(issued[c.Body.Record], p.Number)
		}
		return nil
	})
	if err == nil {
		r.filed, r.issued = filed, issued
	}
	return err
}

// judgeFile looks a PDF up by its digest alone, and says what became of each
// panel on it.
func (r *Register) judgeFile(ctx context.Context, j *judgement, e verify.Evidence) error {
	if err := r.file(ctx); err != nil {
		return err
	}
	papers := r.filed[e.Digest.String()]
	if papers == nil {
		j.say(deed.Unknown, "file-not-known")
		return nil
	}
	var on []record.Number
	var in []record.EntryRef
	var ps []*record.Panel
	for _, x := range papers {
		if in = append(in, record.EntryRef(x.entry)); !slices.Contains(on, x.panel) {
			p, err := r.panel(ctx, x.panel)
			if err != nil {
				return err
			}
			on, ps = append(on, x.panel), append(ps, p)
		}
	}
	j.say(deed.Holds, "label-known", record.With("panels", on), record.With("entries", in))
	if len(papers) == 1 && papers[0].record != "" { // a sheet has the digests of many
		j.digest(ps[0], papers[0].record)
	}
	for _, p := range ps {
		j.whereabouts(p)
	}
	return nil
}

// judgeUnread says what the book knows of a record that only a later program
// can read: whose key signed it, and whether it was issued.
func (r *Register) judgeUnread(ctx context.Context, j *judgement, e verify.Evidence, rep deed.Report) error {
	mark := "backleaf/" + r.shop.Studio.Mark
	switch {
	case rep.Head != nil && rep.Head.Origin != mark && !strings.HasPrefix(rep.Head.Origin, mark+"/"):
		j.say(deed.Unknown, "other-studio", record.With("mark", r.shop.Studio.Mark))
		return nil
	case rep.Key == nil:
	case r.ring.Standing(*rep.Key) == deed.Unrecorded:
		j.say(deed.Fails, "key-not-of-book")
		return nil
	case r.ring.Standing(*rep.Key) == deed.Lost: // when it was signed, nothing shows
		j.say(deed.Fails, "certificate-of-lost-key")
		return nil
	}
	digest := seal.DigestOf(e.Files.Record).String()
	err := r.file(ctx)
	if n := r.issued[digest]; err == nil && n != "" {
		p, err := r.panel(ctx, n)
		if err == nil {
			r.certificate(j, p, e, rep, digest, true, false)
		}
		return err
	}
	if err == nil {
		j.say(deed.Unknown, "certificate-unknown")
	}
	return err
}
