package record

import (
	"math"
	"strings"
	"time"

	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record/edtf"
)

// When says when something happened: an exact moment with its offset
// ("2026-05-02T14:05:00+02:00"), an EDTF date for what is not exactly known
// ("1998~", "2019-21"), or "unknown". The zero value means "not recorded".
type When struct {
	text string
	date edtf.Date
	// Bounds in Unix seconds, kept because every panel is put in order by them;
	// an open side is as far as it goes.
	from, to int64
	offset   int32 // of a moment, in seconds east of UTC
	newer    bool  // the text is no date that this program can read
}

// ParseWhen reads an EDTF text of level 0 or 1, or "unknown".
func ParseWhen(s string) (When, error) {
	if s == "" || strings.EqualFold(s, Unknown) {
		return When{text: strings.ToLower(s)}, nil
	}
	d, err := edtf.Parse(s)
	if err != nil {
		return When{}, err
	}
	w := When{text: s, date: d, from: math.MinInt64, to: math.MaxInt64}
	if t, ok := d.Earliest(); ok {
		_, east := t.Zone()
		w.from, w.offset = t.Unix(), int32(east)
	}
	if t, ok := d.Latest(); ok {
		w.to = t.Unix()
	}
	return w, nil
}

// Moment is the When of an exact time, to the second, in its own offset.
func Moment(t time.Time) When {
	w, err := ParseWhen(t.Format(timeLayout))
	if err != nil {
		panic("record: a formatted time is always EDTF: " + err.Error())
	}
	return w
}

const timeLayout = "2006-01-02T15:04:05Z07:00"

// IsZero reports that no time was recorded.
func (w When) IsZero() bool { return w.text == "" }

// IsUnknown reports that the time was recorded as unknown.
func (w When) IsUnknown() bool { return w.text == Unknown }

// Known reports that there is a date, exact or not.
func (w When) Known() bool { return w.text != "" && w.text != Unknown && !w.newer }

// String returns the text as recorded.
func (w When) String() string { return w.text }

// Date returns the EDTF date; its zero value when not known.
func (w When) Date() edtf.Date { return w.date }

// Exact returns the moment in the offset in which it was recorded, when date,
// time of day and offset are all recorded.
func (w When) Exact() (time.Time, bool) {
	if n := len(w.text); !w.Known() || n != len("2006-01-02T15:04:05Z") && n != len(timeLayout) || w.text[10] != 'T' {
		return time.Time{}, false
	}
	return w.time(w.from), true
}

// Earliest and Latest return the bounds of what is recorded; false when that
// side is open or nothing is known.
func (w When) Earliest() (time.Time, bool) {
	if !w.Known() || w.from == math.MinInt64 {
		return time.Time{}, false
	}
	return w.time(w.from), true
}

// Latest returns the later bound; see [When.Earliest].
func (w When) Latest() (time.Time, bool) {
	if !w.Known() || w.to == math.MaxInt64 {
		return time.Time{}, false
	}
	return w.time(w.to), true
}

// time is a bound in the offset in which it was recorded.
func (w When) time(unix int64) time.Time {
	if w.offset == 0 {
		return time.Unix(unix, 0).UTC()
	}
	return time.Unix(unix, 0).In(time.FixedZone("", int(w.offset)))
}

// Before reports that w is certainly earlier than x: their bounds do not
// overlap. Unknown is never before or after anything.
func (w When) Before(x When) bool { return w.Known() && x.Known() && w.to < x.from }

// Within reports that w may lie within d of x.
func (w When) Within(x When, d time.Duration) bool {
	away := int64(d / time.Second)
	return w.Known() && x.Known() && (w.from <= x.to || w.from-x.to <= away) && (x.from <= w.to || x.from-w.to <= away)
}

// MarshalText returns the text as recorded.
func (w When) MarshalText() ([]byte, error) { return []byte(w.text), nil }

// UnmarshalText is [ParseWhen].
func (w *When) UnmarshalText(b []byte) (err error) { *w, err = ParseWhen(string(b)); return err }

// UnmarshalJSONFrom reads what stands in an entry. A form of date that a later
// program wrote is kept as it is; see [When.Fault].
func (w *When) UnmarshalJSONFrom(d *jsontext.Decoder) error {
	s, err := textFrom(d)
	if err == nil && w.UnmarshalText([]byte(s)) != nil {
		*w = When{text: s, newer: true}
	}
	return err
}

// Fault says why the text cannot be read as a date; nil if it can.
func (w When) Fault() error {
	if !w.newer {
		return nil
	}
	_, err := ParseWhen(w.text)
	return err
}
