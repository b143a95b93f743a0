package papers

import (
	"context"
	"fmt"

	"backleaf/record"
	"backleaf/record/safefile"
	"backleaf/record/studio"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/refuse"
)

// AsIssued writes the last certificate of a panel again, byte for byte as it
// left the studio.
func AsIssued(ctx context.Context, s *studio.Session, o CertificateOrder) (w studio.Written, err error) {
	if o.Because != "" || o.Buyer != "" || o.Price || o.Paper != "" || o.Preview {
		return w, refuse.Unclearly("as-issued-alone", "what is written again as it was issued can only be as it was")
	}
	v, err := s.Look(ctx, []string{o.Panel}, nil)
	if err != nil {
		return w, err
	}
	if len(v.Panels) != 1 {
		return w, refuse.Unclearly("one-panel", "one certificate speaks of one panel, not of %d", len(v.Panels))
	}
	n := v.Panels[0]
	var last record.Done[record.Issued]
	for _, c := range record.Each[record.Issued](v.Shop.Panel(n)) {
		if c.Seq > last.Seq {
			last = c
		}
	}
	if last.Seq == 0 {
		return w, refuse.Cannot("no-certificate", "no certificate of %s was issued", n).With(record.With("panel", n))
	}
	file, ok := kept.Named(last.Body)
	if !ok {
		return w, refuse.Cannot("not-kept", "the file of certificate E%d was not kept", last.Seq)
	}
	data, err := kept.Read(s.Book.Path(), file)
	if err != nil {
		return w, refuse.Because("not-kept", fmt.Errorf("the file of certificate E%d (%s): %w", last.Seq, kept.Path(s.Book.Path(), file), err))
	}
	if err = safefile.Create(o.File, 0o644, safefile.Bytes(data)); err == nil {
		w.Mean("certificate-again", record.With("file", o.File), record.With("panel", n), record.With("entry", record.EntryRef(last.Seq)))
		if standing, _ := v.Shop.Panel(n).Certificate(); standing.Seq != last.Seq {
			w.Warn("not-in-force", record.With("entry", record.EntryRef(last.Seq)))
		}
	}
	return w, err
}
