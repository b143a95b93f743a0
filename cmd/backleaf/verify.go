package main

import (
	"context"
	"errors"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/pattern"
	"backleaf/record/studio/register"
	"backleaf/record/studio/verify"
	"backleaf/record/tell"
)

func newVerify(a *app) *cobra.Command {
	var status string
	c := a.jsonFlag(&cobra.Command{
		Use: "verify [FILE]…", Short: "check the book, or a certificate, record, deposit, label or head",
		Long: `Without a FILE: read the whole book back and check that it holds.

FILE is a certificate (PDF), a record folder or single files of one, a deposit, the
text of a label's or certificate's QR symbol, a signed head, or a book; - is standard
input. The first line sums up, the worst first. Then stands what the record says, to
be compared with the page, which is not signed, and with the panel; then what holds,
what does not, and what cannot be known. No book is needed; if the studio's book is
here, it is asked what became of the paper; a studio's status (the file "status" of
its pages) says it without the book. Nothing is written.

Exit code 4 if anything does not hold, 7 if nothing could be verified.`,
		Example: `  backleaf verify
  backleaf verify certificate.pdf
  backleaf verify record.json record.sig studio.pem
  zbarimg --raw -q photo.png | backleaf verify -
  backleaf verify certificate.pdf --status status
  backleaf verify backup.sqlite`,
		RunE: func(c *cobra.Command, args []string) error {
			switch {
			case len(args) > 0:
				return a.verifyPapers(c.Context(), args, status)
			case status != "":
				return usage("for example: backleaf verify certificate.pdf --status "+status, "expected the paper that the status is to be asked about")
			}
			return a.verifyBook(c.Context())
		},
	})
	c.Flags().StringVar(&status, "status", "", "ask this status of a studio what became of the paper")
	return c
}

// verifyBook checks the studio's book.
func (a *app) verifyBook(ctx context.Context) error {
	b, err := book.OpenReadOnly(ctx, a.path())
	if err != nil {
		return err
	}
	if err := b.Close(); err != nil {
		return err
	}
	return a.verified(ctx, verify.Checker{}, []verify.Evidence{{Name: a.path(), Kind: verify.Book}})
}

// verifyPapers checks what is named.
func (a *app) verifyPapers(ctx context.Context, names []string, status string) error {
	var all []verify.Evidence
	for _, n := range names {
		es, err := a.evidence(n)
		if err != nil {
			return err
		}
		all = append(all, es...)
	}
	all, err := verify.Together(all)
	if err != nil {
		return err
	}
	c := verify.Checker{}
	r, err := register.Open(ctx, a.path())
	if err == nil {
		defer r.Close()
		c.Witnesses = []verify.Witness{r}
	} else if !errors.Is(err, book.ErrNoBook) || a.bookPath != "" {
		return err
	}
	if status != "" {
		l, err := verify.OpenStatus(status, a.now())
		if err != nil {
			return err
		}
		c.Witnesses = append(c.Witnesses, l)
	}
	return a.verified(ctx, c, all)
}

// verified checks evidence and says what holds.
func (a *app) verified(ctx context.Context, c verify.Checker, all []verify.Evidence) error {
	c.Books = register.Books{Progress: a.progress()}
	papers, err := c.Check(ctx, all)
	if err != nil {
		return err
	}
	if a.asJSON {
		err = a.sayJSON(papers)
	} else {
		a.sayPapers(papers)
	}
	if err != nil {
		return err
	}
	failed, unverified, kept := 0, 0, false
	for _, p := range papers {
		failed += p.Failed
		// The number on a label stands beside what is signed.
		if !p.Verified && (p.Kind != verify.Symbol || len(papers) == 1) {
			unverified++
		}
		for _, r := range p.Results {
			kept = kept || r.Said.Code == "kept-file-bad"
		}
	}
	switch {
	case failed > 0 && kept:
		return &failure{errors.New("not everything holds"), "take photographs and papers from a backup of the folders \"photographs\" and \"papers\"", exitIntegrity}
	case failed > 0:
		return &failure{errors.New("not everything holds"), "", exitIntegrity}
	case unverified > 0:
		return &failure{errors.New("nothing was verified"), "", exitUnverified}
	}
	return nil
}

// evidence reads a file or folder, or standard input for "-".
func (a *app) evidence(name string) ([]verify.Evidence, error) {
	if name != "-" {
		return waiting(a, func() ([]verify.Evidence, error) { return verify.Open(name) })
	}
	return waiting(a, func() ([]verify.Evidence, error) { return verify.ReadFrom("standard input", a.in) })
}

func (a *app) sayPapers(papers []verify.Paper) {
	c := a.catalogue()
	said := func(s record.Said) string { return oneLine(tell.Say(c, s)) }
	for _, p := range papers {
		var sum []string
		for _, s := range p.Sum {
			sum = append(sum, said(s))
		}
		a.say("%s: %s", nameOf(p), c.Clauses(sum))
		if len(p.Says) > 0 {
			a.say("  %s", said(record.Say("says-compare")))
		}
		for _, s := range p.Says {
			a.say("    %s", said(s))
		}
		for _, r := range p.Results {
			a.say("  %-15s  %s", said(record.Say("verdict-"+string(r.Verdict))), said(r.Said))
		}
	}
}

// nameOf quotes a name that could pass for a part of the report.
func nameOf(p verify.Paper) string {
	if strings.Contains(p.Name, ": ") || oneLine(p.Name) != p.Name {
		return strconv.Quote(p.Name)
	}
	return p.Name
}

var spaces = pattern.Of(` {2,}`)

// oneLine makes what may hold text from outside one line of a report, which
// cannot look like several, or stand in the column of another.
func oneLine(s string) string {
	return spaces().ReplaceAllString(strings.ReplaceAll(s, "\n", "<U+000A>"), " ")
}
