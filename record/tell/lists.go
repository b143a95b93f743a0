package tell

import (
	"fmt"
	"strings"
	"time"

	"backleaf/record"
)

// When prints a time for a reader, short where it is near.
func When(w record.When, now time.Time, loc *time.Location) string {
	switch {
	case w.IsZero():
		return "date not recorded"
	case w.IsUnknown():
		return "date unknown"
	}
	t, ok := w.Exact()
	if !ok {
		return w.Date().Words()
	}
	t, now = t.In(loc), now.In(loc)
	if t.Format("2006-01-02") == now.Format("2006-01-02") {
		return "today " + t.Format("15:04")
	}
	return t.Format("2 Jan 2006 15:04")
}

// PanelList names panels briefly: one, a run, or a count with both ends.
func PanelList(ns []record.Number) string {
	switch len(ns) {
	case 0:
		return ""
	case 1:
		return string(ns[0])
	case 2:
		return fmt.Sprintf("%s and %s", ns[0], ns[1])
	}
	between := " to "
	if int(len(ns)) != ns[len(ns)-1].Serial()-ns[0].Serial()+1 {
		between = " … "
	}
	return fmt.Sprintf("%d panels, %s%s%s", len(ns), ns[0], between, ns[len(ns)-1])
}

// FaceList says faces as a person would.
func FaceList(fs []record.Face) string {
	if len(fs) == 3 {
		return "front, back and edges"
	}
	var s []string
	for _, f := range fs {
		s = append(s, string(f))
	}
	return strings.Join(s, " and ")
}

// Mix says a mix as it would be typed.
func Mix(ps []record.Part) string {
	var s []string
	for _, p := range ps {
		name := string(p.Material)
		if p.Lot != "" && p.Lot != record.Unknown {
			name = string(p.Lot)
		}
		if len(ps) > 1 {
			name = fmt.Sprintf("%d %s", p.Parts, name)
		}
		s = append(s, name)
	}
	return strings.Join(s, " + ")
}

// Whereabouts says where a panel is, as far as recorded.
func Whereabouts(p *record.Panel) string {
	if _, ok := p.Discarded(); ok {
		return "discarded"
	}
	if h, ok := p.Away(); ok {
		return "away: " + string(h.Body.How)
	}
	return "in the studio"
}

// Dated puts a word before a date that is known.
func Dated(word string, w record.When) string {
	if !w.Known() {
		return ""
	}
	return word + w.Date().Words()
}

// After puts a word before a value that is there.
func After(word, value string) string {
	if value == "" {
		return ""
	}
	return word + value
}
