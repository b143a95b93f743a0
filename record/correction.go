package record

import (
	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

// Amended changes fields of an earlier entry: a JSON merge patch (RFC 7396)
// over its body, in which null takes a field away. The earlier entry stays as
// it was written. With panels, the change holds for those panels only.
type Amended struct {
	Entry   int64          `json:"entry"`
	Because string         `json:"because"`
	Change  jsontext.Value `json:"change"`
}

// Withdrawn takes an earlier entry out of effect; with panels, for those
// panels only. Both stay readable.
type Withdrawn struct {
	Entry   int64  `json:"entry"`
	Because string `json:"because"`
}

func (Amended) Kind() Kind   { return "amended" }
func (Withdrawn) Kind() Kind { return "withdrawn" }

// sharesOut reports that it says an amount in all anew.
func (a Amended) sharesOut() bool {
	var change struct {
		Total jsontext.Value `json:"wet_total"`
	}
	return json.Unmarshal(a.Change, &change) == nil && change.Total != nil
}

// Correction is what a later entry did to an earlier one, told for a reader.
type Correction struct {
	Seq     int64 // the correcting entry
	Of      int64 // the entry it corrects
	Kind    Kind  // of that entry
	Written When
	Because string
	Amends  bool     // else the entry was withdrawn
	Changes []Change // by field; none where this program cannot read the change
}

// Withdrawal reports that the entry was taken out of effect.
func (c Correction) Withdrawal() bool { return !c.Amends }

// Change is one field before and after, as JSON text; empty means absent.
type Change struct{ Field, Was, Now string }
