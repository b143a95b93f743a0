package deposit

import (
	"context"
	"fmt"
	"path"
	"runtime"
	"sync"

	"backleaf/certificate/dossier"
	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/deed"
	parts "backleaf/record/deposit"
	"backleaf/record/linkedart"
	"backleaf/record/studio/papers"
	"backleaf/record/studio/verify"
)

// panels adds everything about each panel, on all cores: to draw the papers
// takes longer than all the rest.
func (d *depositor) panels(ctx context.Context) error {
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	show := d.progress.Of("panels")
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
	made, err := deed.Make(ctx, d.stored, d.shop, p, check.Panel(d.shop, p, d.now), d.key, d.now)
	if err != nil {
		return err
	}
	files := made.Files()
	for _, name := range verify.Names {
		if data := *files.Named(name); len(data) > 0 {
			if err := d.put(dir+name, data); err != nil {
				return err
			}
		}
	}
	core, err := parts.DublinCore(d.words, d.shop, p)
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
	told := dossier.New(d.words, d.shop, p, dossier.Book{Entries: d.about.Entries, Root: d.about.Root, Photograph: d.photograph})
	for _, paper := range []struct {
		path string
		make func() ([]byte, error)
	}{
		{dir + "page.html", told.HTML},
		{dir + "dossier.txt", func() ([]byte, error) { s, err := told.Text(); return []byte(s), err }},
		{"papers/dossiers/" + string(p.Number) + ".pdf", told.PDF},
		{"papers/labels/" + string(p.Number) + ".pdf", func() ([]byte, error) { return papers.LabelNow(ctx, d.words, d.stored, d.from, d.shop, p) }},
	} {
		if d.undrawn && path.Ext(paper.path) == ".pdf" {
			continue
		}
		data, err := paper.make()
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
