package register

import (
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/pattern"
)

// beginning is how a digest begins, in groups as a label prints it.
var beginning = pattern.Of(`\b(?:[0-9a-f]{4} ){3}[0-9a-f]{4}\b`)

// digestIn judges the digest in the text of a label, if there is one.
func (j *judgement) digestIn(p *record.Panel, text string) {
	if begins := beginning().FindString(strings.ToLower(text)); begins != "" {
		j.digest(p, strings.ReplaceAll(begins, " ", ""))
	}
}

// digest says of which record the digest on a label is, and how that relates
// to the certificate's: both tell the record as it stood when they were made.
func (j *judgement) digest(p *record.Panel, begins string) {
	of := func(sha256 string) bool { return strings.HasPrefix(sha256, begins) }
	issued := record.Each[record.Issued](p)
	if i := slices.IndexFunc(issued, func(c record.Done[record.Issued]) bool { return of(c.Body.Record) }); i >= 0 {
		j.say(deed.Holds, "digest-of-certificate", record.With("when", issued[i].At), record.With("entry", record.EntryRef(issued[i].Seq)))
		return
	}
	printed := record.Each[record.LabelPrinted](p)
	i := slices.IndexFunc(printed, func(l record.Done[record.LabelPrinted]) bool { return of(l.Body.Record) })
	if i < 0 {
		j.say(deed.Unknown, "digest-of-none")
		return
	}
	said := []record.Value{record.With("when", printed[i].At), record.With("entry", record.EntryRef(printed[i].Seq))}
	if c, ok := p.Certificate(); ok {
		said = append(said, record.With("certificate", record.EntryRef(c.Seq)))
	}
	j.say(deed.Holds, "digest-of-label", said...)
}
