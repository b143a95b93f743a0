package tell_test

import (
	"strings"
	"testing"

	"golang.org/x/text/language"

	"backleaf/record"
	"backleaf/record/edtf"
	"backleaf/record/tell"
)

func parsed[T any](t testing.TB, text string, parse func(string) (T, error)) T {
	t.Helper()
	v, err := parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func when(t testing.TB, text string) record.When { return parsed(t, text, record.ParseWhen) }

// What a newer program says is told as it is, nothing left out.
func TestNewerCode(t *testing.T) {
	s := record.Say("moon-in-wrong-house", record.With("faces", []record.Face{record.Front, record.Back}), record.With("cure", parsed(t, "36 h", record.ParseDuration)),
		record.Value{Name: "phase", Type: "MoonPhase", Texts: []string{"gibbous"}}, record.With("lot", record.Key("")))
	want := "newer: moon-in-wrong-house, faces: front and back; cure: 36 h; phase: gibbous; lot: not recorded"
	if got := ordinary.Replace(tell.Say(tell.English(), s)); got != want {
		t.Errorf("\n got %s\nwant %s", got, want)
	}
	if got := tell.Say(tell.English(), record.Say("x")); got != "newer: x" {
		t.Errorf("got %s", got)
	}
}

// Each type of value is told in its own way; absent and unknown are said.
func TestValues(t *testing.T) {
	at := when(t, "2026-05-02T10:13:33+02:00")
	for _, c := range []struct {
		m    tell.Message
		v    record.Value
		want string
	}{
		{"{a}", record.With("a", 12000), "12 000"}, {"{a}", record.With("a", 1200), "1200"},
		{"{a}", record.With("a", record.EntryRef(12000)), "E12000"}, {"{a}", record.With("a", record.EntryRef(0)), "not recorded"},
		{"{a}", record.With("a", parsed(t, "8 1/2 in", record.ParseLength)), "8 1/2 in"},
		{"{a}", record.With("a", parsed(t, "1.0 weeks", record.ParseDuration)), "1.0 weeks"},
		{"{a}", record.With("a", parsed(t, "1 weeks", record.ParseDuration)), "1 week"},
		{"{a}", record.With("a", parsed(t, "30 x 40 cm x 3.2 mm", record.ParseSize)), "30 × 40 cm × 3.2 mm"},
		{"{a}", record.With("a", record.Length{}), "not recorded"}, {"{a}", record.With("a", parsed(t, "unknown", record.ParseLength)), "unknown"},
		{"{a}", record.With("a", record.Figure("-0.35 mm")), "−0.35 mm"},
		{"{a:range}", record.With("a", []record.Figure{"0.8 mm", "1.2 mm"}), "0.8–1.2 mm"},
		{"{a}", record.With("a", record.PaintMedium("oil")), "oil"}, {"{a}", record.With("a", record.PaintMedium("unknown")), "unknown"},
		{"{a}", record.With("a", record.PaintMedium("")), "not recorded"}, {"{a}", record.With("a", record.PaintMedium("moonlight")), "moonlight"},
		{"{a}", record.With("a", at), "2 May 2026"}, {"{a:moment}", record.With("a", at), "2 May 2026, 10:13"}, {"{a:exact}", record.With("a", at), "2 May 2026, 10:13:33"},
		{"{a:on}", record.With("a", at), "on 2 May 2026"}, {"{a:on}", record.With("a", when(t, "199X")), "in the 1990s"},
		{"{a:on}", record.With("a", when(t, "2019-21?")), "possibly in spring 2019"}, {"{a:on}", record.With("a", when(t, "1998~")), "about 1998"},
		{"{a:short}", record.With("a", when(t, "2025-05-02/2025-05-04")), "2–4 May 2025"}, {"{a:short}", record.With("a", when(t, "2025-05-02/2025-06-04")), "2 May – 4 June 2025"},
		{"{a}", record.With("a", record.When{}), "date not recorded"}, {"{a}", record.With("a", when(t, "unknown")), "date unknown"},
		{"{a, kind, day {on a day} month {in a month} other {some time}}", record.With("a", when(t, "2026-05")), "in a month"},
		{"lot{a, select, none { not recorded} unknown { not known} other { {a}}}", record.With("a", record.Key("sealer-3")), "lot sealer-3"},
		{"lot{a, select, none { not recorded} unknown { not known} other { {a}}}", record.With("a", record.Key("unknown")), "lot not known"},
		{"lot{a, select, none { not recorded} unknown { not known} other { {a}}}", record.With("a", record.Key("")), "lot not recorded"},
		{"{a, plural, =0 {none} one {one coat} other {{a} coats}}", record.With("a", 0), "none"},
		{"{a, plural, =0 {none} one {one coat} other {{a} coats}}", record.With("a", 3), "3 coats"},
		{"{a, number, plur {they are} other {it is}}", record.With("a", record.Edges), "they are"},
		{"{b}", record.With("a", 1), "{b}"}, // nothing is dropped in silence
	} {
		if got := ordinary.Replace(tell.English().Fill(c.m, c.v)); got != c.want {
			t.Errorf("%s of %+v:\n got %s\nwant %s", c.m, c.v, got, c.want)
		}
	}
}

// The plural categories of the CLDR for numbers as they are written, tried
// with golang.org/x/text v0.44.0: French counts 0 and 1.5 as one, German does
// not, and tells 1 from 1.0.
func TestPluralOfDecimals(t *testing.T) {
	for tag, cases := range map[string]map[string]string{
		"en": {"0": "other", "1": "one", "1.0": "other", "1.5": "other", "2": "other"},
		"de": {"0": "other", "1": "one", "1.0": "other", "1.5": "other", "1 1/2": "other"},
		"fr": {"0": "one", "1": "one", "1.0": "one", "1.5": "one", "1 1/2": "one", "2": "other"},
	} {
		c := *tell.English()
		c.Tag = language.MustParse(tag)
		for n, want := range cases {
			if got := c.Fill("{n, plural, one {one} other {other}}", record.With("n", record.Figure(n+" weeks"))); got != want {
				t.Errorf("%s %s: %s, want %s", tag, n, got, want)
			}
		}
	}
}

// invented is a small language that is no one's: three plural forms (by the
// rules of Romanian), two genders, a case after "on", months with a form of
// their own, a decimal comma.
var invented = &tell.Catalogue{
	Tag:    language.Romanian,
	Number: tell.NumberFormat{Decimal: ",", Group: ".", GroupFrom: 4, Minus: "~", Range: "..", Times: "*", Unit: "_", Fraction: "/", Whole: "+"},
	Join:   tell.Joins{List: "{a}, {b}", LastOfList: "{a} ke {b}", Clauses: "; ", Pair: "{name}: {value}"},
	Dates: edtf.Lexicon{
		Months: map[string][12]string{"": {"una", "dua", "tria", "kva", "pena"}, "of": {"d’una", "da dua", "da tria", "da kva", "da pena"}},
		First:  "1-na", Clock: "15 o 04",
		Roles: map[string]edtf.Phrases{"": {"day": "{day} {month} {year}", "month": "{month} {year}", "year": "{year}"},
			"of": {"day": "du {day} {month} {year}", "month": "{month:of} {year}", "year": "da {year}"}},
	},
	Words: tell.Words{
		"Face": {"front": {Text: "fronto", Gender: tell.Masculine, Forms: map[string]string{"dat": "frontu"}}, "back": {Text: "dorsa", Gender: tell.Feminine, Forms: map[string]string{"dat": "dorse"}},
			"edges": {Text: "limas", Gender: tell.Feminine, Plural: true, Forms: map[string]string{"dat": "limis"}}},
		"unit": {"weeks": {Text: "semanos", Forms: map[string]string{"one": "semano", "few": "semane"}}},
	},
	Codes: map[string]tell.Message{
		"sealed": "{faces, number, plur {{faces, gender, fem {{faces} klosas} other {{faces} klosos}}} other {{faces, gender, fem {{faces} klosa} other {{faces} kloso}}}}",
		"coats":  "{n, plural, one {uno strato} few {{n} strate} other {{n} de strati}} na {faces:dat}",
		"cured":  "sekado {time}",
		"issued": "karto {date:of}",
	},
}

func TestInventedLanguage(t *testing.T) {
	faces := func(fs ...record.Face) record.Value { return record.With("faces", fs) }
	for _, c := range []struct {
		said record.Said
		want string
	}{
		{record.Say("sealed", faces(record.Front)), "fronto kloso"},
		{record.Say("sealed", faces(record.Back)), "dorsa klosa"},
		{record.Say("sealed", faces(record.Edges)), "limas klosas"},
		{record.Say("sealed", faces(record.Back, record.Edges)), "dorsa ke limas klosas"},
		{record.Say("sealed", faces(record.Front, record.Back, record.Edges)), "fronto, dorsa ke limas klosos"},
		{record.Say("coats", record.With("n", 1), faces(record.Front)), "uno strato na frontu"},
		{record.Say("coats", record.With("n", 2), faces(record.Back, record.Edges)), "2 strate na dorse ke limis"},
		{record.Say("coats", record.With("n", 1120), faces(record.Back)), "1.120 de strati na dorse"},
		{record.Say("cured", record.With("time", parsed(t, "1 weeks", record.ParseDuration))), "sekado 1_semano"},
		{record.Say("cured", record.With("time", parsed(t, "1.5 weeks", record.ParseDuration))), "sekado 1,5_semane"},
		{record.Say("cured", record.With("time", parsed(t, "20 weeks", record.ParseDuration))), "sekado 20_semanos"},
		{record.Say("issued", record.With("date", when(t, "2026-05-02"))), "karto du 2 pena 2026"},
		{record.Say("issued", record.With("date", when(t, "2026-05-01T10:00:00Z"))), "karto du 1-na pena 2026"},
		{record.Say("issued", record.With("date", when(t, "2026-01"))), "karto d’una 2026"},
		{record.Say("issued", record.With("date", when(t, "2026"))), "karto da 2026"},
	} {
		if got := tell.Say(invented, c.said); got != c.want {
			t.Errorf("%s: got %q, want %q", c.said.Code, got, c.want)
		}
		if err := invented.Lacks(c.said); err != nil {
			t.Errorf("%s: %v", c.said.Code, err)
		}
	}
}

// What a message asks and nobody says is found.
func TestLacks(t *testing.T) {
	faces := record.With("faces", []record.Face{record.Front})
	for message, want := range map[tell.Message]string{
		"{n}":                                "the value is not said",
		"{faces:gen}":                        `no form "gen"`,
		"{text:dat}":                         `a text has no form "dat"`,
		"{date:about-then}":                  `no role "about-then"`,
		"{count, plural, one {x} other {y}}": "plural few",
		"{text, gender, fem {x} other {y}}":  "no gender",
		"{faces, select, front {{n}} other {all}}": "{n}, the value is not said",
		"{text, kind, day {x} other {y}}":          "no kind of date",
		"{faces":                                   "not closed",
		"{faces, select, front {x}}":               "do not end with other",
		"{faces, mood, x {y} other {z}}":           `chosen by "mood"`,
		"a } b":                                    "closes what none opened",
	} {
		c := *invented
		c.Codes = map[string]tell.Message{"code": message}
		err := c.Lacks(record.Say("code", faces, record.With("text", "x"), record.With("date", when(t, "2026")), record.With("count", 2)))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", message, err, want)
		}
	}
	if err := invented.Lacks(record.Say("nothing")); err == nil {
		t.Error("an unknown code lacks nothing")
	}
}

// Capitals are those of the language: Duden and CLDR write STRASSE; the sign
// for millionths stays what it is.
func TestCapitals(t *testing.T) {
	c := *tell.English()
	c.Tag = language.German
	if got := c.Upper("größe, straße"); got != "GRÖSSE, STRASSE" {
		t.Errorf("got %q", got)
	}
	if got := c.Capital("übermalt"); got != "Übermalt" {
		t.Errorf("got %q", got)
	}
	if got := c.Upper("3 µm") + c.Capital("µm"); got != "3 µMµm" {
		t.Errorf("got %q", got)
	}
	if got := c.Capital(""); got != "" {
		t.Errorf("got %q", got)
	}
}
