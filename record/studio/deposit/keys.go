package deposit

import (
	"bytes"
	"context"
	"fmt"
	"io"

	"backleaf/record"
	"backleaf/record/bag"
	parts "backleaf/record/deposit"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/photos"
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

// photographs adds the kept files, each checked by its digest.
func (d *depositor) photographs(ctx context.Context) error {
	seen := map[string]bool{}
	for _, p := range d.shop.Panels {
		for _, done := range record.Each[record.Photograph](p) {
			ph := done.Body
			name := parts.PhotographName(ph)
			if seen[name] {
				continue
			}
			seen[name] = true
			if err := ctx.Err(); err != nil {
				return err
			}
			if _, err := d.photograph(ph); err != nil {
				d.warnings = append(d.warnings, record.Say("photograph-bad", record.With("file", photos.Path(d.from, ph)), record.With("why", err.Error())))
				d.about.Missing = append(d.about.Missing, fmt.Sprintf("%s (E%d, %s)", name, done.Seq, p.Number))
				continue
			}
			d.about.Photographs++
			d.add(bag.File{Path: "photographs/" + name, Open: func() (io.ReadCloser, error) {
				data, err := d.photograph(ph)
				return io.NopCloser(bytes.NewReader(data)), err
			}})
		}
	}
	return nil
}

// photograph reads a kept file that still is what the journal says.
func (d *depositor) photograph(p record.Photograph) ([]byte, error) { return photos.Read(d.from, p) }
