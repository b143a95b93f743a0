package main

import (
	"cmp"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/certificate/dossier"
	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/papers"
	"backleaf/record/tell"
)

// dossierFlags are what "dossier" is told.
type dossierFlags struct {
	out        string
	text, html bool
}

func newDossier(a *app) *cobra.Command {
	var o dossierFlags
	c := &cobra.Command{
		Use: "dossier NUMBER", Short: "everything a conservator asks about a panel",
		Long: `Everything that is recorded of a panel, in the order in which a conservator asks: as a
PDF for the archive (PDF/A-1b), with --text as plain text, with --html as one page
that needs nothing else. Text and HTML go to standard output unless -o names a file.`,
		Example: `  backleaf dossier 0142 -o dossier.pdf
  backleaf dossier KB26-0142-1 --text | less`,
		Args: wanted(1, 1, "one panel"),
		RunE: func(c *cobra.Command, args []string) error {
			if o.text && o.html {
				return usage("", "--text and --html: only one of them")
			}
			if err := o.fits(); err != nil {
				return err
			}
			return a.read(c.Context(), func(s *studio.Session) error {
				n, d, err := papers.Dossier(c.Context(), s, args[0])
				if err != nil {
					return err
				}
				return a.writeDossier(&o, n, d)
			})
		},
	}
	f := c.Flags()
	f.StringVarP(&o.out, "output", "o", "", "the file to write (default for a PDF: dossier-NUMBER.pdf)")
	f.BoolVar(&o.text, "text", false, "plain text")
	f.BoolVar(&o.html, "html", false, "one HTML page")
	return c
}

// fits refuses a file name that promises another form than was asked for.
func (o *dossierFlags) fits() error {
	var wrong bool
	switch ext := strings.ToLower(filepath.Ext(o.out)); ext {
	case ".pdf":
		wrong = o.text || o.html
	case ".txt":
		wrong = !o.text
	case ".html", ".htm":
		wrong = !o.html
	}
	if wrong {
		return usage("--text goes with .txt, --html with .html, neither with .pdf", "the name %s is that of another kind of file than was asked for", o.out)
	}
	return nil
}

func (a *app) writeDossier(o *dossierFlags, n record.Number, d *dossier.Document) error {
	var data []byte
	var err error
	switch {
	case o.text:
		var s string
		s, err = d.Text()
		data = []byte(s)
	case o.html:
		data, err = d.HTML()
	default:
		data, err = d.PDF()
		o.out = cmp.Or(o.out, "dossier-"+string(n)+".pdf")
	}
	if err != nil {
		return err
	}
	if o.out == "" || o.out == "-" {
		_, err = a.out.Write(data)
		return err
	}
	if err := papers.WriteDossier(o.out, d.Kind, data); err != nil {
		return err
	}
	a.told("dossier-written", record.With("file", o.out), record.With("panel", n), tell.Told("title", d.Title))
	return nil
}
