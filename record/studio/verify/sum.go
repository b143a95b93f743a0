package verify

import (
	"cmp"
	"slices"

	"backleaf/record"
	"backleaf/record/deed"
)

// A standing is one of the things that the first line says of a paper.
type standing struct {
	code   string   // "sum-" and this is the code of its words
	from   []string // codes of the results that it follows from
	good   bool     // it follows from results that hold, and means that something was verified
	became bool     // it is what became of a good paper
}

// standings are in the order in which they are said, the worst first. What
// fails and is not among them is altered.
var standings = []standing{
	{"altered", nil, false, false},
	{"other-panel", []string{"symbol-of-other"}, false, false},
	{"not-issued", []string{"other-journal", "key-not-of-book", "panel-not-in-book", "certificate-not-in-journal", "certificate-of-lost-key", "signed-after-retired"}, false, false},
	{"withdrawn", []string{"was-withdrawn", "listed-withdrawn"}, false, true},
	{"replaced", []string{"was-replaced", "listed-replaced"}, false, true},
	{"stolen", []string{"panel-stolen", "listed-stolen"}, false, true},
	{"lost", []string{"panel-lost", "listed-lost"}, false, true},
	{"discarded", []string{"panel-discarded", "listed-discarded"}, false, true},
	{"earlier", []string{"earlier-work", "listed-earlier"}, false, true},
	{"page", []string{"page-as-certificate", "listed-page"}, false, true},
	{"files-bad", []string{"kept-file-bad", "kept-mark-bad", "kept-photographs", "kept-papers", "key-file-other", "key-file-unreadable"}, false, false},
	{"anyone-signs", []string{"anyone-signs"}, false, false},
	{"parts-since", []string{"part-since"}, false, false},
	{"other-link", []string{"other-link"}, false, false},
	{"key-without-heir", []string{"key-without-heir"}, false, false},
	{"key-beside", []string{"key-beside"}, false, false},
	{"letters-alike", []string{"letters-alike"}, false, false},
	{"dated-ahead", []string{"dated-ahead"}, false, false},
	{"other-studio", []string{"other-studio"}, false, false},
	{"other-status", []string{"status-of-other-key", "status-without-key"}, false, false},
	{"not-listed", []string{"listed-not"}, false, false},
	{"status-older", []string{"status-before-paper"}, false, false},
	{"key-lost-since", []string{"key-lost-since"}, false, false},
	{"parted", []string{"histories-part"}, false, false},
	{"unknown-here", []string{"certificate-unknown"}, false, false},
	{"book-before-status", []string{"book-before-status"}, false, false},
	{"book-older", []string{"book-older"}, false, false},
	{"other-file", []string{"other-file"}, false, false},
	{"appended", []string{"appended"}, false, false},
	{"strays", []string{"strays"}, false, false},
	{"newer", []string{"record-newer", "record-partly-newer", "part-newer", "whole-book-newer"}, false, false},
	{"corrected", []string{"record-corrected"}, false, false},
	{"title-changed", []string{"title-changed"}, false, false},
	{"varnish-removed", []string{"varnish-removed"}, false, false},
	{"words-differ", []string{"deposit-made-otherwise"}, false, false},
	{"key-unused", []string{"deposit-key-unused"}, false, false},
	{"signed", []string{"signature-good", "statement-good", "head-signed", "deposit-signed"}, true, false},
	{"book-holds", []string{"whole-book-holds"}, true, false},
	{"known", []string{"symbol-known", "label-known", "book-begins-with-head", "certificate-known"}, true, false},
	{"listed", []string{"listed-issued"}, true, false},
	{"whole", []string{"deposit-whole"}, true, false},
	{"not-signed", []string{"record-not-signed", "deposit-not-signed"}, false, false},
}

// tellsNothing are the results that say why nothing can be said about a thing.
var tellsNothing = []string{"no-paper", "pdf-without-record", "private-key", "folder"}

// sum says in one line all that applies, the worst first, and whether anything
// was verified at all.
func sum(results []deed.Result) (line []record.Said, any bool) {
	first := map[int]record.Said{}
	idle, failed, nothing := false, false, record.Say("sum-not-known")
	for _, r := range results {
		if slices.Contains(tellsNothing, r.Said.Code) {
			nothing = record.Say("sum-"+r.Said.Code, r.Said.Values...)
		}
		failed = failed || r.Verdict == deed.Fails
		idle = idle || r.Said.Code == "histories-part" || r.Said.Code == "deposit-key-unused"
		i := slices.IndexFunc(standings, func(s standing) bool {
			return slices.Contains(s.from, r.Said.Code) && s.good == (r.Verdict == deed.Holds)
		})
		switch {
		case i < 0 && r.Verdict != deed.Fails:
			continue
		case i < 0:
			i = 0
		}
		if _, there := first[i]; !there {
			first[i] = record.Say("sum-"+standings[i].code, r.Said.Values...)
		}
	}
	_, altered := first[0]
	other := slices.ContainsFunc(results, func(r deed.Result) bool { return r.Said.Code == "other-file" })
	for i, s := range standings {
		said, there := first[i]
		if !there || altered && (s.good || s.code == "newer") || other && s.code == "known" {
			continue // the signature of a part is no comfort, a later program no excuse; a record is no page
		}
		line = append(line, said)
		any = any || s.good && !idle
	}
	if !any && !failed && !idle {
		line = append(line, nothing)
	}
	return line, any && !failed
}

// says repeats what a record or a statement says, for a person to compare with
// the page and the panel.
func says(rep deed.Report) (out []record.Said) {
	say := func(code string, values ...record.Value) { out = append(out, record.Say("says-"+code, values...)) }
	switch r, s := rep.Record, rep.Statement; {
	case r != nil:
		d := r.Panel.Description()
		say("number", record.With("value", r.Number))
		say("title", record.With("value", d.Title))
		say("maker", record.With("value", names(r.Workshop, r.Panel)))
		say("size", record.With("value", r.Panel.Size()))
		say("made", record.With("value", d.Made))
		var media []record.PaintMedium
		for _, l := range r.Panel.BuildUp(record.Front) {
			if l.Paint != nil && !slices.Contains(media, l.Paint.Medium) {
				media = append(media, l.Paint.Medium)
			}
		}
		say("medium", record.With("own", d.Medium), record.With("value", media))
		for _, ph := range record.Each[record.Photograph](r.Panel) {
			say("photograph", record.With("role", ph.Body.Role), record.With("value", ph.Body.SHA256))
		}
		say("issued", record.With("value", r.Issued))
	case s != nil:
		say("number", record.With("value", record.Number(s.Number)))
		say("title", record.With("value", s.Title))
		say("maker", record.With("value", []string{s.Maker}))
		say("size", record.With("value", s.Size))
		say("made", record.With("value", s.Made))
		say("issued", record.With("value", s.Issued))
	}
	return out
}

// names are those who made a panel; the studio where nobody is named.
func names(w *record.Workshop, p *record.Panel) (out []string) {
	for _, m := range w.MadeBy(p) {
		out = append(out, cmp.Or(m.Name, string(m.Key)))
	}
	if out == nil {
		out = []string{w.Studio.Maker}
	}
	return out
}
