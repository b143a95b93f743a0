package trade_test

import (
	"testing"

	"backleaf/record"
	"backleaf/record/trade"
)

func paint(medium record.PaintMedium, ps ...record.Pigment) trade.Made {
	l := &record.PaintLayer{Medium: medium, Pigments: ps}
	return trade.Made{Layer: record.Layer{Seq: 7, Face: record.Front, Paint: l, Coating: &l.Coating}}
}

func coat(purpose record.Purpose, ms ...record.Material) trade.Made {
	c, of := &record.Coating{}, []*record.Material{}
	for i := range ms {
		c.Mix, of = append(c.Mix, record.Part{Parts: 1}), append(of, &ms[i])
	}
	return trade.Made{Layer: record.Layer{Seq: 3, Face: record.Front, Purpose: purpose, Coating: c}, Materials: of, All: true}
}

func TestHarmful(t *testing.T) {
	harmless := record.Material{Key: "size", Binder: record.Acrylic, Toxic: record.No}
	silent := record.Material{Key: "primer", Binder: record.Acrylic}
	tin := record.Material{Key: "tin", Toxic: record.Yes}
	white := record.Pigment{Name: "titanium white", Index: "PW 6"}
	for _, c := range []struct {
		what string
		made trade.Made
		want record.Answer
	}{
		{"lead by index", paint("oil", record.Pigment{Index: "pw1"}), record.Yes},
		{"lead by a German name", paint("oil", record.Pigment{Name: "Bleiweiß"}), record.Yes},
		{"all told and harmless", paint("oil", white), record.No},
		{"one colour by name only", paint("oil", white, record.Pigment{Name: "ultramarine"}), record.Unknown},
		{"no colours written down", paint("oil"), record.Unknown},
		{"an imitation", paint("oil", record.Pigment{Name: "cadmium red hue"}), record.Unknown},
		{"maker says harmless", coat(record.Sizing, harmless), record.No},
		{"maker says nothing", coat(record.Sizing, silent), record.Unknown},
		{"one of two says nothing", coat(record.Sizing, harmless, silent), record.Unknown},
		{"one of two harms", coat(record.Sizing, harmless, tin), record.Yes},
		{"said to be harmless, and lead", coat(record.Ground, record.Material{Toxic: record.No, Pigments: []record.Pigment{{Name: "blanc de plomb"}}}), record.Yes},
		{"said to be harmless, name in doubt", coat(record.Ground, record.Material{Toxic: record.No, Pigments: []record.Pigment{{Name: "flake white"}}}), record.Unknown},
		{"said to be harmless, name unknown", coat(record.Ground, record.Material{Toxic: record.No, Pigments: []record.Pigment{{Name: "house grey"}}}), record.No},
	} {
		d := trade.DangersOf([]trade.Made{c.made})
		if d.Harmful != c.want {
			t.Errorf("%s: harmful %s, want %s", c.what, d.Harmful, c.want)
		}
		if open := len(d.Open) > 0; open != (c.want == record.Unknown) {
			t.Errorf("%s: open %v", c.what, d.Open)
		}
	}
}

// What a panel holds does not get less with another layer, and is ruled out
// only where every layer rules it out.
func TestDangersAdd(t *testing.T) {
	lead, clean, silent := paint("oil", record.Pigment{Index: "PW 1"}), paint("acrylic", record.Pigment{Index: "PW 6"}), paint("oil")
	for _, c := range []struct {
		layers []trade.Made
		want   record.Answer
	}{
		{nil, record.Unknown}, {[]trade.Made{clean}, record.No}, {[]trade.Made{clean, silent}, record.Unknown},
		{[]trade.Made{clean, silent, lead}, record.Yes}, {[]trade.Made{clean, lead}, record.Yes},
	} {
		if got := trade.DangersOf(c.layers).Harmful; got != c.want {
			t.Errorf("%d layers: %s, want %s", len(c.layers), got, c.want)
		}
	}
}

// A layer that was taken off whole counts no more; one of which nobody knows
// how much is left may still be there.
func TestTakenOff(t *testing.T) {
	for extent, want := range map[record.Extent]record.Answer{"reduced": record.Yes, "in-part": record.Yes, record.Unknown: record.Unknown, "": record.Unknown} {
		lead := paint("oil", record.Pigment{Index: "PW 1"})
		lead.Layer.Losses = []record.Loss{{Seq: 9, Extent: extent}}
		d := trade.DangersOf([]trade.Made{lead})
		if d.Harmful != want {
			t.Errorf("lead taken off, extent %q: harmful %s, want %s", extent, d.Harmful, want)
		}
		if d.Found[0].Risk != trade.Risk(trade.Lead) || d.Found[0].Sure != (want == record.Yes) {
			t.Errorf("lead taken off, extent %q: %+v", extent, d.Found[0])
		}
	}
}
