package typed_test

import (
	"fmt"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
)

var riga = time.FixedZone("Riga, summer", 3*3600)

func reader(t *testing.T) *typed.Reader {
	t.Helper()
	var es []record.Entry
	for i, b := range []record.Body{record.Studio{Maker: "Anna", Mark: "KB", Currency: "EUR"},
		record.Material{Key: "sealer", Name: "sealer"}, record.Material{Key: "ground", Name: "ground"}, record.Material{Key: "linen", Name: "linen"},
		record.Lot{Key: "s1", Material: "sealer"}, record.Lot{Key: "g1", Material: "ground"}, record.Lot{Key: "g2", Material: "ground"}} {
		es = append(es, record.Entry{Seq: int64(i + 1), Body: b})
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	return &typed.Reader{Units: "cm", Now: time.Date(2026, 5, 2, 16, 0, 0, 0, riga), Zone: riga, Shop: w}
}

func TestAt(t *testing.T) {
	for said, want := range map[string]string{
		"":                         "2026-05-02T16:00:00+03:00",
		"14:05":                    "2026-05-02T14:05:00+03:00",
		"yesterday 16:30":          "2026-05-01T16:30:00+03:00",
		"yesterday":                "2026-05-01",
		"2026-04-30 09:00":         "2026-04-30T09:00:00+03:00",
		"1998~":                    "1998~",
		"unknown":                  "unknown",
		"17:30":                    "!later-today",
		"2027":                     "!year-or-hour",
		"2359":                     "!later-today",
		"1459":                     "2026-05-02T14:59:00+03:00",
		"year 2027":                "!later-than-now",
		"year 1930":                "1930",
		"1930":                     "1930",
		"1530":                     "!year-or-hour",
		"1405":                     "2026-05-02T14:05:00+03:00",
		"14.05":                    "2026-05-02T14:05:00+03:00",
		"2pm":                      "2026-05-02T14:00:00+03:00",
		"12:30 am":                 "2026-05-02T00:30:00+03:00",
		"half an hour ago":         "2026-05-02T15:30:00+03:00",
		"20 min ago":               "2026-05-02T15:40:00+03:00",
		"2 h ago":                  "2026-05-02T14:00:00+03:00",
		"2 days ago":               "2026-04-30",
		"this morning":             "!vague-time",
		"Mon 14:00":                "2026-04-27T14:00:00+03:00",
		"Sat 14:00":                "2026-05-02T14:00:00+03:00",
		"Sat 17:00":                "2026-04-25T17:00:00+03:00",
		"friday":                   "2026-05-01",
		"23.11.2025":               "2025-11-23",
		"23.11.2025 14:05":         "2025-11-23T14:05:00+03:00",
		"23/11/2025":               "2025-11-23",
		"3/11/2025":                "!day-or-month",
		"2 May 2026 14:05":         "2026-05-02T14:05:00+03:00",
		"27 Apr 14:05":             "2026-04-27T14:05:00+03:00",
		"today 14:40":              "2026-05-02T14:40:00+03:00",
		"2026-05-02":               "2026-05-02",
		"soon":                     "!time-not-read",
		"noon":                     "2026-05-02T12:00:00+03:00",
		"yesterday at noon":        "2026-05-01T12:00:00+03:00",
		"14 Uhr":                   "2026-05-02T14:00:00+03:00",
		"14h":                      "2026-05-02T14:00:00+03:00",
		"at 4.30 am":               "2026-05-02T04:30:00+03:00",
		"just now":                 "2026-05-02T16:00:00+03:00",
		"quarter of an hour ago":   "2026-05-02T15:45:00+03:00",
		"the day before yesterday": "2026-04-30",
		"last Monday":              "2026-04-27",
		"last Monday 9:15":         "2026-04-27T09:15:00+03:00",
		"5.4.26":                   "2026-04-05",
		"23/4/26":                  "2026-04-23",
		"03/04/26":                 "!day-or-month",
		"Apr 20":                   "2026-04-20",
		"20 Dec":                   "2025-12-20",
		"2026-04-20T14:00":         "2026-04-20T14:00:00+03:00",
		"2 May 2026, 14:05":        "2026-05-02T14:05:00+03:00",
		"today, 14:05":             "2026-05-02T14:05:00+03:00",
		"half past two":            "!half-of-day 02:30|14:30",
		"2 o'clock":                "!half-of-day 02:00|14:00",
		"Friday morning":           "!vague-time",
		"yesterday evening":        "!vague-time",
		"last week":                "!vague-time",
		"12":                       "2026-05-02T12:00:00+03:00",
		// The evening of 2 May 2026, a Saturday, 16:00; 21:00 has not been yet.
		"9": "2026-05-02T09:00:00+03:00", "at 9": "2026-05-02T09:00:00+03:00", "9 o'clock": "2026-05-02T09:00:00+03:00", "at nine": "2026-05-02T09:00:00+03:00", "half past nine": "2026-05-02T09:30:00+03:00",
		"yesterday at 9": "!half-of-day yesterday 09:00|yesterday 21:00", "yesterday at nine": "!half-of-day yesterday 09:00|yesterday 21:00", "Friday at 9": "!half-of-day friday 09:00|friday 21:00",
		"at 2": "!half-of-day 02:00|14:00", "2:30": "!half-of-day 02:30|14:30", "02:30": "2026-05-02T02:30:00+03:00", "quarter to 3": "!half-of-day 02:45|14:45", "1 May at 9": "!half-of-day 1 may 09:00|1 may 21:00",
		"yesterday at 9:00": "2026-05-01T09:00:00+03:00", "yesterday at 14": "2026-05-01T14:00:00+03:00", "yesterday at 9 am": "2026-05-01T09:00:00+03:00", "yesterday, 9 p.m.": "2026-05-01T21:00:00+03:00",
		"9 Uhr 30": "2026-05-02T09:30:00+03:00", "gestern um 9 Uhr": "2026-05-01T09:00:00+03:00", "vorgestern": "2026-04-30", "heute 14 Uhr": "2026-05-02T14:00:00+03:00", "14 h 05": "2026-05-02T14:05:00+03:00", "14 hrs": "2026-05-02T14:00:00+03:00",
		"this morning at 9": "2026-05-02T09:00:00+03:00", "this afternoon at 2": "2026-05-02T14:00:00+03:00", "2:15 this afternoon": "2026-05-02T14:15:00+03:00", "9 in the morning": "2026-05-02T09:00:00+03:00",
		"yesterday evening at 8:30": "2026-05-01T20:30:00+03:00", "last night at 10": "2026-05-01T22:00:00+03:00", "last night at 1": "!vague-time", "this morning at 15:00": "!vague-time", "tonight at 8": "!vague-time",
		"14:05 yesterday": "2026-05-01T14:05:00+03:00", "9am on Friday": "2026-05-01T09:00:00+03:00", "14:05 on 1 May": "2026-05-01T14:05:00+03:00", "on Friday at 14:05": "2026-05-01T14:05:00+03:00", "day before yesterday at 9:00": "2026-04-30T09:00:00+03:00",
		"3 days ago at 14:00": "2026-04-29T14:00:00+03:00", "an hour and a half ago": "2026-05-02T14:30:00+03:00", "half hour ago": "2026-05-02T15:30:00+03:00", "15 mins ago": "2026-05-02T15:45:00+03:00", "2 hrs ago": "2026-05-02T14:00:00+03:00", "1,5 h ago": "2026-05-02T14:30:00+03:00",
		"1st of May": "2026-05-01", "May 1st at 2:30 pm": "2026-05-01T14:30:00+03:00", "1.5. 9:30": "2026-05-01T09:30:00+03:00", "2026/05/01": "2026-05-01", "3. Mai 2025": "2025-05-03", "3 May 17:00": "2025-05-03T17:00:00+03:00",
		"about 1998": "1998~", "summer 1998": "1998-22", "the 1990s": "199X", "March 2026": "2026-03", "1998-99": "1998/1999",
		"around 9:30": "!vague-time", "yesterday around 9:30": "!vague-time", "about an hour ago": "!vague-time", "a while ago": "!vague-time", "lunchtime": "!vague-time", "midnight": "!vague-time", "last month": "!vague-time",
		"May 20 26": "!later-than-now", "20 May 22": "2022-05-20", "31 April": "!time-not-read", "half nine": "!time-not-read", "14:00-15:00": "!time-not-read", "24:00": "!time-not-read", "in an hour": "!time-not-read", "13 pm": "!time-not-read",
		"405":              "!time-not-read",
		"tomorrow":         "!time-not-read",
		"99.1.2026":        "!time-not-read",
		"1998-05-03 to 05": "!time-not-read",
		"25:00":            "!time-not-read",
	} {
		r := reader(t)
		got := r.At(said).String()
		if r.Err() != nil {
			got = "!" + refuse.Code(r.Err())
			if e := r.Err().(*refuse.Error); e.Said.Code == "half-of-day" {
				got += " " + e.Said.Values[0].Texts[0] + "|" + e.Said.Values[1].Texts[0]
				for _, v := range e.Said.Values { // what is proposed can be said
					if again := reader(t); again.At(v.Texts[0]).String() == "" || again.Err() != nil {
						t.Errorf("%q proposes %q: %v", said, v.Texts[0], again.Err())
					}
				}
			}
		}
		if got != want {
			t.Errorf("%q: %s, want %s", said, got, want)
		}
	}
}

// Each input is read, or refused under its own name; what follows a fault
// changes nothing.
func TestReader(t *testing.T) {
	var length record.Length
	var size record.Size
	var amount record.Amount
	var gloss record.Gloss
	for _, x := range []struct {
		what, want string
		read       func(*typed.Reader) string
	}{
		{"a length in the studio's unit", "12 cm", func(r *typed.Reader) string { r.Text("saw-loss", "12", &length); return length.String() }},
		{"a length in its own", "3 mm", func(r *typed.Reader) string { r.Text("saw-loss", "3 mm", &length); return length.String() }},
		{"a size", "30 x 40 cm", func(r *typed.Reader) string { r.Text("size", "30 x 40", &size); return size.String() }},
		{"sides without a unit", "!size two-readings", func(r *typed.Reader) string { r.Text("size", "12x16x3mm", &size); return "" }},
		{"sides that can only be of one", "300 x 400 x 3 mm", func(r *typed.Reader) string { r.Text("size", "300x400x3mm", &size); return size.String() }},
		{"a date on a tin", "2027-03", func(r *typed.Reader) string { var w record.When; r.Until("expires", "03/2027", &w); return w.String() }},
		{"a day on a tin", "2027-03-31", func(r *typed.Reader) string {
			var w record.When
			r.Until("expires", "31.03.2027", &w)
			return w.String()
		}},
		{"no date on a tin", "!expires no-date", func(r *typed.Reader) string { var w record.When; r.Until("expires", "soon", &w); return "" }},
		{"a span", "24 h/36 h", func(*typed.Reader) string { a, b := typed.Span("24-36 h"); return a + "/" + b }},
		{"a span of two units", "20 min/2 h", func(*typed.Reader) string { a, b := typed.Span("20 min to 2 h"); return a + "/" + b }},
		{"a span in full", "24 h/36 h", func(*typed.Reader) string { a, b := typed.Span("24 h..36 h"); return a + "/" + b }},
		{"a gauge without unit", "!wet-film gauge-without-unit", func(r *typed.Reader) string { r.Into("wet-film", &length, "100"); return "" }},
		{"thousands or a fraction", "!amount two-readings", func(r *typed.Reader) string { r.Text("amount", "1.250 g", &amount); return "" }},
		{"no thousands", "1.250 kg", func(r *typed.Reader) string { r.Text("amount", "1.250 kg", &amount); return amount.String() }},
		{"a fraction", "0.250 g", func(r *typed.Reader) string { r.Text("amount", "0.250 g", &amount); return amount.String() }},
		{"ounces", "8 oz", func(r *typed.Reader) string { r.Text("amount", "8 oz", &amount); return amount.String() }},
		{"a word", "satin", func(r *typed.Reader) string { typed.Word(r, "gloss", "Satin", &gloss); return string(gloss) }},
		{"no word", "!gloss no-such-word", func(r *typed.Reader) string { typed.Word(r, "gloss", "shiny", &gloss); return "" }},
		{"a word not known", "unknown", func(r *typed.Reader) string { typed.Word(r, "gloss", "unknown", &gloss); return string(gloss) }},
		{"a list without unknown", "!units no-such-word", func(r *typed.Reader) string {
			var u record.LengthUnit
			typed.Word(r, "units", "unknown", &u)
			return ""
		}},
		{"faces", "front, edges", func(r *typed.Reader) string { return faces(r.Faces("on", []string{"front", "edge"})) }},
		{"all faces", "front, back, edges", func(r *typed.Reader) string { return faces(r.Faces("on", []string{"all"})) }},
		{"no face", "!on no-such-word", func(r *typed.Reader) string { return faces(r.Faces("on", []string{"side"})) }},
		{"a lot", "sealer/s1", func(r *typed.Reader) string { return shelf(r.OnShelf("s1")) }},
		{"a material and its only lot", "sealer/s1", func(r *typed.Reader) string { return shelf(r.OnShelf("sealer")) }},
		{"a material without lots", "linen/", func(r *typed.Reader) string { return shelf(r.OnShelf("linen")) }},
		{"a material of two lots", "! several-lots", func(r *typed.Reader) string { return shelf(r.OnShelf("ground")) }},
		{"what nobody described", "! not-on-shelf", func(r *typed.Reader) string { return shelf(r.OnShelf("glue")) }},
		{"a grit", "P180", func(r *typed.Reader) string { return grit(r.Grit("grit", "P180")) }},
		{"a grit without scale", "!grit grit-without-scale", func(r *typed.Reader) string { return grit(r.Grit("grit", "180")) }},
		{"a price in the studio's currency", "38.50 EUR", func(r *typed.Reader) string { return r.Price("price", "38,50").String() }},
		{"a size where there is no unit at all", "!size no-unit", func(r *typed.Reader) string {
			var s record.Size
			r.Units = ""
			r.Text("size", "20x30", &s)
			return s.String()
		}},
		{"no price", "!price not-read", func(r *typed.Reader) string { return r.Price("price", "much").String() }},
	} {
		r := reader(t)
		got := x.read(r)
		if e, ok := r.Err().(*refuse.Error); ok {
			got = "!" + e.Field + " " + e.Said.Code
			r.Text("later", "nonsense", &length)
			if r.Err() != error(e) {
				t.Errorf("%s: a later fault takes the place of the first", x.what)
			}
		}
		if got != x.want {
			t.Errorf("%s: %s, want %s", x.what, got, x.want)
		}
		if warned := len(r.Warnings) == 1 && r.Warnings[0].Code == "oz-as-weight"; warned != (x.what == "ounces") {
			t.Errorf("%s: warns of %v", x.what, r.Warnings)
		}
	}
}

func faces(fs []record.Face) string {
	s := ""
	for i, f := range fs {
		if i > 0 {
			s += ", "
		}
		s += string(f)
	}
	return s
}

func shelf(material, lot record.Key) string { return string(material) + "/" + string(lot) }

func grit(scale record.GritScale, n int64) string { return fmt.Sprintf("%s%d", scale, n) }
