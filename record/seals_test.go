package record_test

import (
	"testing"

	"backleaf/record"
)

// A face is called sealed only for a coat that seals: a ground drinks and lets
// damp through, and a coat of unknown purpose may be one.
func TestSeals(t *testing.T) {
	w, err := record.Fold([]record.Entry{
		{Seq: 1, Body: record.Material{Key: "sealer", Name: "sealer", Uses: []record.Use{"sealer", "adhesive", "size"}}},
		{Seq: 2, Body: record.Material{Key: "both", Name: "primer", Uses: []record.Use{"sealer", "ground"}}},
	})
	if err != nil {
		t.Fatal(err)
	}
	of := func(k record.Key, p record.Purpose) record.Layer {
		return record.Layer{Purpose: p, Coating: &record.Coating{Mix: []record.Part{{Material: k}}}}
	}
	cloth := of("sealer", "")
	cloth.Cloth = &record.ClothLaid{}
	for _, c := range []struct {
		what string
		l    record.Layer
		want record.Answer
	}{
		{"sealer", of("both", record.Sealer), record.Yes},
		{"adhesive", of("sealer", record.Adhesive), record.Yes},
		{"ground", of("both", record.Ground), record.No},
		{"purpose open, seals whatever it was for", of("sealer", ""), record.Yes},
		{"purpose open, may be a ground", of("both", ""), record.Unknown},
		{"purpose open, material unknown", of("tin", ""), record.Unknown},
		{"purpose recorded as unknown", of("sealer", record.Unknown), record.Unknown},
		{"cloth", cloth, record.No},
		{"nothing", record.Layer{}, record.No},
	} {
		if got := w.Seals(c.l); got != c.want {
			t.Errorf("%s: seals %v, want %v", c.what, got, c.want)
		}
	}
}
