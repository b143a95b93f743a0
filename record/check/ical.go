package check

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"
	"time"
	"unicode/utf8"
)

// CalendarKind stands in each calendar that is written here.
const CalendarKind = "PRODID:-//backleaf//due//EN"

// Calendar writes the windows of steps as an iCalendar stream (RFC 5545) for a
// phone: one event for each step with a window, marked transparent, since a
// drying film does not keep anyone busy. stamp is the time of writing.
//
// The UID of an event follows from its task, panels and first entry, so that a
// calendar read in again replaces what it held. Steps without a window are
// left out. words gives the summary and the description of a step.
func Calendar(steps []Step, stamp time.Time, words func(Step) (summary, description string)) []byte {
	var b strings.Builder
	line := func(name, value string) { fold(&b, name+":"+value) }
	line("BEGIN", "VCALENDAR")
	line("VERSION", "2.0")
	fold(&b, CalendarKind)
	line("CALSCALE", "GREGORIAN")
	for _, s := range steps {
		if s.From.IsZero() {
			continue
		}
		end := s.Until
		if end.IsZero() {
			end = s.Safe
		}
		if !end.After(s.From) {
			end = s.From.Add(time.Hour)
		}
		line("BEGIN", "VEVENT")
		line("UID", uid(s))
		line("DTSTAMP", utc(stamp))
		line("DTSTART", utc(s.From))
		line("DTEND", utc(end))
		summary, description := words(s)
		line("SUMMARY", escape(summary))
		line("DESCRIPTION", escape(description))
		line("TRANSP", "TRANSPARENT")
		line("END", "VEVENT")
	}
	line("END", "VCALENDAR")
	return []byte(b.String())
}

func uid(s Step) string {
	sum := sha256.Sum256(fmt.Appendf(nil, "%s\n%d\n%v", s.Task, s.Entry, s.Panels))
	return hex.EncodeToString(sum[:12]) + "@backleaf"
}

func utc(t time.Time) string { return t.UTC().Format("20060102T150405Z") }

// escape writes text as RFC 5545, 3.3.11 asks.
func escape(s string) string {
	return strings.NewReplacer("\\", "\\\\", ";", "\\;", ",", "\\,", "\r\n", "\\n", "\n", "\\n", "\r", "\\n").Replace(s)
}

// maxLine is the longest line in octets, without its line break (RFC 5545,
// 3.1).
const maxLine = 75

// fold breaks a line where it gets too long, never inside a character.
func fold(b *strings.Builder, s string) {
	width := maxLine
	for len(s) > width {
		cut := width
		for !utf8.RuneStart(s[cut]) {
			cut--
		}
		b.WriteString(s[:cut] + "\r\n ")
		s, width = s[cut:], maxLine-1
	}
	b.WriteString(s + "\r\n")
}
