package main

import (
	"errors"
	"strconv"
	"strings"

	"backleaf/cmd/internal/terminal"
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/pattern"
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
	c, done, err := register.Checker(r.ctx, r.path(), r.bookPath != "", status, r.now(), r.progress())
	if err != nil {
		return err
	}
	defer done()
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
	return outcomes[verify.OutcomeOf(papers)]
}

// outcomes are how the command ends.
var outcomes = map[verify.Outcome]error{
	verify.Broken:      &failure{errNotAll, "", exitIntegrity},
	verify.FilesBroken: &failure{errNotAll, "take photographs and papers from a backup of the folders \"photographs\" and \"papers\"", exitIntegrity},
	verify.Unverified:  &failure{errors.New("not verified: see why, above"), "", exitUnverified},
}

var errNotAll = errors.New("not everything holds: see what does not, above")

// sound says what does not hold of a deposit or book, and refuses to go on with it.
func (r *run) sound(e verify.Evidence) error {
	told, err := verify.Checker{Books: register.Books{Progress: r.progress(), Quick: true}, Now: r.now()}.Sound(r.ctx, e)
	for _, x := range told {
		text := oneLine(tell.Say(r.catalogue(), x.Said))
		if x.Said.Code != "deposit-key-unused" {
			text = "does not hold: " + text
		}
		r.talk("%s", text)
	}
	return err
}

// evidence reads a file or folder, or standard input for "-".
func (a *app) evidence(name string) ([]verify.Evidence, error) {
	return terminal.Waiting(a.interrupted, func() ([]verify.Evidence, error) {
		if name == "-" {
			return verify.ReadFrom("standard input", a.in)
		}
		return verify.Open(name)
	})
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
