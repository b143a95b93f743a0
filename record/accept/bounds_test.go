package accept_test

import (
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/accept"
)

// What lies ahead of its writing, no room has, or weighs nothing is refused at
// this gate, so at every door.
func TestBounds(t *testing.T) {
	const panel = `"v":1,"panels":["KB26-0001-K"],"written":"2026-05-02T01:00:00+14:00"`
	for text, want := range map[string]string{
		`{"kind":"note","text":"x",` + panel + `}`:                                                   "",
		`{"kind":"note","text":"x","at":"2026-05-02T00:30:00+14:00",` + panel + `}`:                  "",
		`{"kind":"note","text":"x","at":"2026-05-02",` + panel + `}`:                                 "",
		`{"kind":"note","text":"x","at":"2026-05-02T02:30:00+14:00",` + panel + `}`:                  "at",
		`{"kind":"note","text":"x","at":"2099",` + panel + `}`:                                       "at",
		`{"kind":"note","text":"x","at":"2099~",` + panel + `}`:                                      "at",
		`{"kind":"note","text":"x","at":"1998~",` + panel + `}`:                                      "",
		`{"kind":"coat","faces":["front"],"temperature":"700 °C",` + panel + `}`:                     "temperature",
		`{"kind":"coat","faces":["front"],"temperature":"70 °F",` + panel + `}`:                      "",
		`{"kind":"coat","faces":["front"],"wet_total":"0 g",` + panel + `}`:                          "wet_total",
		`{"kind":"varnish","wet_each":"0.0 mL",` + panel + `}`:                                       "wet_each",
		`{"kind":"climate","temperature":"-40 °C",` + panel + `}`:                                    "temperature",
		`{"kind":"cloth","faces":["front"],"wet_total":"420 g","temperature":"21 °C",` + panel + `}`: "",
	} {
		_, err := accept.Parse([]byte(text))
		got := ""
		if fe, ok := err.(*record.FieldError); ok {
			got = fe.Field
		}
		if (err != nil) != (want != "") || got != want {
			t.Errorf("%s: %v, want a refusal of %q", strings.TrimSuffix(text, panel+"}"), err, want)
		}
	}
	now := time.Date(2026, 5, 1, 11, 30, 0, 0, time.UTC)
	if w, _ := record.ParseWhen("2026-05-02"); accept.Ahead(w, now) {
		t.Error("a day that has begun in Kiritimati is called ahead")
	}
	if w, _ := record.ParseWhen("2026-05-03"); !accept.Ahead(w, now) {
		t.Error("a day that has begun nowhere is not called ahead")
	}
}
