package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"

	"backleaf/record"
	"backleaf/record/bag"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/studio/photos"
)

// verifyPapers checks what is named and says what holds.
func (a *app) verifyPapers(ctx context.Context, names []string) error {
	var all []evidence
	for _, n := range names {
		es, err := a.evidenceOf(n)
		if err != nil {
			return err
		}
		all = append(all, es...)
	}
	all, err := together(all)
	if err != nil {
		return err
	}
	reg, err := a.register(ctx)
	if err != nil {
		return err
	}
	defer reg.close()
	failed := 0
	views := []paperView{}
	for _, e := range all {
		results, err := a.examine(ctx, e, reg)
		if err != nil {
			return err
		}
		v := paperView{Name: e.name}
		for _, r := range results {
			v.Results = append(v.Results, resultView(r))
			if r.Verdict == deed.Fails {
				failed++
			}
		}
		views = append(views, v)
	}
	if err := a.sayPapers(views); err != nil {
		return err
	}
	if failed > 0 {
		return &failure{errors.New("not everything holds"), "", exitIntegrity}
	}
	return nil
}

// paperView is what was found of one paper, for a program to read.
type paperView struct {
	Name    string       `json:"name"`
	Results []resultView `json:"results"`
}

type resultView struct {
	Verdict deed.Verdict `json:"verdict"`
	Text    string       `json:"text"`
}

func (a *app) sayPapers(views []paperView) error {
	if a.asJSON {
		return a.sayJSON(views)
	}
	for _, v := range views {
		a.say("%s", v.Name)
		for _, r := range v.Results {
			a.say("  %-15s  %s", r.Verdict, r.Text)
		}
	}
	return nil
}

// together lays single files to the one record that they can belong to.
func together(all []evidence) ([]evidence, error) {
	var out []evidence
	into := -1
	for _, e := range all {
		if e.what == aCertificate || e.what == aFolder {
			if into >= 0 { // more than one: single files stay by themselves
				into = -2
			}
			if into == -1 {
				into = len(out)
			}
		}
		if e.what != aFile {
			out = append(out, e)
		}
	}
	if into < 0 {
		into = -1
	}
	for _, e := range all {
		if e.what != aFile {
			continue
		}
		if into < 0 {
			into = len(out)
			out = append(out, e)
			continue
		}
		to := &out[into]
		if to.what == aFile && to.name != e.name {
			to.name += ", " + e.name
		}
		for _, n := range deedNames {
			place, data := to.files.Named(n), *e.files.Named(n)
			if data != nil && *place != nil && !bytes.Equal(*place, data) {
				return nil, usage("check them one after the other", "there are two different files of the sort of %s", n)
			}
			if data != nil {
				*place = data
			}
		}
	}
	return out, nil
}

// examine checks one thing.
func (a *app) examine(ctx context.Context, e evidence, reg *register) ([]deed.Result, error) {
	if e.broken != nil {
		return []deed.Result{{Verdict: deed.Fails, Text: e.broken.Error()}}, nil
	}
	switch e.what {
	case aSymbol:
		return a.examineSymbol(e.symbol, reg), nil
	case aDeposit:
		return a.examineDeposit(ctx, e.name)
	case aBook:
		return a.examineBook(ctx, e.name), nil
	}
	rep := deed.Verify(e.files)
	results := rep.Results
	if e.what != aFile && stripped(e.files, rep) {
		results = append(results, deed.Result{Verdict: deed.Fails, Text: partsMissing})
	}
	more, err := reg.judge(ctx, e.files, rep)
	return append(results, more...), err
}

const partsMissing = "the record names the studio's key, but its signature or what belongs to it is missing"

// stripped reports that a whole record lacks what a studio with a key puts to
// it.
func stripped(f deed.Files, rep deed.Report) bool {
	if rep.Record == nil || f.Signature != nil && f.Key != nil && f.Head != nil && f.Proof != nil {
		return false
	}
	ring, err := deed.Keys(rep.Record.Workshop.Keys)
	_, ok := ring.Current()
	return err == nil && ok
}

// examineBook verifies another book than the studio's own.
func (a *app) examineBook(ctx context.Context, name string) []deed.Result {
	b, err := book.OpenReadOnly(ctx, name)
	if err != nil {
		return []deed.Result{{Verdict: deed.Fails, Text: err.Error()}}
	}
	defer b.Close()
	r, err := b.Verify(ctx, a.progress("entries"))
	if err != nil {
		return []deed.Result{{Verdict: deed.Fails, Text: "the book: " + err.Error()}}
	}
	out := []deed.Result{{Verdict: deed.Holds, Text: fmt.Sprintf("the book: %d entries, root %x", r.Entries, r.Root[:])}}
	w, err := b.Workshop(ctx)
	if err != nil {
		return append(out, deed.Result{Verdict: deed.Fails, Text: err.Error()})
	}
	for _, p := range w.Panels {
		for _, ph := range record.Each[record.Photograph](p) {
			if err := photos.Check(name, ph.Body); err != nil {
				out = append(out, deed.Result{Verdict: deed.Fails, Text: fmt.Sprintf("E%d, photograph of %s: %v", ph.Seq, p.Number, err)})
			}
		}
	}
	return append(out, deed.Result{Verdict: deed.Unknown, Text: "whether all of it was replaced: only a signed head kept elsewhere tells (\"backleaf head compare\")"})
}

// maxProblems bounds how many problems of a deposit are told one by one.
const maxProblems = 20

// examineDeposit checks the bag and every record, certificate and book in it.
func (a *app) examineDeposit(ctx context.Context, dir string) ([]deed.Result, error) {
	report, err := bag.Validate(dir)
	if err != nil {
		return nil, err
	}
	var out []deed.Result
	say := func(v deed.Verdict, format string, args ...any) {
		out = append(out, deed.Result{Verdict: v, Text: fmt.Sprintf(format, args...)})
	}
	if report.Valid {
		say(deed.Holds, "the deposit is whole: %d files, all checksums (%s) hold", report.Files, strings.Join(report.Algorithms, ", "))
	}
	for i, p := range report.Problems {
		if i == maxProblems {
			say(deed.Fails, "and %d more", len(report.Problems)-i)
			break
		}
		say(deed.Fails, "%s", p)
	}
	for _, n := range report.Notes {
		say(deed.Unknown, "%s", n)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, fmt.Errorf("cannot read %w", err)
	}
	defer root.Close()
	keys := map[string]bool{}
	counts := map[evidenceKind]int{}
	var unsigned []string
	err = fs.WalkDir(root.FS(), "data", func(p string, d fs.DirEntry, err error) error {
		if err != nil || ctx.Err() != nil || !d.Type().IsRegular() {
			return ctx.Err() // what cannot be read was said above
		}
		e, ok, err := inDeposit(root, p)
		if err != nil || !ok {
			return err
		}
		counts[e.what]++
		var results []deed.Result
		switch {
		case e.broken != nil:
			results = []deed.Result{{Verdict: deed.Fails, Text: e.broken.Error()}}
		case e.what == aBook:
			results = a.examineBook(ctx, filepath.Join(dir, filepath.FromSlash(p)))
		default:
			rep := deed.Verify(e.files)
			results = rep.Results
			if rep.Key != nil {
				keys[rep.Key.Fingerprint().Groups()] = true
			}
			switch {
			case stripped(e.files, rep) && e.files.Signature == nil && e.files.Proof == nil:
				unsigned = append(unsigned, p)
			case stripped(e.files, rep):
				say(deed.Fails, "%s: %s", p, partsMissing)
			}
		}
		for _, r := range results {
			if r.Verdict == deed.Fails {
				say(deed.Fails, "%s: %s", p, r.Text)
			}
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	if counts[aFolder]+counts[aCertificate]+counts[aBook] > 0 {
		say(deed.Holds, "looked at one by one, and said above where they do not hold: %d records, %d certificates, %d books", counts[aFolder], counts[aCertificate], counts[aBook])
	}
	if _, err := root.Stat("data/journal.json"); err == nil {
		switch j, err := readDeposit(ctx, dir, root); {
		case err != nil:
			say(deed.Fails, "the journal: %v", err)
		case j.signed:
			say(deed.Holds, "the journal: %d entries; the book and the signed head say the same", len(j.entries))
		default:
			say(deed.Holds, "the journal: %d entries; the book says the same", len(j.entries))
		}
	}
	// A deposit may be made where the key is not. But then none is signed.
	for _, p := range unsigned {
		if len(unsigned) < counts[aFolder]+counts[aCertificate] {
			say(deed.Fails, "%s: %s", p, partsMissing)
		}
	}
	if n := len(unsigned); n > 0 && n == counts[aFolder]+counts[aCertificate] {
		say(deed.Unknown, "who made these records: none is signed, though the studio has a key")
	}
	for k := range keys {
		say(deed.Unknown, "whose key this is: %s", k)
	}
	say(deed.Unknown, "whether the deposit was made by the studio: checksums alone can be made anew by anyone")
	return out, nil
}

// inDeposit reads a file of a deposit if it is one that can be checked.
func inDeposit(root *os.Root, p string) (e evidence, ok bool, err error) {
	switch {
	case path.Base(p) == deed.RecordName:
		e = evidence{name: p, what: aFolder}
		if e.files, _, err = deedIn(root.FS(), path.Dir(p)); err != nil {
			return e, false, err
		}
		// The key may stand once for all records.
		for dir := path.Dir(p); e.files.Key == nil && dir != "."; dir = path.Dir(dir) {
			above, _, err := deedIn(root.FS(), path.Dir(dir))
			if err != nil {
				return e, false, err
			}
			e.files.Key = above.Key
		}
		return e, true, nil
	case path.Ext(p) == ".pdf":
		data, err := root.ReadFile(p)
		if err != nil {
			return e, false, fmt.Errorf("cannot read %w", err)
		}
		e = certificateIn(p, data)
		// A label or dossier is a PDF without a record.
		return e, e.files.Record != nil || bytes.Contains(data, []byte("/EmbeddedFiles")), nil
	case path.Ext(p) == ".sqlite":
		return evidence{name: p, what: aBook}, true, nil
	}
	return e, false, nil
}
