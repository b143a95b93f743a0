package record_test

import (
	"encoding"
	"strings"
	"testing"

	"backleaf/record"
)

// amount is what all measured values can do.
type amount interface {
	encoding.TextUnmarshaler
	String() string
	IsZero() bool
	IsUnknown() bool
	Number() string
	Unit() string
	Units() []string
}

// base returns an amount in its base unit, as one of the typed methods does.
func base(a amount) (int64, bool) {
	switch a := a.(type) {
	case *record.Length:
		return a.Micrometers()
	case *record.Percent:
		return a.Millipercent()
	case *record.Density:
		return a.MilligramsPerMilliliter()
	case *record.Duration:
		return a.Seconds()
	case *record.Temperature:
		return a.Millicelsius()
	case *record.MassPerArea:
		return a.MilligramsPerSquareMeter()
	case *record.ThreadCount:
		return a.ThreadsPerMeter()
	case *record.Amount:
		for _, f := range []func() (int64, bool){a.Milligrams, a.Microliters, a.Micrometers, a.SquareMillimeters, a.Sheets} {
			if n, ok := f(); ok {
				return n, ok
			}
		}
	}
	return 0, false
}

var amounts = map[string]func() amount{
	"length": func() amount { return new(record.Length) },
	"amount": func() amount { return new(record.Amount) }, "share": func() amount { return new(record.Percent) },
	"density": func() amount { return new(record.Density) }, "time": func() amount { return new(record.Duration) },
	"temperature": func() amount { return new(record.Temperature) }, "cloth": func() amount { return new(record.MassPerArea) },
	"threads": func() amount { return new(record.ThreadCount) },
}

// The inch is 25.4 mm, the pound 0.453 592 37 kg, the US gallon 231 cubic
// inches, all by definition (NIST Handbook 44, appendix C); degrees Fahrenheit
// are 5/9 (F - 32) degrees Celsius. The rest is arithmetic by hand.
func TestAmounts(t *testing.T) {
	for _, c := range []struct {
		of, in, text string
		base         int64
	}{
		{"length", "1 in", "1 in", 25400}, {"length", "3.2 mm", "3.2 mm", 3200}, {"length", "3,2mm", "3.2 mm", 3200},
		{"length", "3.20 mm", "3.20 mm", 3200}, {"length", ".5 mm", "0.5 mm", 500}, {"length", "007 mm", "7 mm", 7000}, {"length", "0.125 in", "0.125 in", 3175},
		{"length", "0,125 in", "0.125 in", 3175}, {"length", "1/8 in", "1/8 in", 3175}, {"length", `1/8"`, "1/8 in", 3175}, {"length", "8 1/2 in", "8 1/2 in", 215900},
		{"length", `8-1/2"`, "8 1/2 in", 215900}, {"length", "8½″", "8 1/2 in", 215900}, {"length", "½ in", "1/2 in", 12700}, {"length", "0 1/2 in", "1/2 in", 12700},
		{"length", "12/8 inches", "12/8 in", 38100}, {"length", "1 ft", "1 ft", 304800}, {"length", "40 cm", "40 cm", 400000}, {"length", "1.5 m", "1.5 m", 1500000},
		{"length", "1 mil", "1 mil", 25}, {"length", "2 mils", "2 mil", 51}, {"length", "40 um", "40 µm", 40}, {"length", "40 μm", "40 µm", 40}, {"length", "0 mm", "0 mm", 0},
		{"length", "+3 mm", "3 mm", 3000}, {"length", "3\u00a0mm", "3 mm", 3000}, {"length", "-0 mm", "0 mm", 0}, {"length", "1/3 mm", "1/3 mm", 333}, {"length", "0.0005 mm", "0.0005 mm", 1},
		{"amount", "1 lb", "1 lb", 453592}, {"amount", "1 oz", "1 oz", 28350}, {"amount", "1.5 kg", "1.5 kg", 1500000},
		{"amount", "220 g", "220 g", 220000}, {"amount", "0.5 l", "0.5 L", 500000}, {"amount", "150 ml", "150 mL", 150000}, {"amount", "1 US gal", "1 US gal", 3785412},
		{"amount", "1 qt", "1 US qt", 946353}, {"amount", "1 fl  oz", "1 US fl oz", 29574}, {"amount", "3 m", "3 m", 3000000}, {"amount", "1 yd", "1 yd", 914400},
		{"amount", "5 G", "5 g", 5000}, {"amount", "5ML", "5 mL", 5000}, {"amount", "5 grams", "5 g", 5000}, {"amount", "1 quart", "1 US qt", 946353}, {"amount", "1 Gallon", "1 US gal", 3785412}, {"amount", "5 yards", "5 yd", 4572000}, {"length", "3 MM", "3 mm", 3000},
		{"amount", "2.5 m²", "2.5 m2", 2500000}, {"amount", "2.5 m2", "2.5 m2", 2500000}, {"amount", "4 sheets", "4 sheets", 4}, {"amount", "1 sheet", "1 sheets", 1}, {"amount", "1200 g", "1200 g", 1200000},
		{"share", "10 %", "10 %", 10000}, {"share", "44,5%", "44.5 %", 44500}, {"share", "1/3 %", "1/3 %", 333}, {"share", "150 percent", "150 %", 150000},
		{"density", "1.04 g/mL", "1.04 g/mL", 1040}, {"density", "1.04 g/ml", "1.04 g/mL", 1040}, {"density", "1.04 kg/L", "1.04 g/mL", 1040}, {"density", "1.04 g/cm3", "1.04 g/mL", 1040},
		{"density", "680 kg/m3", "680 kg/m3", 680}, {"density", "680 kg/m³", "680 kg/m3", 680}, {"density", "10 lb/gal", "10 lb/US gal", 1198},
		{"time", "20 min", "20 min", 1200}, {"time", "36 h", "36 h", 129600}, {"time", "1 1/2 hours", "1 1/2 h", 5400}, {"time", "3 days", "3 d", 259200}, {"time", "2 weeks", "2 weeks", 1209600}, {"time", "90 s", "90 s", 90},
		{"temperature", "68 °F", "68 °F", 20000}, {"temperature", "69 F", "69 °F", 20556}, {"temperature", "32 °F", "32 °F", 0}, {"temperature", "-40 °F", "-40 °F", -40000}, {"temperature", "0 °F", "0 °F", -17778},
		{"temperature", "20.5 C", "20.5 °C", 20500}, {"temperature", "-5,5 °C", "-5.5 °C", -5500}, {"temperature", "−5 ℃", "-5 °C", -5000}, {"temperature", "-0 °C", "0 °C", 0},
		{"cloth", "190 g/m2", "190 g/m2", 190000}, {"cloth", "190 g/m²", "190 g/m2", 190000}, {"cloth", "190 gsm", "190 g/m2", 190000}, {"cloth", "1 oz/yd2", "1 oz/yd2", 33906}, {"cloth", "5.6 oz", "5.6 oz/yd2", 189872},
		{"threads", "14 /cm", "14 /cm", 1400}, {"threads", "14/cm", "14 /cm", 1400}, {"threads", "14 per cm", "14 /cm", 1400}, {"threads", "46 /in", "46 /in", 1811}, {"threads", "14 1/2 /cm", "14 1/2 /cm", 1450},
	} {
		a := amounts[c.of]()
		if err := a.UnmarshalText([]byte(c.in)); err != nil {
			t.Errorf("%s %q: %v", c.of, c.in, err)
			continue
		}
		got, ok := base(a)
		if a.String() != c.text || got != c.base || !ok || a.IsZero() || a.IsUnknown() {
			t.Errorf("%s %q: %q, %d %v; expected %q, %d", c.of, c.in, a, got, ok, c.text, c.base)
		}
		if a.Number()+" "+a.Unit() != c.text {
			t.Errorf("%q is parted into %q and %q", c.in, a.Number(), a.Unit())
		}
	}
}

func TestAmountsRefused(t *testing.T) {
	for _, c := range []struct{ of, in, why string }{
		{"length", "3", "has no unit"}, {"length", "mm", "is not a number"}, {"length", "3 kg", "the unit must be mm, cm"}, {"length", "-3 mm", "less than nothing"},
		{"length", "1.2.3 mm", "not a number"}, {"length", "1/0 mm", "not a number"}, {"length", "1 2 mm", "not a number"}, {"length", "1 9/8 in", "not a number"}, {"length", "1.5 1/2 in", "not a number"},
		{"length", "1/2/3 in", "not a number"}, {"length", "3. mm", "not a number"}, {"length", "1e3 mm", "the unit must be"}, {"length", "0x10 mm", "the unit must be"}, {"length", "NaN mm", "the unit must be"}, {"length", "3 KM", "the unit must be"},
		{"length", "3 mm mm", "the unit must be"}, {"length", "--3 mm", "not a number"}, {"length", "+-3 mm", "not a number"}, {"length", "٣ mm", "the unit must be"}, {"length", "99999999999999 km", "the unit"}, {"length", "999999999999999 m", "too large"},
		{"length", strings.Repeat("1", 50) + " mm", "too long"}, {"length", "3 mm\x1b[31m", "the unit must be"},
		{"amount", "1,200 g", "could mean thousands: write 1200 or 1.2"}, {"amount", "10 %", "the unit must be"}, {"amount", "120", `"120" has no unit: add g, mL or oz; to cloth m or yd, to boards sheets`}, {"share", "10", `"10" has no unit: add %`}, {"share", "10 ‰", `percentage "10 ‰": the unit must be %`},
		{"temperature", "20 K", "the unit must be °C or °F"}, {"threads", "14", "has no unit: add /cm or /in"}, {"threads", "14 /", "has no unit"}, {"cloth", "190 g", "the unit must be g/m2 or oz/yd2"}, {"time", "1:30 h", "the unit must be"},
	} {
		a := amounts[c.of]()
		err := a.UnmarshalText([]byte(c.in))
		if err == nil || !strings.Contains(err.Error(), c.why) {
			t.Errorf("%s %q: %v, expected %s", c.of, c.in, err, c.why)
		} else if strings.ContainsAny(err.Error(), "\x1b\n") {
			t.Errorf("%q stands raw in its error", c.in)
		}
		if !a.IsZero() {
			t.Errorf("%s %q: refused and kept", c.of, c.in)
		}
	}
}

// Not recorded, recorded as unknown and recorded are three things.
func TestUnknownAndAbsent(t *testing.T) {
	for name, make := range amounts {
		a := make()
		if !a.IsZero() || a.IsUnknown() || a.String() != "" {
			t.Errorf("%s: the zero value is not absent", name)
		}
		if _, ok := base(a); ok {
			t.Errorf("%s: an absent value is known", name)
		}
		for _, s := range []string{"unknown", "Unknown", " UNKNOWN "} {
			if err := a.UnmarshalText([]byte(s)); err != nil || a.IsZero() || !a.IsUnknown() || a.String() != "unknown" || a.Unit() != "" {
				t.Errorf("%s %q: %q %v", name, s, a, err)
			}
			if _, ok := base(a); ok {
				t.Errorf("%s: an unknown value is known", name)
			}
		}
	}
	var a record.Amount
	if err := a.UnmarshalText([]byte("3 m")); err != nil {
		t.Fatal(err)
	}
	if _, ok := a.Milligrams(); ok {
		t.Error("a length of cloth has a mass")
	}
}

// Every unit is read back in its own spelling.
func TestUnitsRoundTrip(t *testing.T) {
	for name, make := range amounts {
		for _, u := range make().Units() {
			a := make()
			if err := a.UnmarshalText([]byte("3 1/4 " + u)); err != nil || a.String() != "3 1/4 "+u {
				t.Errorf("%s in %s: %q, %v", name, u, a, err)
			}
			if n, ok := base(a); !ok || n <= 0 && u != "°F" {
				t.Errorf("%s in %s: %d %v", name, u, n, ok)
			}
		}
	}
}

func TestSize(t *testing.T) {
	for _, c := range []struct {
		in, text   string
		area, edge int64
	}{
		{"8 x 10 x 1/8 in", "8 x 10 x 1/8 in", 51613, 2903}, {`8x10x1/8"`, "8 x 10 x 1/8 in", 51613, 2903}, {"300x400x4mm", "300 x 400 x 4 mm", 120000, 5600},
		{"30 × 40 cm × 3 mm", "30 x 40 cm x 3 mm", 120000, 4200}, {"30 X 40 CM X 3 MM", "30 x 40 cm x 3 mm", 120000, 4200}, {"30 X 40 cm * 3 mm", "30 x 40 cm x 3 mm", 120000, 4200}, {"30 cm x 40 cm x 3 mm", "30 x 40 cm x 3 mm", 120000, 4200},
		{"30 x 40 cm", "30 x 40 cm", 120000, -1}, {"30 x 40 cm x unknown", "30 x 40 cm x unknown", 120000, -1}, {"unknown x unknown x 3 mm", "unknown x unknown x 3 mm", -1, -1},
		{"unknown x unknown", "unknown x unknown", -1, -1}, {"8½ x 11 in", "8 1/2 x 11 in", 60322, -1}, {"8 1/2 x 11 x ⅛ in", "8 1/2 x 11 x 1/8 in", 60322, 3145}, {"24,5 x 30 x 0,3 cm", "24.5 x 30 x 0.3 cm", 73500, 3270},
		{"", "", -1, -1},
	} {
		s, err := record.ParseSize(c.in)
		if err != nil || s.String() != c.text {
			t.Errorf("%q: %q, %v", c.in, s, err)
			continue
		}
		if again, err := record.ParseSize(s.String()); err != nil || again != s {
			t.Errorf("%q, then %q: %v", s, again, err)
		}
		if a, ok := s.AreaSquareMillimeters(); ok != (c.area >= 0) || ok && a != c.area {
			t.Errorf("%q: area %d %v", c.in, a, ok)
		}
		if e, ok := s.EdgeSquareMillimeters(); ok != (c.edge >= 0) || ok && e != c.edge {
			t.Errorf("%q: edges %d %v", c.in, e, ok)
		}
	}
	for in, why := range map[string]string{
		"30": "two or three", "30 x 40": "no unit", "30 cm x 40": "no unit", "30 x x 40 cm": "a figure is missing", "30 x 40 x 3 x 2 mm": "two or three", "x 40 cm": "a figure is missing", "30 x 40 cm x": "a figure is missing",
		"0 x 40 cm": "a side of nothing", "unknown x 40 cm": "both known", "30 x 40 kg": "the unit must be", "30 by 40 cm": "two or three", "-30 x 40 cm": "less than nothing", strings.Repeat("x", 200): "too long",
	} {
		if s, err := record.ParseSize(in); err == nil || !strings.Contains(err.Error(), why) || !s.IsZero() {
			t.Errorf("%q: %q, %v; expected %s", in, s, err, why)
		}
	}
}

func TestParseMix(t *testing.T) {
	for in, want := range map[string]string{
		"sealer": "1 sealer", "3 primer + 1 sealer": "3 primer 1 sealer", "3:primer,1:sealer": "3 primer 1 sealer", "Primer+Sealer-2": "1 primer 1 sealer-2", "10000 a": "10000 a",
	} {
		mix, err := record.ParseMix(in)
		var got []string
		for _, p := range mix {
			got = append(got, itoa(p.Parts), string(p.Name))
		}
		if err != nil || strings.Join(got, " ") != want {
			t.Errorf("%q: %v, %v", in, got, err)
		}
	}
	for in, why := range map[string]string{
		"": "names nothing", " + ": "a figure and a name", "0 primer": "whole numbers from 1", "-1 primer": "whole numbers", "1.5 primer": "whole numbers", "10001 a": "whole numbers", "a + a": "stands twice", "a + A": "stands twice",
		"3 primer sealer": "a figure and a name", "sëaler": "not a name", "3 : primer:": "", strings.Repeat("a,", 300): "too long", "99999999999999999999 a": "whole numbers",
	} {
		if mix, err := record.ParseMix(in); why != "" && (err == nil || !strings.Contains(err.Error(), why)) {
			t.Errorf("%q: %v, %v; expected %s", in, mix, err, why)
		}
	}
}

// Whatever is read as an amount is read again from its own spelling, with the
// same value.
func FuzzAmount(f *testing.F) {
	for _, s := range []string{"8 1/2 in", "190 g/m2", "14 /cm", "-5,5 °C", "1 US fl oz", "½ %", "unknown", "1,200 g", "--5 °C"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for name, make := range amounts {
			a, b := make(), make()
			if a.UnmarshalText([]byte(s)) != nil {
				continue
			}
			if err := b.UnmarshalText([]byte(a.String())); err != nil || a.String() != b.String() {
				t.Fatalf("%s %q became %q, then %q: %v", name, s, a, b, err)
			}
			x, ok := base(a)
			if y, ok2 := base(b); x != y || ok != ok2 || ok == (a.IsZero() || a.IsUnknown()) {
				t.Fatalf("%s %q: %d, then %d (%v %v)", name, s, x, y, ok, ok2)
			}
		}
	})
}

func FuzzSize(f *testing.F) {
	for _, s := range []string{"8 x 10 x 1/8 in", "30 × 40 cm × 3 mm", "unknown x unknown x 3 mm", "8½*11\""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		a, err := record.ParseSize(s)
		if err != nil {
			return
		}
		if b, err := record.ParseSize(a.String()); err != nil || a != b {
			t.Fatalf("%q became %q, then %q: %v", s, a, b, err)
		}
	})
}

func FuzzMix(f *testing.F) {
	f.Add("3 primer + 1 sealer")
	f.Add("3:primer,sealer")
	f.Fuzz(func(t *testing.T, s string) {
		mix, err := record.ParseMix(s)
		if err != nil {
			return
		}
		var words []string
		for _, p := range mix {
			words = append(words, itoa(p.Parts)+" "+string(p.Name))
		}
		again, err := record.ParseMix(strings.Join(words, " + "))
		if err != nil || len(again) != len(mix) {
			t.Fatalf("%q became %v, then %v: %v", s, mix, again, err)
		}
		for i := range mix {
			if mix[i] != again[i] {
				t.Fatalf("%q became %v, then %v", s, mix, again)
			}
		}
	})
}
