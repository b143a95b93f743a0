package register

import (
	"bytes"
	"context"
	"fmt"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/studio/verify"
	"backleaf/record/tell"
)

// sayDay prints the day of something for a reader.
func sayDay(w record.When) string {
	if t, ok := w.Exact(); ok {
		return t.Format("2 January 2006")
	}
	return w.Date().Words()
}

// certificate says what became of a certificate with this record.
func (j *judgement) certificate(p *record.Panel, digest string, lost bool) {
	all := record.Each[record.Issued](p)
	for _, c := range all {
		if c.Body.Record != digest {
			continue
		}
		j.say(deed.Holds, "the studio's book knows it: issued on %s (E%d)", sayDay(c.At), c.Seq)
		for _, x := range all {
			if x.Body.Replaces == c.Seq {
				j.say(deed.Fails, "as a certificate in force: it was replaced on %s (E%d)%s", sayDay(x.At), x.Seq,
					tell.English.Fill("{reason, if {: {reason}}}", record.With("reason", x.Body.Reason)))
			}
		}
		for _, x := range record.Each[record.Revoked](p) {
			if x.Body.Certificate == c.Seq {
				j.say(deed.Fails, "as a certificate in force: it was withdrawn on %s (E%d): %s", sayDay(x.At), x.Seq, x.Body.Because)
			}
		}
		return
	}
	if lost {
		j.say(deed.Fails, "the studio's book knows of no certificate with this record, and its key was declared lost")
		return
	}
	j.say(deed.Unknown, "whether the studio issued it: its book here knows of no certificate with this record")
}

// judgeRecord compares a record with the book.
func (r *Register) judgeRecord(ctx context.Context, j *judgement, rec deed.Record, digest string) error {
	if ok, err := r.begins(ctx, rec.Size, rec.Root); err != nil {
		return err
	} else if !ok {
		j.say(deed.Fails, "the journal in the book here does not begin with the one that the record speaks of")
	} else {
		j.say(deed.Holds, "the journal in the book here begins with the one that the record speaks of, unchanged")
	}
	stored, err := deed.Entries(ctx, r.book, rec.Number, 0)
	if err != nil {
		return err
	}
	known, shown := map[int64][]byte{}, map[int64]bool{}
	for _, e := range rec.Entries {
		shown[e.Seq+1] = true
	}
	var since []string
	corrected := false
	for _, s := range stored {
		known[s.Seq] = s.Bytes
		k := s.Entry.Kind()
		if s.Seq <= rec.Size && !shown[s.Seq] && (slices.Contains(s.Entry.Panels, rec.Number) || shown[s.Entry.Corrects()]) {
			j.say(deed.Fails, "that the record shows all: entry %d (%s) is not in it", s.Seq, k)
		}
		if c, ok := s.Entry.Body.(record.Issued); ok && c.Record == digest || s.Seq <= rec.Size || k == "studio" || strings.HasPrefix(string(k), "key-") {
			continue // not about the panel, or said already
		}
		since = append(since, fmt.Sprintf("%s (E%d)", strings.ReplaceAll(string(k), "-", " "), s.Seq))
		corrected = corrected || s.Entry.Corrects() != 0
	}
	for _, e := range rec.Entries {
		if b, ok := known[e.Seq+1]; ok && !bytes.Equal(b, e.Bytes) {
			j.say(deed.Fails, "entry %d of the record is another one in the book here", e.Seq+1)
		}
	}
	switch {
	case since == nil:
		j.say(verify.SinceThen, "nothing was written about this panel")
	case corrected:
		j.say(verify.SinceThen, "the record of this panel was corrected: %s", strings.Join(since, ", "))
	default:
		j.say(verify.SinceThen, "written about this panel: %s", strings.Join(since, ", "))
	}
	return nil
}
