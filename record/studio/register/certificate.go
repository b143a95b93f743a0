package register

import (
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/studio/verify"
)

// certificate says what became of a certificate with this record. same says
// that the book here begins with the journal that the record speaks of.
func (r *Register) certificate(j *judgement, p *record.Panel, e verify.Evidence, rep deed.Report, digest string, same, lost bool) {
	all := record.Each[record.Issued](p)
	for _, c := range all {
		if c.Body.Record != digest {
			continue
		}
		j.say(deed.Holds, "certificate-known", record.With("when", c.At), record.With("entry", record.EntryRef(c.Seq)))
		for _, x := range all {
			if x.Body.Replaces == c.Seq {
				j.say(deed.Fails, "was-replaced", record.With("when", x.At), record.With("entry", record.EntryRef(x.Seq)), record.With("because", x.Body.Reason))
			}
		}
		for _, x := range record.Each[record.Revoked](p) {
			if x.Body.Certificate == c.Seq {
				j.say(deed.Fails, "was-withdrawn", record.With("when", x.At), record.With("entry", record.EntryRef(x.Seq)), record.With("because", x.Body.Because))
			}
		}
		if again, ok := record.Latest[record.UsedAgain](p); ok && c.Seq < again.Seq {
			j.say(deed.Fails, "earlier-work", record.With("when", again.At), record.With("entry", record.EntryRef(again.Seq)))
		}
		if e.Kind == verify.Certificate && c.Body.PDF != "" {
			if c.Body.PDF == e.Digest.String() {
				j.say(deed.Holds, "very-file")
			} else {
				j.say(deed.Unknown, "other-file", record.With("panel", p.Number), record.With("digest", c.Body.PDF))
			}
		}
		j.whereabouts(p)
		return
	}
	switch {
	case lost:
		j.say(deed.Fails, "certificate-of-lost-key")
	case e.Kind == verify.Certificate && rep.Record != nil && same && r.size > rep.Record.Size:
		// A certificate's entry is the next after the head that it carries.
		j.say(deed.Fails, "certificate-not-in-journal", record.With("entry", record.EntryRef(rep.Record.Size+1)))
	default:
		j.say(deed.Unknown, "certificate-unknown", record.With("as", record.Code(e.Kind)))
	}
	j.whereabouts(p)
}

// whereabouts says what a buyer must hear of a panel.
func (j *judgement) whereabouts(p *record.Panel) { *j = append(*j, verify.Whereabouts(p)...) }

// judgeFile looks a PDF up by its digest alone, and says what became of each
// panel on it.
func (r *Register) judgeFile(j *judgement, e verify.Evidence) {
	var on []record.Number
	var in []record.EntryRef
	var more judgement
	found := func(p *record.Panel, entry int64) {
		if on, in = append(on, p.Number), append(in, record.EntryRef(entry)); !slices.Contains(on[:len(on)-1], p.Number) {
			more.whereabouts(p)
		}
	}
	digest := ""
	for _, p := range r.shop.Panels {
		for _, l := range record.Each[record.LabelPrinted](p) {
			if l.Body.PDF == e.Digest.String() {
				found(p, l.Seq)
				digest = l.Body.Record
			}
		}
		for _, c := range record.Each[record.Issued](p) {
			if c.Body.PDF == e.Digest.String() {
				found(p, c.Seq)
			}
		}
	}
	if on == nil {
		j.say(deed.Unknown, "file-not-known")
		return
	}
	j.say(deed.Holds, "label-known", record.With("panels", slices.Compact(on)), record.With("entries", in))
	if len(in) == 1 && digest != "" { // a sheet has the digests of many
		j.digest(r.shop.Panel(on[0]), digest)
	}
	*j = append(*j, more...)
}

// judgeUnread says what the book knows of a record that only a later program
// can read: whose key signed it, and whether it was issued.
func (r *Register) judgeUnread(j *judgement, e verify.Evidence, rep deed.Report) {
	mark := "backleaf/" + r.shop.Studio.Mark
	switch {
	case rep.Head != nil && rep.Head.Origin != mark && !strings.HasPrefix(rep.Head.Origin, mark+"/"):
		j.say(deed.Unknown, "other-studio", record.With("mark", r.shop.Studio.Mark))
		return
	case rep.Key == nil:
	case r.ring.Standing(*rep.Key) == deed.Unrecorded:
		j.say(deed.Fails, "key-not-of-book")
		return
	case r.ring.Standing(*rep.Key) == deed.Lost: // when it was signed, nothing shows
		j.say(deed.Fails, "certificate-of-lost-key")
		return
	}
	digest := seal.DigestOf(e.Files.Record).String()
	for _, p := range r.shop.Panels {
		for _, c := range record.Each[record.Issued](p) {
			if c.Body.Record == digest {
				r.certificate(j, p, e, rep, digest, true, false)
				return
			}
		}
	}
	j.say(deed.Unknown, "certificate-unknown")
}
