package deposit

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"

	"backleaf/record"
	"backleaf/record/bag"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/keys"
)

// keys adds the studio's public keys, their life, and the signed heads.
func (d *depositor) keys(ctx context.Context) error {
	names := map[string]string{}
	list := "The studio's keys, in the order in which they were made.\n"
	if len(d.ring.Keys) == 0 {
		list = "The studio had no key.\n"
	}
	for i, p := range d.ring.Keys {
		full := p.Fingerprint().String()
		names[full] = fmt.Sprintf("%02d-%s", i+1, full[:8])
		list += fmt.Sprintf("\n%s.pem  %s\n  fingerprint %s\n", names[full], d.ring.Standing(p), p.Fingerprint().Groups())
		if heir, ok := d.ring.Heir(p); ok {
			list += fmt.Sprintf("  its owner signed that the next is %s (%s-succession.txt)\n", heir.Groups(), names[full])
		}
		if err := d.put("keys/"+names[full]+".pem", p.PEM()); err != nil {
			return err
		}
	}
	for _, e := range d.shop.Keys {
		if r, ok := e.Body.(record.KeyRetired); ok {
			if err := d.put("keys/"+names[r.Fingerprint]+"-succession.txt", []byte(r.Statement+"\n")); err != nil {
				return err
			}
		}
	}
	if err := d.put("keys/keys.txt", []byte(list)); err != nil {
		return err
	}
	heads, err := d.book.Heads(ctx)
	if err != nil {
		return err
	}
	same := map[int64]int{}
	for _, h := range heads {
		name := fmt.Sprintf("keys/heads/%08d", h.Size)
		if same[h.Size]++; same[h.Size] > 1 { // signed with two keys
			name += fmt.Sprintf("-%d", same[h.Size])
		}
		if err := d.put(name+".txt", []byte(h.Note)); err != nil {
			return err
		}
	}
	if d.key == nil {
		return nil
	}
	note, err := keys.Head(d.shop.Studio, d.head.Size, d.head.Root, *d.key)
	if err != nil {
		return err
	}
	d.head.Note = string(note)
	return d.put("keys/head.txt", note)
}

// keptFiles adds the kept files, each checked by its digest: photographs, and the
// papers that left the studio, byte for byte.
func (d *depositor) keptFiles(ctx context.Context) error {
	return kept.Each(ctx, d.book, func(f kept.File) error {
		if f.Private {
			d.leaveOut(fmt.Sprintf("%s-E%d.pdf", f.Panel, f.Entry), errors.New("the owner's name or a price is printed on it"))
			return nil
		}
		if _, err := kept.Read(d.from, f); err != nil {
			code := "photograph-bad"
			if f.Folder == kept.Papers {
				code = "paper-bad"
			}
			d.warnings = append(d.warnings, record.Say(code, record.With("file", kept.Path(d.from, f)), record.With("why", err.Error())))
			d.about.Missing = append(d.about.Missing, fmt.Sprintf("%s (E%d, %s)", f.Name, f.Entry, f.Panel))
			return nil
		}
		if f.Folder == kept.Photographs {
			d.about.Photographs++
		}
		d.add(bag.File{Path: partOf(f), Open: func() (io.ReadCloser, error) {
			data, err := kept.Read(d.from, f)
			return io.NopCloser(bytes.NewReader(data)), err
		}})
		return nil
	})
}

// partOf is where a kept file stands in a deposit.
func partOf(f kept.File) string {
	if f.Folder == kept.Papers {
		return "papers/" + f.Name
	}
	return "photographs/" + f.Name
}

// photograph reads a kept file that still is what the journal says.
func (d *depositor) photograph(p record.Photograph) ([]byte, error) {
	return kept.Read(d.from, kept.Photograph(p))
}
