package label

import "strings"

// WithFacts asks for a second symbol that holds the facts as text, for the day
// when no address leads anywhere: the number in its first line, then what the
// label tells in words.
func (in Input) WithFacts() Input {
	join := func(sep string, parts ...string) string {
		var out []string
		for _, p := range parts {
			if p != "" {
				out = append(out, p)
			}
		}
		return strings.Join(out, sep)
	}
	size := in.OtherUnits
	if size == "" {
		size = in.Dimensions
	}
	text := func(made ...string) string {
		return plainSpaces.Replace(join("\n", in.Number, join(", ", in.Title, in.Date), join(", ", in.Maker, in.Place), in.Made, in.Medium, size,
			strings.Join(in.Hazards, " "), join("\n", made...), in.Sealed, in.Changed, in.Where, in.Issue, in.Fingerprint))
	}
	in.Facts, in.FactsShort = text(strings.Join(in.buildUp(), " / ")), text(in.Varnish)
	if !in.varnishInBuildUp() {
		in.Facts = text(strings.Join(in.BuildUp, " / "), in.Varnish)
	}
	return in
}

// plainSpaces keeps the symbol small: signs of type mean nothing to what reads it.
var plainSpaces = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "\u2044", "/", "–", "-", "×", "x")
