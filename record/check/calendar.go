package check

import (
	"crypto/sha256"
	"fmt"
	"strings"
	"time"
	"unicode/utf8"
)

// Calendar writes the windows of steps as an iCalendar object (RFC 5545), one
// event for each group that has a beginning or an end. stamp is the time of
// writing. The identifier of an event follows from what it says, so that a
// phone that reads two calendars keeps one event.
func Calendar(groups []Group, stamp time.Time) []byte {
	var b strings.Builder
	line := func(name, value string) { fold(&b, name+":"+value) }
	line("BEGIN", "VCALENDAR")
	line("VERSION", "2.0")
	line("PRODID", "-//backleaf//bench//EN")
	line("CALSCALE", "GREGORIAN")
	for _, g := range groups {
		from, by := g.From, g.By
		if from.IsZero() && by.IsZero() {
			continue
		}
		if from.IsZero() {
			from = by
		}
		title := fmt.Sprintf("%s: %s", g.Do, g.Panels[0])
		if len(g.Panels) > 1 {
			title = fmt.Sprintf("%s: %d panels, batch %s", g.Do, len(g.Panels), g.Batch)
		}
		var numbers []string
		for _, n := range g.Panels {
			numbers = append(numbers, string(n))
		}
		what := strings.Join(numbers, ", ")
		if g.Note != "" {
			what = g.Note + "\n" + what
		}
		id := sha256.Sum256([]byte(title + what + utc(from) + utc(by)))
		line("BEGIN", "VEVENT")
		line("UID", fmt.Sprintf("%x@backleaf.invalid", id[:12]))
		line("DTSTAMP", utc(stamp))
		line("DTSTART", utc(from))
		if by.After(from) {
			line("DTEND", utc(by))
		}
		line("SUMMARY", escape(title))
		line("DESCRIPTION", escape(what))
		line("END", "VEVENT")
	}
	line("END", "VCALENDAR")
	return []byte(b.String())
}

func utc(t time.Time) string { return t.UTC().Format("20060102T150405Z") }

// textEscapes is the escaping of TEXT in RFC 5545, 3.3.11.
var textEscapes = strings.NewReplacer(`\`, `\\`, ";", `\;`, ",", `\,`, "\n", `\n`, "\r", "")

func escape(s string) string { return textEscapes.Replace(s) }

// fold writes one content line in lines of at most 75 octets (3.1), never
// inside a character.
func fold(b *strings.Builder, s string) {
	room := 75
	for len(s) > room {
		i := room
		for !utf8.RuneStart(s[i]) {
			i--
		}
		b.WriteString(s[:i] + "\r\n ")
		s, room = s[i:], 74
	}
	b.WriteString(s + "\r\n")
}
