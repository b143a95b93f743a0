package papers

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"backleaf/certificate"
	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/book"
	"backleaf/record/check"
	"backleaf/record/deed"
	"backleaf/record/safefile"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/handover"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
)

// CertificateOrder says what certificate is to be issued.
type CertificateOrder struct {
	Panel    string // as typed
	File     string // where it is written, which must not be there; empty: it is only returned
	Paper    string // a4 or letter; empty: the studio's
	Buyer    string // printed as the owner's name
	Price    bool   // print the price of the last handover
	Because  string // why another is issued
	Preview  bool   // nothing is issued
	Anyway   bool   // also for a panel reported stolen or lost, discarded, or not painted
	Key      func(context.Context) (*seal.Key, error)
	Progress studio.Progress
}

// Certificate is what was issued; a preview has no entry.
type Certificate struct {
	PDF       []byte
	Panel     record.Number
	replaces  int64 // the entry of the one before; 0: none
	displaced int64 // the one that is in force no more by this; 0: none
	studio.Written
}

// Acceptable refuses an order that could not be followed in any book.
func (o CertificateOrder) Acceptable() error {
	if o.Paper != "" && o.Paper != "a4" && o.Paper != "letter" {
		return refuse.Input("paper", "no-such-paper", "%q is neither a4 nor letter", o.Paper)
	}
	for _, t := range []struct{ field, text string }{{"buyer", o.Buyer}, {"because", o.Because}} {
		if err := accept.CheckLine(t.text); err != nil {
			return refuse.Input(t.field, "not-a-line", "%w", err)
		}
	}
	return NewPDF(o.File)
}

// NewPDF refuses, before anything is drawn, a file that is there already or
// bears the name of another kind; without a name there is none.
func NewPDF(file string) error {
	if err := safefile.Vacant(file); err != nil {
		return refuse.Because("file-there", err)
	}
	if ext := filepath.Ext(file); ext != "" && !strings.EqualFold(ext, ".pdf") {
		return refuse.Unclearly("named-no-pdf", "this paper is a PDF, and %s is the name of another kind of file", file)
	}
	return nil
}

// Issue draws the certificate of a finished work and, unless it is a preview,
// issues it.
func Issue(ctx context.Context, s *studio.Session, o CertificateOrder) (Certificate, error) {
	var c Certificate
	if err := o.Acceptable(); err != nil {
		return c, err
	}
	v, err := s.Look(ctx, []string{o.Panel}, nil)
	if err != nil {
		return c, err
	}
	if len(v.Panels) != 1 {
		return c, refuse.Unclearly("one-panel", "one certificate speaks of one panel, not of %d", len(v.Panels))
	}
	now := v.Local().Truncate(time.Second)
	if v.Shop, err = s.Book.Around(ctx, v.Panels...); err != nil { // amounts are shared by all panels of an entry
		return c, err
	}
	p := v.Shop.Panel(v.Panels[0])
	c.Panel = p.Number
	if err := studio.Readable(p); err != nil {
		return c, err
	}
	if err := certifiable(p); err != nil && !o.Anyway {
		return c, err
	}
	in := certificate.Input{Workshop: v.Shop, Panel: p, Issued: now, Catalogue: s.Catalogue(), Paper: cmp.Or(o.Paper, v.Shop.Studio.Paper, "a4"), Buyer: o.Buyer, Preview: o.Preview,
		Photograph: func(ph record.Photograph) ([]byte, error) { return kept.AsItIs(s.Book.Path(), kept.Photograph(ph)) }}
	if in.Mark, err = kept.MarkOf(s.Book.Path(), v.Shop.Studio); err != nil {
		return c, err
	}
	if o.Price {
		if in.Price, err = lastPrice(ctx, s.Book, p); err != nil {
			return c, err
		}
	}
	c.replaces, in.Replaces = replaced(p)
	if standing, ok := p.Certificate(); ok {
		c.displaced = standing.Seq
	}
	c.Warnings = lacking(v, p, in.Catalogue)
	if o.Buyer != "" {
		parted, err := handover.Of(ctx, s.Book, p)
		if err != nil {
			return c, err
		}
		if n := len(parted); n > 0 && !parted[n-1].Taken {
			// A name that was not kept, or was erased, says nothing against another.
			if to := parted[n-1].Private.To; to != "" && !strings.Contains(to, o.Buyer) && !strings.Contains(o.Buyer, to) {
				c.Warn("buyer-other", record.With("buyer", o.Buyer), record.With("to", to), record.With("entry", record.EntryRef(parted[n-1].Entry)))
			}
		}
	}
	if o.Preview {
		if err = c.draw(in); err == nil && o.File != "" {
			err = safefile.Create(o.File, 0o644, safefile.Bytes(c.PDF))
		}
		c.Mean("certificate-preview", record.With("file", o.File), record.With("panel", c.Panel))
		return c, err
	}
	key, err := o.Key(ctx)
	if err != nil {
		return c, err
	}
	defer o.Progress.Busy("certificate", 0)()
	if in.Deed, err = deed.Make(ctx, s.Book, v.Shop, p, check.Panel(v.Shop, p, now), key, now); err != nil {
		return c, refuse.Because("not-written", err)
	}
	if err = c.draw(in); err != nil {
		return c, refuse.Because(cmp.Or(refuse.Code(err), "not-written"), err)
	}
	if err := c.issue(ctx, v, o, in.Deed, now); err != nil {
		return c, err
	}
	c.Mean("certificate-written", record.With("entry", record.EntryRef(c.Entries[0].Seq)), record.With("panel", c.Panel), record.With("replaces", record.EntryRef(c.replaces)))
	if len(in.Deed.Signature) > 0 {
		c.Mean("file-signed", record.With("file", o.File), record.With("key", in.Deed.Key.Fingerprint().Short()))
	} else {
		c.Mean("file-not-signed", record.With("file", o.File))
	}
	c.Mean("take-back-certificate", record.With("panel", c.Panel), record.With("replaces", record.EntryRef(c.displaced)))
	return c, nil
}

// replaced returns the certificate that a new one takes the place of: the last
// one issued.
func replaced(p *record.Panel) (entry int64, at record.When) {
	var old record.Done[record.Issued]
	ok := false
	for _, c := range record.Each[record.Issued](p) { // the journal's order, not the clock's
		if c.Seq > old.Seq {
			old, ok = c, true
		}
	}
	if !ok {
		return 0, record.When{}
	}
	if at = old.At; !at.Known() {
		at = old.Written
	}
	return old.Seq, at
}

func (c *Certificate) draw(in certificate.Input) error {
	d, err := certificate.Draw(in)
	c.PDF = d.PDF
	said, warnings := photographSaid(d.Photo)
	c.Warnings = slices.Concat(c.Warnings, said, warnings, noAddress(in.Workshop.Studio))
	return err
}

// withEntry writes a file, its entry, and only then gives the file its name: a
// paper that can be seen has its entry. An entry without its file is told; the
// kept paper is there.
func withEntry(put func(string, fs.FileMode, func(*os.File) error) error, path string, data []byte, write func() error) error {
	if path == "" {
		return write()
	}
	var refused error // it is not the file that is at fault
	err := put(path, 0o644, func(f *os.File) error {
		if _, err := f.Write(data); err != nil {
			return err
		}
		if err := f.Sync(); err != nil {
			return err
		}
		refused = write()
		return refused
	})
	return cmp.Or(refused, err)
}

// issue keeps the paper, and writes it with its entry.
func (c *Certificate) issue(ctx context.Context, v *studio.View, o CertificateOrder, d deed.Deed, now time.Time) error {
	file := kept.PaperOf(c.PDF)
	if err := kept.Keep(v.Book.Path(), file, c.PDF); err != nil {
		return refuse.Because("not-issued", err)
	}
	// The entry follows the head that was signed, or it is not written.
	entry := record.Entry{Seq: d.Size + 1, At: record.Moment(now), Panels: []record.Number{c.Panel},
		Body: record.Issued{Record: seal.DigestOf(d.Record).String(), PDF: file.SHA256, Reason: o.Because, Replaces: c.replaces}}
	if o.Buyer != "" || o.Price {
		body := entry.Body.(record.Issued)
		body.Private = record.Yes
		entry.Body = body
	}
	err := withEntry(safefile.Create, o.File, c.PDF, func() error {
		w, err := v.Write(ctx, entry)
		c.Entries, c.Warnings = w.Entries, append(c.Warnings, w.Warnings...)
		return err
	})
	switch {
	case err != nil && c.Entries != nil:
		at := c.Entries[0].Seq
		return refuse.Because("certificate-without-file", fmt.Errorf("the certificate is on record as E%d, but its file is not there: %w", at, err),
			record.With("panel", c.Panel), record.With("entry", record.EntryRef(at)))
	case refuse.Code(err) != "":
		return err
	case err != nil:
		return refuse.Because("not-issued", err)
	}
	if len(d.Head) > 0 { // what is on record is finished, whoever wants to stop
		if err := v.Book.KeepHead(context.WithoutCancel(ctx), book.Head{Size: d.Size, Root: d.Root, Note: string(d.Head)}); err != nil {
			return fmt.Errorf("the certificate is issued; its head could not be kept: %w", err)
		}
	}
	return nil
}

// certifiable refuses what nobody would expect a certificate of, unless it is
// asked for by name.
func certifiable(p *record.Panel) error {
	if h, away := p.Away(); away && (h.Body.How == "theft" || h.Body.How == "loss") {
		return refuse.Cannot("not-certifiable", "%s is reported %s (E%d)", p.Number, map[record.Parting]string{"theft": "stolen", "loss": "lost"}[h.Body.How], h.Seq)
	}
	if d, ok := p.Discarded(); ok {
		return refuse.Cannot("not-certifiable", "%s was discarded: %s", p.Number, d.Body.Because)
	}
	// A title stands for the paint where nobody wrote the making down.
	if st := p.Stage(); st != record.StagePainted && st != record.StageVarnished && (p.Description().Title == "" || p.AsMade()) {
		return refuse.Cannot("not-finished", "%s is no finished work: no paint is on record", p.Number)
	}
	return nil
}

// lastPrice is the price of the last handover, for this panel alone.
func lastPrice(ctx context.Context, b *book.Book, p *record.Panel) (string, error) {
	ps, err := handover.Of(ctx, b, p)
	if err != nil {
		return "", err
	}
	for i := len(ps) - 1; i >= 0; i-- {
		h := ps[i]
		if h.Taken || h.How == "return" || h.Private.Price == (private.Price{}) {
			continue
		}
		if h.Panels > 1 {
			return "", fmt.Errorf("the price of E%d is for %d panels together; none is on record for %s alone", h.Entry, h.Panels, p.Number)
		}
		return h.Private.Price.String(), nil
	}
	return "", refuse.Because("no-price", errors.New("no price is on record for "+string(p.Number)))
}

// TakeBack takes the certificate in force of the one panel of a view back.
func TakeBack(ctx context.Context, v *studio.View, at record.When, because string) (w studio.Written, err error) {
	if len(v.Panels) != 1 {
		return w, refuse.Unclearly("one-panel", "name one panel, not %d", len(v.Panels))
	}
	p := v.Shop.Panel(v.Panels[0])
	old, ok := p.Certificate()
	if !ok {
		return w, refuse.Cannot("no-certificate", "there is no valid certificate of %s", p.Number).With(record.With("panel", p.Number))
	}
	if w, err = v.Write(ctx, record.Entry{At: at, Panels: v.Panels, Body: record.Revoked{Certificate: old.Seq, Because: because}}); err != nil {
		return w, err
	}
	anyway := record.No
	if certifiable(p) != nil {
		anyway = record.Yes
	}
	w.Mean("certificate-taken-back", record.With("entry", record.EntryRef(w.Entries[0].Seq)), record.With("panel", p.Number), record.With("of", record.EntryRef(old.Seq)), record.With("because", because),
		record.With("replaced", record.EntryRef(old.Body.Replaces)), record.With("anyway", anyway))
	return w, nil
}
