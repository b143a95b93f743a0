package record

import "slices"

// Length is a measured length; base unit micrometre.
type Length struct{ quantity[lengthDim] }

// Amount is a wet amount or a quantity bought: a mass, a volume, a length of
// cloth or a count of sheets.
type Amount struct{ quantity[amountDim] }

// Percent is a share in hundredths; base unit one thousandth of a per cent.
type Percent struct{ quantity[percentDim] }

// Density is mass per volume; base unit mg/mL (equal to kg/m³).
type Density struct{ quantity[densityDim] }

// Duration is a time that passes; base unit second.
type Duration struct{ quantity[durationDim] }

// Temperature has the base unit one thousandth of a degree Celsius.
type Temperature struct{ quantity[temperatureDim] }

// MassPerArea is the weight of a cloth; base unit mg/m².
type MassPerArea struct{ quantity[massPerAreaDim] }

// ThreadCount is the number of threads over a length; base unit threads per
// metre.
type ThreadCount struct{ quantity[threadDim] }

// Spread is a wet amount per area: a mass or a volume. Base units mg/m² and
// µL/m².
type Spread struct{ quantity[spreadDim] }

type lengthDim struct{}
type amountDim struct{}
type percentDim struct{}
type densityDim struct{}
type durationDim struct{}
type temperatureDim struct{}
type massPerAreaDim struct{}
type threadDim struct{}
type spreadDim struct{}

func (lengthDim) name() string  { return "length" }
func (lengthDim) units() []unit { return lengthUnits }

var lengthUnits = []unit{
	{"mm", 1000, 1, nil, 0}, {"cm", 10000, 1, nil, 0}, {"m", 1000000, 1, nil, 0},
	{"in", 25400, 1, []string{`"`, "″", "inch", "inches"}, 0}, {"ft", 304800, 1, []string{"'"}, 0},
	{"µm", 1, 1, []string{"um", "μm", "micron", "microns"}, 0}, {"mil", 254, 10, []string{"mils"}, 0},
}

func (amountDim) name() string  { return "amount" }
func (amountDim) units() []unit { return amountUnits }

var amountUnits = []unit{
	{"g", 1000, 1, []string{"gram", "grams"}, 0}, {"kg", 1000000, 1, nil, 0}, {"mL", 1000, 1, nil, 0}, {"L", 1000000, 1, []string{"liter", "liters", "litre", "litres"}, 0},
	{"oz", 45359237, 1600, []string{"ounce", "ounces"}, 0}, {"lb", 45359237, 100, []string{"lbs", "pound", "pounds"}, 0},
	{"US fl oz", 473176473, 16000, []string{"floz", "fl oz"}, 0}, {"US qt", 946352946, 1000, []string{"qt", "quart", "quarts"}, 0}, {"US gal", 3785411784, 1000, []string{"gal", "gallon", "gallons"}, 0},
	{"m", 1000000, 1, nil, 0}, {"yd", 914400, 1, []string{"yds", "yard", "yards"}, 0}, {"m2", 1000000, 1, []string{"m²"}, 0}, {"sheets", 1, 1, []string{"sheet"}, 0},
}

// usualUnits are what is asked for where a dimension has more than a reader looks through.
var usualUnits = map[string]string{"amount": "g, mL or oz; to cloth m or yd, to boards sheets"}

func (percentDim) name() string  { return "percentage" }
func (percentDim) units() []unit { return percentUnits }

var percentUnits = []unit{{"%", 1000, 1, []string{"percent", "per cent"}, 0}}

func (densityDim) name() string  { return "density" }
func (densityDim) units() []unit { return densityUnits }

var densityUnits = []unit{{"g/mL", 1000, 1, []string{"g/ml", "kg/L", "kg/l", "g/cm3"}, 0}, {"kg/m3", 1, 1, []string{"kg/m³", "g/L"}, 0},
	{"lb/US gal", 453592370000, 3785411784, []string{"lb/gal"}, 0}}

func (durationDim) name() string  { return "time" }
func (durationDim) units() []unit { return durationUnits }

var durationUnits = []unit{{"h", 3600, 1, []string{"hour", "hours"}, 0}, {"min", 60, 1, []string{"minute", "minutes"}, 0}, {"s", 1, 1, nil, 0},
	{"d", 86400, 1, []string{"day", "days"}, 0}, {"weeks", 604800, 1, []string{"week", "w"}, 0}, {"months", 2629746, 1, []string{"month"}, 0}}

func (temperatureDim) name() string  { return "temperature" }
func (temperatureDim) units() []unit { return temperatureUnits }

var temperatureUnits = []unit{{"°C", 1000, 1, []string{"C", "c", "℃"}, 0}, {"°F", 5000, 9, []string{"F", "f", "℉"}, 32}}

func (massPerAreaDim) name() string  { return "weight of cloth" }
func (massPerAreaDim) units() []unit { return massPerAreaUnits }

var massPerAreaUnits = []unit{{"g/m2", 1000, 1, []string{"g/m²", "gsm"}, 0}, {"oz/yd2", 2834952312500, 83612736, []string{"oz/yd²", "oz"}, 0}}

func (threadDim) name() string  { return "thread count" }
func (threadDim) units() []unit { return threadUnits }

var threadUnits = []unit{{"/cm", 100, 1, []string{"per cm"}, 0}, {"/in", 10000, 254, []string{"per in"}, 0}}

func (spreadDim) name() string  { return "amount per area" }
func (spreadDim) units() []unit { return spreadUnits }

var spreadUnits = []unit{{"g/m2", 1000, 1, []string{"g/m²"}, 0}, {"mL/m2", 1000, 1, []string{"ml/m2", "mL/m²", "ml/m²"}, 0},
	{"oz/ft2", 28349523125000, 92903040, []string{"oz/ft²"}, 0}}

// MilligramsPerSquareMeter returns the mass per area; false when it is none.
func (s Spread) MilligramsPerSquareMeter() (int64, bool) {
	if s.unit == "mL/m2" {
		return 0, false
	}
	return s.base()
}

// MicrolitersPerSquareMeter returns the volume per area; false when it is none.
func (s Spread) MicrolitersPerSquareMeter() (int64, bool) {
	if s.unit != "mL/m2" {
		return 0, false
	}
	return s.base()
}

// Micrometers returns the length in µm and whether it is known.
func (l Length) Micrometers() (int64, bool) { return l.base() }

// Milligrams returns the amount in mg; false when it is not a known mass.
func (a Amount) Milligrams() (int64, bool) { return a.in("g", "kg", "oz", "lb") }

// Microliters returns the amount in µL; false when it is not a known volume.
func (a Amount) Microliters() (int64, bool) {
	return a.in("mL", "L", "US fl oz", "US qt", "US gal")
}

// Micrometers returns a length of cloth in µm; false when it is none.
func (a Amount) Micrometers() (int64, bool) { return a.in("m", "yd") }

// SquareMillimeters returns an area in mm²; false when it is none.
func (a Amount) SquareMillimeters() (int64, bool) { return a.in("m2") }

// Sheets returns a whole count of sheets; false when it is none.
func (a Amount) Sheets() (int64, bool) { return a.in("sheets") }

func (a Amount) in(units ...string) (int64, bool) {
	if !slices.Contains(units, a.unit) {
		return 0, false
	}
	return a.base()
}

// Millipercent returns thousandths of a per cent and whether it is known.
func (p Percent) Millipercent() (int64, bool) { return p.base() }

// MilligramsPerMilliliter returns the density and whether it is known.
func (d Density) MilligramsPerMilliliter() (int64, bool) { return d.base() }

// Seconds returns the duration and whether it is known.
func (d Duration) Seconds() (int64, bool) { return d.base() }

// Millicelsius returns thousandths of a degree Celsius and whether known.
func (t Temperature) Millicelsius() (int64, bool) { return t.base() }

// MilligramsPerSquareMeter returns the weight of cloth and whether known.
func (m MassPerArea) MilligramsPerSquareMeter() (int64, bool) { return m.base() }

// ParseLength reads "3.2 mm", "1/8 in", "8 1/2 in", `8-1/2"` or "unknown".
func ParseLength(s string) (l Length, err error) { err = l.UnmarshalText([]byte(s)); return l, err }

// ParseDuration reads "20 min", "36 h", "3 d" or "unknown".
func ParseDuration(s string) (d Duration, err error) {
	err = d.UnmarshalText([]byte(s))
	return d, err
}
