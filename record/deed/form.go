package deed

import (
	"bytes"
	"cmp"
	"fmt"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/form"
	"backleaf/record/seal"
)

const version = "record/1"

// finding is what a rule said about the panel on the day of issue.
type finding struct {
	Entries  []int64        `json:"entries,omitzero"` // by which it was judged
	Outcome  check.Outcome  `json:"outcome"`
	Remedy   record.Said    `json:"remedy,omitzero"`
	Rule     string         `json:"rule"`
	Said     []record.Said  `json:"said"`
	Severity check.Severity `json:"severity"`
}

// file is record.json.
type file struct {
	Backleaf    string           `json:"backleaf"`
	Corrections []correction     `json:"corrections"`
	Effective   []jsontext.Value `json:"effective"`
	Entries     []jsontext.Value `json:"entries"`
	Findings    []finding        `json:"findings"`
	Gaps        []gap            `json:"gaps"`
	Head        head             `json:"head"`
	Issued      record.When      `json:"issued"`
	Number      record.Number    `json:"number"`
	Photographs []photograph     `json:"photographs"`
	Studio      studio           `json:"studio"`
}

type head struct {
	Root seal.Hash `json:"root"` // base64
	Size int64     `json:"size"`
}

type studio struct {
	Journal   string   `json:"journal,omitzero"`
	MadeBy    []string `json:"made_by,omitzero"`
	Maker     string   `json:"maker"`
	Mark      string   `json:"mark"`
	PaintedBy []string `json:"painted_by,omitzero"`
	Place     string   `json:"place,omitzero"`
}

type correction struct {
	Because   string      `json:"because"`
	Changes   []change    `json:"changes,omitzero"` // absent: the entry was withdrawn
	Entry     int64       `json:"entry"`            // the correcting one
	Of        int64       `json:"of"`               // the corrected one
	Withdrawn bool        `json:"withdrawn,omitzero"`
	Written   record.When `json:"written"`
}

type change struct {
	Field string         `json:"field"`
	Now   jsontext.Value `json:"now,omitzero"` // absent: taken away
	Was   jsontext.Value `json:"was,omitzero"` // absent: it was not recorded
}

type gap struct {
	Entry   int64          `json:"entry,omitzero"`
	Topic   record.Topic   `json:"topic"`
	Unknown bool           `json:"unknown,omitzero"` // recorded as unknown, not just absent
	Values  []record.Value `json:"values,omitzero"`
	What    string         `json:"what"` // a code
}

type photograph struct {
	Entry  int64            `json:"entry"`
	Role   record.PhotoRole `json:"role"`
	SHA256 string           `json:"sha256"`
	Type   string           `json:"media_type"`
}

// bytes returns the canonical bytes.
func (f file) bytes() ([]byte, error) {
	data, err := json.Marshal(f)
	if err != nil {
		return nil, err
	}
	v := jsontext.Value(data)
	if err := v.Canonicalize(); err != nil {
		return nil, err
	}
	if len(v) > seal.MaxRecordBytes {
		return nil, fmt.Errorf("the record is larger than %d bytes", seal.MaxRecordBytes)
	}
	return v, nil
}

// derive fills in what follows from the entries.
func (f *file) derive(w *record.Workshop, p *record.Panel, entries []record.Entry) error {
	f.Studio = studio{w.Studio.Journal, names(w.MadeBy(p)), w.Studio.Maker, w.Studio.Mark, names(w.PaintedBy(p)), w.Studio.Place}
	standing := map[int64]record.Event{}
	for _, e := range p.Events {
		standing[e.Seq] = e
	}
	for _, e := range entries {
		if ev, ok := w.Standing(e.Seq); ok {
			standing[e.Seq] = ev
		}
	}
	f.Corrections, f.Effective, f.Photographs = nil, nil, nil
	for _, c := range p.Corrections {
		f.Corrections = append(f.Corrections, told(c))
	}
	for _, e := range entries {
		ev, ok := standing[e.Seq]
		if !ok || len(ev.Corrections) == 0 {
			continue
		}
		now := record.Entry{Seq: ev.Seq, At: ev.At, Written: ev.Written, Makers: ev.Makers, StudioAs: ev.StudioAs, Imported: ev.Imported, Body: ev.Body}
		if len(e.Panels) > 0 {
			now.Panels = []record.Number{p.Number}
		}
		data, err := form.Write(now)
		if err != nil {
			return fmt.Errorf("entry %d as corrected: %w", e.Seq, err)
		}
		f.Effective = append(f.Effective, data)
	}
	for _, ph := range record.Each[record.Photograph](p) {
		f.Photographs = append(f.Photographs, photograph{ph.Seq, ph.Body.Role, ph.Body.SHA256, ph.Body.Type})
	}
	return nil
}

func names(makers []record.Maker) []string {
	var out []string
	for _, m := range makers {
		out = append(out, cmp.Or(m.Name, string(m.Key)))
	}
	return out
}

func told(c record.Correction) correction {
	t := correction{Because: c.Because, Entry: c.Seq, Of: c.Of, Withdrawn: c.Withdrawal(), Written: c.Written}
	for _, ch := range c.Changes {
		t.Changes = append(t.Changes, change{ch.Field, value(ch.Now), value(ch.Was)})
	}
	return t
}

// value is JSON text as a member, nil if there is none.
func value(text string) jsontext.Value {
	if text == "" {
		return nil
	}
	return jsontext.Value(text)
}

// sameAs reports that what follows from the entries is the same in both.
func (f file) sameAs(g file) bool {
	f.Findings, g.Findings = nil, nil
	f.Gaps, g.Gaps = nil, nil
	a, err := f.bytes()
	b, err2 := g.bytes()
	return err == nil && err2 == nil && bytes.Equal(a, b)
}
