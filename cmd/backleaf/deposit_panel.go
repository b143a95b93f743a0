package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"runtime"
	"sync"

	"backleaf/certificate/dossier"
	"backleaf/record"
	"backleaf/record/bag"
	"backleaf/record/check"
	"backleaf/record/deed"
	"backleaf/record/deposit"
	"backleaf/record/linkedart"
	"backleaf/record/seal"
	"backleaf/record/studio/papers"
	"backleaf/record/studio/photos"
	"backleaf/record/tell"
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
	origin, err := seal.Origin(d.shop.Studio.Mark)
	if err != nil {
		return err
	}
	note, err := seal.Head{Origin: origin, Size: d.head.Size, Root: d.head.Root}.Sign(*d.key)
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
			name := deposit.PhotographName(ph)
			if seen[name] {
				continue
			}
			seen[name] = true
			if err := ctx.Err(); err != nil {
				return err
			}
			if _, err := d.photograph(ph); err != nil {
				d.app.talk("photograph %s: %v", photos.Path(d.app.path(), ph), err)
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
func (d *depositor) photograph(p record.Photograph) ([]byte, error) {
	return photos.Read(d.app.path(), p)
}

// panels adds everything about each panel, on all cores: to draw the papers
// takes longer than all the rest.
func (d *depositor) panels(ctx context.Context) error {
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	show := d.app.progress("panels")
	queue := make(chan *record.Panel)
	var workers sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		workers.Go(func() {
			for p := range queue {
				if err := d.panel(ctx, p); err != nil {
					stop(fmt.Errorf("%s: %w", p.Number, err))
				}
			}
		})
	}
	for i, p := range d.shop.Panels {
		if ctx.Err() != nil {
			break
		}
		if show != nil {
			show(int64(i+1), int64(len(d.shop.Panels)))
		}
		queue <- p
	}
	close(queue)
	workers.Wait()
	return context.Cause(ctx)
}

func (d *depositor) panel(ctx context.Context, p *record.Panel) error {
	dir := "panels/" + string(p.Number) + "/"
	made, err := deed.Make(ctx, d.book, d.shop, p, check.Panel(d.shop, p, d.now), d.key, d.now)
	if err != nil {
		return err
	}
	files := made.Files()
	for _, name := range deedNames {
		if data := *files.Named(name); len(data) > 0 {
			if err := d.put(dir+name, data); err != nil {
				return err
			}
		}
	}
	core, err := deposit.DublinCore(tell.English, d.shop, p)
	if err != nil {
		return err
	}
	if err := d.put(dir+"dublin-core.xml", core); err != nil {
		return err
	}
	docs, err := linkedart.Documents(d.shop, p)
	if err != nil {
		return err
	}
	for _, doc := range docs {
		if err := d.put(dir+"linked-art/"+doc.Name, doc.JSON); err != nil {
			return err
		}
	}
	told := dossier.New(tell.English, d.shop, p, dossier.Book{Entries: d.about.Entries, Root: d.about.Root, Photograph: d.photograph})
	for _, paper := range []struct {
		path string
		draw func() ([]byte, error)
	}{
		{dir + "page.html", told.HTML},
		{dir + "dossier.txt", func() ([]byte, error) { s, err := told.Text(); return []byte(s), err }},
		{"papers/dossiers/" + string(p.Number) + ".pdf", told.PDF},
		{"papers/labels/" + string(p.Number) + ".pdf", func() ([]byte, error) { return papers.LabelNow(ctx, d.book, d.shop, p) }},
	} {
		data, err := paper.draw()
		if ctx.Err() != nil {
			return ctx.Err()
		}
		if err != nil { // the record is whole without it
			d.leaveOut(paper.path, err)
			continue
		}
		if data == nil {
			continue
		}
		if err := d.put(paper.path, data); err != nil {
			return err
		}
	}
	return nil
}
