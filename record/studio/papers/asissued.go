package papers

import (
	"context"
	"fmt"
	"os"

	"backleaf/record"
	"backleaf/record/safefile"
	"backleaf/record/studio"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/refuse"
)

// AsIssued writes the last certificate of a panel again, byte for byte as it
// left the studio, and returns its entry.
func AsIssued(ctx context.Context, s *studio.Session, o CertificateOrder) (record.Done[record.Issued], error) {
	var last record.Done[record.Issued]
	v, err := s.Look(ctx, []string{o.Panel}, nil)
	if err != nil {
		return last, err
	}
	if len(v.Panels) != 1 {
		return last, refuse.Unclearly("one-panel", "one certificate speaks of one panel, not of %d", len(v.Panels))
	}
	for _, c := range record.Each[record.Issued](v.Shop.Panel(v.Panels[0])) {
		if c.Seq > last.Seq {
			last = c
		}
	}
	if last.Seq == 0 {
		return last, refuse.Cannot("no-certificate", "no certificate of %s was issued", v.Panels[0]).With(record.With("panel", v.Panels[0]))
	}
	last.Panels = v.Panels
	file, ok := kept.Named(last.Body)
	if !ok {
		return last, refuse.Cannot("not-kept", "the file of certificate E%d was not kept", last.Seq)
	}
	data, err := kept.Read(s.Book.Path(), file)
	if err != nil {
		return last, refuse.Because("not-kept", fmt.Errorf("the file of certificate E%d (%s): %w", last.Seq, kept.Path(s.Book.Path(), file), err))
	}
	if o.File == "" {
		return last, nil
	}
	return last, safefile.Create(o.File, 0o644, func(f *os.File) error { _, err := f.Write(data); return err })
}
