package main

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"backleaf/cmd/internal/terminal"
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/pattern"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/register"
	"backleaf/record/studio/verify"
	"backleaf/record/tell"
)

func newVerify(a *app) {
	var status string
	a.command("verify", flags{"status": &status, "json": &a.asJSON}, func(r *run) error {
		switch {
		case len(r.args) > 0:
			return r.verifyPapers(status)
		case status != "":
			return usage("for example: backleaf verify certificate.pdf --status "+status, "expected the paper that the status is to be asked about")
		}
		b, err := book.OpenReadOnly(r.ctx, a.path())
		if err == nil {
			err = b.Close()
		}
		if err != nil {
			return err
		}
		return r.verified(verify.Checker{}, []verify.Evidence{{Name: a.path(), Kind: verify.Book}})
	})
}

// verifyPapers checks what is named.
func (r *run) verifyPapers(status string) error {
	var all []verify.Evidence
	for _, n := range r.args {
		es, err := r.evidence(n)
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
	w, err := register.Open(r.ctx, r.path(), r.progress())
	if err == nil {
		defer w.Close()
		c.Witnesses = []verify.Witness{w}
	} else if !errors.Is(err, book.ErrNoBook) || r.bookPath != "" {
		return err
	}
	if status != "" {
		l, err := verify.OpenStatus(status, r.now())
		if err != nil {
			return err
		}
		if c.Witnesses = append(c.Witnesses, l); w != nil {
			if c.Remarks, err = w.Status(r.ctx, l.Status); err != nil {
				return err
			}
		}
	}
	return r.verified(c, all)
}

// verified checks evidence and says what holds.
func (r *run) verified(c verify.Checker, all []verify.Evidence) error {
	c.Books, c.Now = register.Books{Progress: r.progress()}, r.now()
	papers, err := terminal.Waiting(r.interrupted, func() ([]verify.Paper, error) { return c.Check(r.ctx, all) })
	if err != nil {
		return err
	}
	if r.asJSON {
		err = r.sayJSON(papers)
	} else {
		r.sayPapers(papers)
	}
	if err != nil {
		return err
	}
	failed, unverified, kept := 0, 0, false
	verified := slices.ContainsFunc(papers, func(p verify.Paper) bool { return p.Verified })
	for _, p := range papers {
		failed += p.Failed
		// The number on a label stands beside what is signed.
		label := slices.ContainsFunc(p.Results, func(r deed.Result) bool { return r.Said.Code == "symbol-well-formed" })
		if !p.Verified && !(label && verified) {
			unverified++
		}
		for _, r := range p.Results {
			kept = kept || r.Said.Code == "kept-file-bad"
		}
	}
	switch {
	case failed > 0 && kept:
		return &failure{errors.New("not everything holds: see what does not, above"), "take photographs and papers from a backup of the folders \"photographs\" and \"papers\"", exitIntegrity}
	case failed > 0:
		return &failure{errors.New("not everything holds: see what does not, above"), "", exitIntegrity}
	case unverified > 0:
		return &failure{errors.New("nothing could be verified: see why, above"), "", exitUnverified}
	}
	return nil
}

// sound refuses to go on with a deposit or book of which something does not
// hold, but for kept files that are missing: those are told otherwise. That a
// signature is missing is said.
func (r *run) sound(e verify.Evidence) error {
	c := verify.Checker{Books: register.Books{Progress: r.progress(), Quick: true}, Now: r.now()}
	papers, err := c.Check(r.ctx, []verify.Evidence{e})
	if err != nil {
		return err
	}
	broken := false
	for _, x := range papers[0].Results {
		text := oneLine(tell.Say(r.catalogue(), x.Said))
		switch {
		case x.Said.Code == "deposit-key-unused":
			r.talk("%s", text)
		case x.Verdict == deed.Fails && !ofKeptFile(x.Said):
			r.talk("does not hold: %s", text)
			broken = true
		}
	}
	if broken {
		return refuse.Breaks("not-whole", "%s does not hold", e.Name)
	}
	return nil
}

// ofKeptFile reports a result about a file beside a book, or its key.
func ofKeptFile(s record.Said) bool {
	codes := []string{s.Code}
	for _, v := range s.Values {
		if v.Name == "about" {
			codes = append(codes, v.Texts...)
		}
	}
	return slices.ContainsFunc(codes, func(c string) bool {
		return slices.Contains([]string{"kept-file-bad", "kept-mark-bad", "kept-photographs", "kept-papers", "key-file-other", "key-file-unreadable"}, c)
	})
}

// evidence reads a file or folder, or standard input for "-".
func (a *app) evidence(name string) ([]verify.Evidence, error) {
	if name != "-" {
		return terminal.Waiting(a.interrupted, func() ([]verify.Evidence, error) { return verify.Open(name) })
	}
	return terminal.Waiting(a.interrupted, func() ([]verify.Evidence, error) { return verify.ReadFrom("standard input", a.in) })
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
