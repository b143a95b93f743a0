package main

import (
	"cmp"
	"path/filepath"
	"strings"

	"backleaf/record"
	"backleaf/record/safefile"
	"backleaf/record/studio/papers"
	"backleaf/record/tell"
)

func newDossier(a *app) {
	var out string
	var text, html bool
	a.command("dossier", flags{"output": &out, "text": &text, "html": &html}, func(r *run) error {
		if text && html {
			return usage("", "--text and --html: only one of them")
		}
		if !map[string]bool{"": true, ".": true, ".pdf": !text && !html, ".txt": text, ".html": html, ".htm": html}[strings.ToLower(filepath.Ext(out))] {
			return usage("--text goes with .txt, --html with .html, neither with .pdf", "the name %s is that of another kind of file than was asked for", out)
		}
		return r.reading(func(r *run) error {
			n, d, err := papers.Dossier(r.ctx, r.Session, r.args[0])
			if err != nil {
				return err
			}
			var data []byte
			switch {
			case text:
				var s string
				s, err = d.Text()
				data = []byte(s)
			case html:
				data, err = d.HTML()
			default:
				data, err = d.PDF()
				out = cmp.Or(out, "dossier-"+string(n)+".pdf")
			}
			if err != nil {
				return err
			}
			if out == "" || out == "-" {
				_, err = a.out.Write(data)
				return err
			}
			if err := safefile.Renew(out, d.Kind, data); err != nil {
				return err
			}
			a.told("dossier-written", record.With("file", out), record.With("panel", n), tell.Told("title", d.Title))
			return nil
		})
	})
}
