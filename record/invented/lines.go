package invented

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/accept"
)

// Panel is the panel of [Lines], and Moment when the last of them was written
// down.
const Panel record.Number = "KB26-0140-D"

var Moment = time.Date(2027, 6, 1, 12, 0, 0, 0, time.FixedZone("", 2*3600))

// Lines reads a short history, one entry a line: kind, when, fields. Short
// times are of 2026 at +02:00; "-" is not recorded. "_" is a space in a value,
// "~" one in one in braces. Acts are on [Panel] unless they name others. It
// panics where a line is none.
func Lines(text string) []record.Entry {
	var out []record.Entry
	for i, l := range strings.Split(strings.TrimSpace(text), "\n") {
		out = append(out, Line(strings.TrimSpace(l), i+1, 0))
	}
	return out
}

// Time reads a short time of a history.
func Time(s string) time.Time {
	when, err := record.ParseWhen(fullTime(s))
	if err != nil {
		panic(err)
	}
	e, _ := when.Earliest()
	return e
}

// fullTime writes out a short time of 2026.
func fullTime(s string) string {
	switch {
	case len(s) == len("05-02T09:00") && s[5] == 'T':
		return "2026-" + s + ":00+02:00"
	case len(s) == len("05-02"):
		return "2026-" + s
	}
	return s
}

// Line reads one line of a history as the entry of a number. Entries that it
// names ("@3") are counted from the first after so many before.
func Line(line string, seq, before int) record.Entry {
	f := strings.Fields(line)
	m := map[string]any{"v": 1, "seq": seq, "kind": f[0], "written": fmt.Sprintf("2027-05-%02dT%02d:%02d:00+02:00", 1+seq/1440, seq/60%24, seq%60)}
	if f[1] != "-" {
		m["at"] = fullTime(f[1])
		if when, err := record.ParseWhen(fullTime(f[1])); err == nil {
			if last, ok := when.Latest(); ok { // written down as it happened
				m["written"] = last.In(Moment.Location()).Format(time.RFC3339)
			}
		}
	}
	switch f[0] {
	case "studio", "material", "lot":
	default:
		m["panels"] = []string{string(Panel)}
	}
	for _, pair := range f[2:] {
		name, value, _ := strings.Cut(pair, "=")
		if strings.HasPrefix(value, "{") {
			value = strings.ReplaceAll(value, "~", " ")
		} else {
			value = strings.ReplaceAll(value, "_", " ")
		}
		switch name {
		case "panels":
			delete(m, name)
			if value != "-" {
				m[name] = strings.Split(value, ",")
			}
		case "faces", "extra", "uses", "means":
			m[name] = strings.Split(value, ",")
		case "board", "cloth", "change":
			if strings.HasPrefix(value, "{") {
				m[name] = jsontext.Value(value)
			} else {
				m[name] = value
			}
		case "mix":
			var mix []map[string]any
			for _, part := range strings.Split(value, "+") {
				material, lot, _ := strings.Cut(part, "/")
				p := map[string]any{"parts": 1, "material": material}
				if lot != "" {
					p["lot"] = lot
				}
				mix = append(mix, p)
			}
			m[name] = mix
		case "pigments":
			var ps []map[string]any
			for _, p := range strings.Split(value, "|") {
				n, index, _ := strings.Cut(p, ":")
				pigment := map[string]any{"name": n}
				if index != "" {
					pigment["colour_index"] = index
				}
				ps = append(ps, pigment)
			}
			m[name] = ps
		case "layers":
			n, err := strconv.Atoi(strings.TrimPrefix(value, "@"))
			if err != nil {
				panic(fmt.Sprintf("%s: %v", line, err))
			}
			m[name] = []int{n + before}
		case "grit", "entry":
			n, err := strconv.Atoi(strings.TrimPrefix(value, "@"))
			if err != nil {
				panic(fmt.Sprintf("%s: %v", line, err))
			}
			if strings.HasPrefix(value, "@") {
				n += before
			}
			m[name] = n
		default:
			m[name] = value
		}
	}
	b, err := json.Marshal(m)
	if err != nil {
		panic(err)
	}
	e, err := accept.Parse(b)
	if err != nil {
		panic(fmt.Sprintf("%s: %v", line, err))
	}
	return e
}
