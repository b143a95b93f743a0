package benchpage

import (
	"net/url"
	"strconv"
	"strings"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

// coating asks for what is seldom said of a wet application.
func (a *ask) coating() {
	a.more("mix", "amount-each", "thinned", "tool", "temp", "rh", "note")
}

// coating reads a wet application.
func coating(r *typed.Reader, f url.Values) record.Coating {
	c := record.Coating{Mix: r.Mix(first(f, "mix", "with")), Tool: f.Get("tool"), Note: f.Get("note")}
	r.Text("thinned", f.Get("thinned"), &c.Thinned)
	r.Text("amount", f.Get("amount"), &c.WetTotal)
	r.Text("amount-each", f.Get("amount-each"), &c.WetEach)
	r.Text("temp", inUnit(f.Get("temp"), "°C"), &c.Temperature)
	r.Text("rh", inUnit(f.Get("rh"), "%"), &c.Humidity)
	return c
}

// coated is a wet application as a filled form.
func coated(c record.Coating, f url.Values) url.Values {
	name := "with"
	if len(c.Mix) > 1 {
		name = "mix"
	}
	for k, v := range map[string]string{name: mixText(c.Mix), "thinned": c.Thinned.String(), "tool": c.Tool, "amount": c.WetTotal.String(), "amount-each": c.WetEach.String()} {
		f.Set(k, v)
	}
	return f
}

// first returns the first field in which something stands.
func first(f url.Values, names ...string) string {
	for _, n := range names {
		if s := strings.TrimSpace(f.Get(n)); s != "" {
			return s
		}
	}
	return ""
}

// inUnit adds the unit that stands beside the input to a bare number.
func inUnit(s, unit string) string {
	s = strings.TrimSpace(s)
	if s != "" && strings.Trim(s, "0123456789.,-−") == "" {
		return s + " " + unit
	}
	return s
}

func texts[T ~string](ws []T) (out []string) {
	for _, w := range ws {
		out = append(out, string(w))
	}
	return out
}

func itoa(n int64) string { return strconv.FormatInt(n, 10) }
