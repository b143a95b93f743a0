package stock_test

import (
	"path/filepath"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio/stock"
)

// What is left, worked out by hand: a volume is its mass over the density, a
// share of water is no part of the tin, a bolt of 1.5 m gives a panel of 30 ×
// 40 cm 80 mm of its length, and a sheet of 1 m² holds 8 1/3 of them.
func TestLeft(t *testing.T) {
	coat := func(c record.Coating) record.Coat { return record.Coat{Faces: []record.Face{record.Front}, Coating: c} }
	tin := []record.Part{{Parts: 1, Material: "sealer", Lot: "tin"}}
	for _, x := range []struct {
		name  string
		acts  []record.Body
		lot   record.Body // that names the lot asked for
		want  string
		warns bool
	}{
		{"nothing taken", nil, coat(record.Coating{Mix: tin}), "lot-left 1 L", false},
		{"260 g at 1.04 g/mL are 0.25 L", []record.Body{coat(record.Coating{Mix: tin, WetTotal: amount(t, "260 g")})}, nil, "lot-left 0.75 L", false},
		{"of each of two panels", []record.Body{coat(record.Coating{Mix: tin, WetEach: amount(t, "125 mL")})}, nil, "lot-left 0.75 L", false},
		{"a quarter of water added: 4 parts of 5 are of the tin", []record.Body{coat(record.Coating{Mix: tin, WetTotal: amount(t, "250 mL"), Thinned: of[record.Percent](t, "25 %")})}, nil, "lot-left 0.8 L", false},
		{"one part of two, by volume", []record.Body{coat(record.Coating{Mix: append([]record.Part{{Parts: 1, Material: "sealer", Lot: "other"}}, tin...), WetTotal: amount(t, "500 mL")})}, nil, "lot-left 0.75 L", false},
		{"an amount that nobody wrote down", []record.Body{coat(record.Coating{Mix: tin})}, nil, "lot-left-most 1 L", false},
		{"more than there was", []record.Body{coat(record.Coating{Mix: tin, WetTotal: amount(t, "1.2 kg")})}, nil, "", true},
		{"cloth", []record.Body{record.ClothLaid{Faces: []record.Face{record.Front}, Cloth: "linen", ClothLot: "bolt"}}, nil, "lot-left-most 4.84 m", false},
		{"the same cloth laid again", []record.Body{record.ClothLaid{Faces: []record.Face{record.Front}, Cloth: "linen", ClothLot: "bolt"},
			record.ClothLaid{Faces: []record.Face{record.Front}, Cloth: "linen", ClothLot: "bolt", AgainOf: 10}}, nil, "lot-left-most 4.84 m", false},
		{"sheets", nil, record.Cut{Board: "ply", Lot: "sheets"}, "lot-left-most 1.76 sheets", false},
	} {
		t.Run(x.name, func(t *testing.T) {
			ctx := t.Context()
			b, err := book.Create(ctx, filepath.Join(t.TempDir(), "studio.sqlite"))
			if err != nil {
				t.Fatal(err)
			}
			defer b.Close()
			panels := []record.Number{number(t, 1), number(t, 2)}
			es := []record.Entry{{Body: record.Studio{Maker: "Anna", Mark: "KB"}},
				{Body: record.Material{Key: "sealer", Name: "sealer", Uses: []record.Use{"sealer"}, Density: of[record.Density](t, "1.04 g/mL")}},
				{Body: record.Material{Key: "linen", Name: "linen", Uses: []record.Use{"cloth"}, Cloth: record.Cloth{Width: of[record.Length](t, "1.5 m")}}},
				{Body: record.Material{Key: "ply", Name: "ply", Uses: []record.Use{"board"}}},
				{Body: record.Lot{Key: "tin", Material: "sealer", Quantity: amount(t, "1 L")}},
				{Body: record.Lot{Key: "other", Material: "sealer"}},
				{Body: record.Lot{Key: "bolt", Material: "linen", Quantity: amount(t, "5 m")}},
				{Body: record.Lot{Key: "sheets", Material: "ply", Quantity: amount(t, "2 sheets"), Sheet: of[record.Size](t, "1 x 1 m")}},
				{Panels: panels, Body: record.Cut{Batch: "a", Size: of[record.Size](t, "30 x 40 cm"), Board: "ply", Lot: "sheets"}}}
			for _, a := range x.acts {
				es = append(es, record.Entry{Panels: panels, Body: a})
			}
			at := time.Date(2026, 5, 2, 12, 0, 0, 0, time.UTC)
			for i := range es {
				es[i].At = record.Moment(at)
			}
			if _, err := b.Append(ctx, at, es...); err != nil {
				t.Fatal(err)
			}
			w, err := b.Workshop(ctx)
			if err != nil {
				t.Fatal(err)
			}
			if x.lot == nil {
				x.lot = x.acts[0]
			}
			said, warned, err := stock.Left(ctx, b, w, x.lot)
			if err != nil {
				t.Fatal(err)
			}
			got := ""
			if len(said) > 0 {
				got = said[0].Code + " " + said[0].Value("left").Text()
			}
			if got != x.want || (len(warned) > 0) != x.warns {
				t.Errorf("%q, %v, want %q", got, warned, x.want)
			}
		})
	}
}

func number(t *testing.T, serial int) record.Number {
	t.Helper()
	n, err := record.NewNumber("KB", 2026, serial, "")
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func of[T any, P interface {
	*T
	UnmarshalText([]byte) error
}](t *testing.T, s string) (v T) {
	t.Helper()
	if err := P(&v).UnmarshalText([]byte(s)); err != nil {
		t.Fatal(err)
	}
	return v
}

func amount(t *testing.T, s string) record.Amount { t.Helper(); return of[record.Amount](t, s) }
