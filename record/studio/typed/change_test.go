package typed_test

import (
	"testing"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

// A lot of the shelf is a cloth or board in an amendment as it is at the bench.
func TestChangeToLot(t *testing.T) {
	r := reader(t)
	for field, body := range map[string]record.Body{"cloth": record.ClothLaid{}, "board": record.Cut{}} {
		want := `{"` + field + `":"sealer","` + field + `_lot":"s1"}`
		if got := r.Change(record.Entry{Body: body}, []typed.Set{{Field: field, Typed: "s1"}}, nil); string(got) != want || r.Err() != nil {
			t.Errorf("%s: %s, %v", field, got, r.Err())
		}
	}
}
