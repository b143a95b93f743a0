package typed_test

import (
	"testing"

	"backleaf/record"
	"backleaf/record/studio/refuse"
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

// An amendment takes what the act takes, and refuses what no entry of that kind
// holds, whether it is set or taken away.
func TestChangeAsTheActTakes(t *testing.T) {
	for _, x := range []struct {
		body               record.Body
		field, typed, want string
	}{
		{record.PaintLayer{}, "pigment", "lead white=PW 1 + zinc white=PW 4", `{"pigments":[{"name":"lead white","colour_index":"PW 1"},{"name":"zinc white","colour_index":"PW 4"}]}`},
		{record.PaintLayer{}, "pigments", `[{"name":"lead white"}]`, `{"pigments":[{"name":"lead white"}]}`},
		{record.Sanded{}, "grit", "P600", `{"grit":600,"scale":"P"}`},
		{record.Sanded{}, "grit", "600", `{"grit":600}`},
		{record.Sanded{}, "grit", "", `{"grit":null,"scale":null}`},
		{record.Coat{}, "with", "", `{"mix":null}`},
		{record.Coat{}, "foo", "", "no-such-field"},
		{record.Coat{}, "foo", "1", "no-such-field"},
		{record.Coat{}, "price", "1", "no-such-field"},
		{record.HandedOver{}, "price", "1300 EUR", "kept-apart"},
		{record.HandedOver{}, "to", "", "kept-apart"},
		{record.Lot{Key: "tin"}, "price", "40", "price-of-lot"},
	} {
		r := reader(t)
		set, unset := []typed.Set{{Field: x.field, Typed: x.typed}}, []string(nil)
		if x.typed == "" {
			set, unset = nil, []string{x.field}
		}
		got := string(r.Change(record.Entry{Body: x.body}, set, unset))
		if err := r.Err(); err != nil {
			got = refuse.Code(err)
		}
		if got != x.want {
			t.Errorf("%s of %s: %s, want %s", x.field, x.body.Kind(), got, x.want)
		}
	}
}
