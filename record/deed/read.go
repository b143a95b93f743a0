package deed

import (
	"bytes"
	"errors"
	"fmt"
	"strings"

	"github.com/go-json-experiment/json"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/form"
	"backleaf/record/seal"
)

// ErrNewer: the record has a version that this program does not know.
var ErrNewer = errors.New("the record is newer than this program")

// Record is a record as read.
type Record struct {
	Number   record.Number
	Issued   record.When
	Size     int64     // entries of the journal at that moment
	Root     seal.Hash // of its hash tree
	Findings []check.Finding
	Gaps     []record.Gap
	Entries  []seal.Entry // as a proof counts them, from 0
	Workshop *record.Workshop
	Panel    *record.Panel // folded from the entries
	Newer    bool          // a later program made it: what it says may be out of date here
}

// Read reads record.json in its one spelling and folds its entries. It refuses
// a record whose parts do not fit together. Whether it is signed and by whom,
// and whether the entries stand in a journal, is for [Verify].
func Read(data []byte) (Record, error) {
	r, err := read(data)
	if err != nil {
		return Record{}, fmt.Errorf("not a record that holds together: %w", err)
	}
	return r, nil
}

func read(data []byte) (Record, error) {
	if len(data) > seal.MaxRecordBytes {
		return Record{}, fmt.Errorf("it is larger than %d bytes", seal.MaxRecordBytes)
	}
	if !bytes.HasPrefix(data, []byte(seal.RecordPrefix)) {
		return Record{}, fmt.Errorf("it does not begin with %s", seal.RecordPrefix)
	}
	if v, _, _ := strings.Cut(string(data[len(seal.RecordPrefix):]), `"`); v != "1" {
		return Record{}, ErrNewer
	}
	if err := form.Canonical(data, seal.MaxRecordBytes); err != nil {
		return Record{}, err
	}
	var f file
	if err := json.Unmarshal(data, &f); err != nil {
		return Record{}, fmt.Errorf("%w: %w", ErrNewer, err)
	}
	if _, ok := f.Issued.Exact(); !ok {
		return Record{}, errors.New("its time of issue is not exact")
	}
	r := Record{Number: f.Number, Issued: f.Issued, Size: f.Head.Size, Root: f.Head.Root}
	for _, x := range f.Findings {
		r.Findings = append(r.Findings, check.Finding{Rule: x.Rule, Outcome: x.Outcome, Severity: x.Severity, Said: x.Said, Entries: x.Entries, Remedy: x.Remedy})
	}
	for _, g := range f.Gaps {
		r.Gaps = append(r.Gaps, record.Gap{Topic: g.Topic, Said: record.Said{Code: g.What, Values: g.Values}, Seq: g.Entry, Unknown: g.Unknown})
	}
	entries, err := bounded(f.Entries)
	if err != nil {
		return Record{}, err
	}
	for i, e := range entries {
		if e.Seq > f.Head.Size {
			return Record{}, fmt.Errorf("entry %d lies beyond the head of %d entries", e.Seq, f.Head.Size)
		}
		r.Entries = append(r.Entries, seal.Entry{Seq: e.Seq - 1, Bytes: f.Entries[i]})
	}
	if r.Workshop, err = record.Fold(entries, f.Number); err != nil {
		return Record{}, err
	}
	if r.Panel = r.Workshop.Panel(f.Number); r.Panel == nil {
		return Record{}, fmt.Errorf("its entries do not speak of %s", f.Number)
	}
	if _, err := record.ParseNumber(string(f.Number), r.Workshop.Studio.NAAN); err != nil {
		return Record{}, err
	}
	if again, err := f.bytes(); err != nil || !bytes.Equal(again, data) {
		r.Newer = true // it has members that this program does not know
	}
	if r.Newer = r.Newer || len(r.Panel.Newer) > 0; r.Newer {
		return r, nil // what follows from entries that cannot be read cannot be told again
	}
	again := f
	if err := again.derive(r.Workshop, r.Panel, entries); err != nil {
		return Record{}, err
	}
	if !again.sameAs(f) {
		return Record{}, errors.New("what it tells of studio, corrections or photographs does not follow from its entries")
	}
	return r, nil
}
