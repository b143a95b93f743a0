package check_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/tell"
)

const bench = `
material - key=sealer name=sealer uses=sealer binder=acrylic-dispersion waterborne=yes touch_dry_from=20_min touch_dry_to=30_min cure_from=24_h cure_to=36_h
material - key=ground name=ground uses=ground binder=acrylic-dispersion waterborne=yes touch_dry_from=30_min touch_dry_to=2_h cure_from=24_h cure_to=72_h
material - key=oilground name=oil_ground uses=ground binder=drying-oil waterborne=no
material - key=plain name=unstated uses=sealer binder=pva-dispersion waterborne=yes
material - key=mystery name=an_old_tin uses=sealer
cut 05-01T09:00 batch=may size=30_x_40_cm_x_3_mm
`

// shown puts a step in one line, times of May 2026 short.
func shown(s check.Step) string {
	short := func(t time.Time) string {
		if t.IsZero() {
			return "-"
		}
		return t.In(moment.Location()).Format("01-02T15:04")
	}
	late := ""
	if s.Overdue {
		late = " overdue"
	}
	return fmt.Sprintf("%s %s %s %s%s", strings.ReplaceAll(string(s.Task), " ", "-"), short(s.From), short(s.Safe), short(s.Until), late)
}

// The windows of the bench (common practice): trim from 10 minutes to 30 hours
// after laying; the other face from touch-dry, 20 to 30 minutes, the same day;
// cured in 24 to 36 hours, moved by humidity; oil 72 hours to two weeks after
// an acrylic ground; varnish from six months.
func TestDue(t *testing.T) {
	for _, c := range []struct {
		name, story, at string
		want            []string
	}{
		{"a bare board", ``, "05-01T10:00", []string{"seal - - -"}},
		{"before it was cut", ``, "05-01T08:00", nil},
		{"sealed all round in a dry room", `
			coat 05-02T09:00 purpose=sealer faces=front,back,edges mix=sealer humidity=40_%`, "05-02T09:10",
			[]string{"lay 05-02T09:20 05-02T09:30 -"}},
		{"cloth laid, back not yet coated", `
			coat 05-02T09:00 purpose=sealer faces=front,back,edges mix=sealer humidity=40_%
			cloth 05-02T14:00 faces=front mix=sealer humidity=40_%`, "05-02T14:15",
			[]string{"trim 05-02T14:10 - 05-03T20:00", "answer 05-02T14:20 05-02T14:30 05-03T14:00", "sand 05-03T14:00 05-04T02:00 -"}},
		{"the same from an earlier moment", `
			coat 05-02T09:00 purpose=sealer faces=front,back,edges mix=sealer humidity=40_%
			cloth 05-02T14:00 faces=front mix=sealer humidity=40_%`, "05-02T09:40",
			[]string{"lay 05-02T09:20 05-02T09:30 -"}},
		{"the same two days later, nothing done", `
			cloth 05-02T14:00 faces=front mix=sealer humidity=40_%`, "05-04T14:00",
			[]string{"answer 05-02T14:20 05-02T14:30 05-03T14:00 overdue", "trim 05-02T14:10 - 05-03T20:00 overdue", "sand 05-03T14:00 05-04T02:00 -"}},
		{"the back coated when the ground was long ready: no paint while it is wet", `
			coat 05-02T09:00 purpose=ground faces=front mix=ground humidity=40_%
			coat 05-20T09:00 purpose=sealer faces=back mix=sealer humidity=40_%`, "05-20T09:05",
			[]string{"paint 05-20T09:20 05-20T09:30 -", "sand 05-21T09:00 05-21T21:00 -"}},
		{"a ground on the cloth: nothing says that the film below it is soft", `
			coat 05-02T09:00 purpose=sealer faces=front,back,edges mix=sealer humidity=55_%
			cloth 05-02T10:00 faces=front mix=sealer humidity=55_%
			coat 05-02T10:30 purpose=sealer faces=back mix=sealer humidity=55_%
			coat 05-02T12:00 purpose=ground faces=front mix=ground humidity=55_%
			coat 05-02T12:30 purpose=ground faces=back mix=ground humidity=55_%`, "05-02T13:00",
			[]string{"sand 05-04T12:30 05-05T12:30 -", "paint 05-05T12:00 05-16T12:00 -"}},
		{"laid nobody knows when", `
			cloth unknown faces=front mix=sealer`, "05-04T14:00",
			[]string{"answer - - -", "sand - - -"}},
		{"acrylic over the oil of the day before: the oil has to dry too", `
			coat 05-02T12:00 purpose=ground faces=front mix=ground humidity=55_%
			paint 05-10T10:00 faces=front medium=oil
			paint 05-11T10:00 faces=front medium=acrylic`, "05-12T13:00",
			[]string{"varnish 11-10T10:00 05-10T10:00 -"}},
		{"trimmed and answered in air of 55 %", `
			cloth 05-02T14:00 faces=front mix=sealer humidity=55_%
			trimmed 05-02T14:30
			coat 05-02T15:00 purpose=sealer faces=back mix=sealer humidity=55_%`, "05-02T16:00",
			[]string{"sand 05-03T21:00 05-04T03:00 -"}},
		{"no humidity recorded: from the driest air to the dampest", `
			cloth 05-02T14:00 faces=front mix=sealer
			trimmed 05-02T14:30
			coat 05-02T15:00 purpose=sealer faces=back mix=sealer`, "05-02T16:00",
			[]string{"sand 05-03T15:00 05-04T15:00 -"}},
		{"warm air helps the touch, not the cure", `
			cloth 05-02T14:00 faces=front mix=sealer humidity=70_%
			trimmed 05-02T14:15
			warm-air 05-02T14:16 faces=front`, "05-02T14:18",
			[]string{"answer 05-02T14:20 05-02T14:30 05-03T14:00", "sand 05-04T02:00 - -"}},
		{"sanded", `
			coat 05-02T14:00 purpose=sealer faces=front,back,edges mix=sealer humidity=40_%
			cloth 05-02T15:00 faces=front mix=sealer humidity=40_%
			trimmed 05-02T15:30
			coat 05-02T16:00 purpose=sealer faces=back mix=sealer humidity=40_%
			sanded 05-04T09:00 faces=front scale=P grit=180`, "05-04T10:00",
			[]string{"prime 05-03T16:00 05-04T04:00 -"}},
		{"an acrylic ground", `
			coat 05-02T14:00 purpose=ground faces=front,back mix=ground humidity=40_%`, "05-02T15:00",
			[]string{"sand 05-03T14:00 05-05T14:00 -", "paint 05-05T14:00 05-16T14:00 -"}},
		{"an oil ground", `
			coat 05-02T14:00 purpose=ground faces=front,back mix=oilground`, "05-02T15:00",
			[]string{"paint 06-02T14:00 11-02T14:00 -"}},
		{"painted in oil", `
			paint 05-02T14:00 medium=oil`, "05-02T15:00",
			[]string{"varnish 11-02T14:00 05-02T14:00 -"}},
		{"painted in oil about May: no day follows from it", `
			paint 2026-05~ medium=oil`, "05-02T15:00",
			[]string{"varnish - - -"}},
		{"painted in acrylic", `
			paint 05-02T14:00 medium=acrylic`, "05-12T15:00",
			[]string{"varnish 05-05T14:00 05-16T14:00 -"}},
		{"painted with who knows what", `
			paint 05-02T14:00`, "05-12T15:00", []string{"varnish - - -"}},
		{"varnished", `
			paint 05-02T14:00 medium=acrylic
			varnish 05-12T14:00`, "05-13T15:00", []string{"label - - -"}},
		{"no times on the tin: the usual ones", `
			coat 05-02T14:00 purpose=sealer faces=front mix=plain humidity=40_%`, "05-02T15:00",
			[]string{"lay 05-02T14:20 05-02T14:30 -", "answer 05-02T14:20 05-02T14:30 05-03T14:00"}},
		{"a tin without a name has no window", `
			coat 05-02T14:00 purpose=sealer faces=front,back mix=mystery`, "05-02T15:00",
			[]string{"lay - - -"}},
		{"a day without an hour widens the window", `
			cloth 2026-05-02 faces=front,back mix=sealer humidity=40_%`, "05-02T15:00",
			[]string{"trim 05-03T02:09 - 05-03T08:00", "sand 05-03T02:00 05-04T13:59 -"}},
		{"given up", `
			coat 05-02T14:00 purpose=sealer faces=front mix=sealer
			discarded 05-03T09:00 because=split`, "05-04T10:00", nil},
		{"sold", `
			paint 05-02T14:00 medium=acrylic
			handed-over 05-03T09:00 how=sale`, "05-14T10:00", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			w, _ := fold(t, lines(t, strings.TrimSpace(strings.TrimSpace(bench)+"\n"+strings.TrimSpace(c.story))))
			now := at(t, c.at)
			var got []string
			for _, s := range check.Due(w, now) {
				if tell.English().Lacks(s.Said) != nil || len(s.Panels) != 1 {
					t.Errorf("a step without words or panel: %+v", s)
				}
				got = append(got, shown(s))
			}
			slices.Sort(got)
			want := slices.Sorted(slices.Values(c.want))
			if !slices.Equal(got, want) {
				t.Errorf("got\n %s\nwant\n %s", strings.Join(got, "\n "), strings.Join(want, "\n "))
			}
		})
	}
}

// Overdue steps come first, then what can be done now, then later, then what
// has no window; panels in one state are one line.
func TestDueOrderAndGroup(t *testing.T) {
	w, _ := fold(t, lines(t, strings.TrimSpace(bench)+`
cut 05-01T09:00 batch=may size=30_x_40_cm_x_3_mm panels=KB26-0141-W,KB26-0142-C
cloth 05-02T14:00 faces=front mix=sealer humidity=40_% panels=KB26-0141-W,KB26-0142-C
paint 05-04T14:00 medium=oil`))
	now := at(t, "05-04T15:00")
	steps := check.Due(w, now)
	rank := []check.State{"overdue", "now", "later", "any-time"}
	for i := 1; i < len(steps); i++ {
		if a, b := steps[i-1].State(now), steps[i].State(now); slices.Index(rank, a) > slices.Index(rank, b) {
			t.Errorf("%s before %s", a, b)
		}
	}
	groups := check.Group(steps)
	var got []string
	for _, g := range groups {
		got = append(got, fmt.Sprintf("%s %s %d", g.State(now), g.Task, len(g.Panels)))
	}
	want := []string{"overdue answer 2", "overdue trim 2", "now sand 2", "later varnish 1"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	if n := groups[0].Panels; !slices.Equal(n, []record.Number{"KB26-0141-W", "KB26-0142-C"}) {
		t.Errorf("panels %s", n)
	}
	for _, s := range steps {
		if len(s.Panels) != 1 {
			t.Errorf("grouping changed a step: %+v", s)
		}
	}
}

// A calendar is read back line by line as RFC 5545 asks.
func TestCalendar(t *testing.T) {
	from := at(t, "05-02T14:10")
	steps := []check.Step{
		{Task: check.TaskTrim, Batch: "may", Panels: []record.Number{panel}, Said: text("trim; now, or\\later\nat once"), From: from, Until: from.Add(30 * time.Hour), Entry: 7},
		{Task: check.TaskSand, Panels: []record.Number{panel, "KB26-0141-W"}, Said: text(strings.Repeat("ā long wörd ", 40)), From: from, Safe: from.Add(12 * time.Hour), Entry: 7},
		{Task: check.TaskVarnish, Panels: []record.Number{panel}, Said: text("varnish"), From: from, Entry: 9},
		{Task: check.TaskSeal, Panels: []record.Number{panel}, Said: text("no window")},
	}
	stamp := at(t, "05-02T15:00")
	events := readCalendar(t, string(check.Calendar(steps, stamp, said)))
	if len(events) != 3 {
		t.Fatalf("%d events, want 3", len(events))
	}
	for i, want := range []map[string]string{
		{"DTSTAMP": "20260502T130000Z", "DTSTART": "20260502T121000Z", "DTEND": "20260503T181000Z", "SUMMARY": "trim", "DESCRIPTION": "trim; now, or\\later\nat once"},
		{"DTSTART": "20260502T121000Z", "DTEND": "20260503T001000Z", "SUMMARY": "sand", "DESCRIPTION": steps[1].Said.Code},
		{"DTSTART": "20260502T121000Z", "DTEND": "20260502T131000Z", "TRANSP": "TRANSPARENT"},
	} {
		for name, value := range want {
			if events[i][name] != value {
				t.Errorf("event %d: %s is %q, want %q", i, name, events[i][name], value)
			}
		}
	}
	ids := map[string]bool{}
	for _, e := range events {
		ids[e["UID"]] = true
	}
	later := slices.Clone(steps[:3])
	for i := range later {
		later[i].From, later[i].Said = later[i].From.Add(time.Hour), text("otherwise")
	}
	for _, e := range readCalendar(t, string(check.Calendar(later, stamp.Add(time.Hour), said))) {
		if !ids[e["UID"]] {
			t.Errorf("the event %s is not known again after its window moved", e["SUMMARY"])
		}
	}
	if len(ids) != 3 {
		t.Errorf("%d identifiers for 3 events", len(ids))
	}
	if empty := readCalendar(t, string(check.Calendar(nil, stamp, said))); len(empty) != 0 {
		t.Errorf("events out of nothing: %v", empty)
	}
}

// text stands for the words of a step.
func text(s string) record.Said { return record.Said{Code: s} }

func said(s check.Step) (summary, description string) { return string(s.Task), s.Said.Code }

// readCalendar is a reader of its own: unfolding, property names, escapes.
func readCalendar(t testing.TB, text string) []map[string]string {
	t.Helper()
	if !strings.HasSuffix(text, "\r\n") || strings.Count(text, "\n") != strings.Count(text, "\r\n") || strings.Count(text, "\r") != strings.Count(text, "\r\n") {
		t.Fatal("lines do not all end in CR LF")
	}
	for _, l := range strings.Split(strings.TrimSuffix(text, "\r\n"), "\r\n") {
		if len(l) > 75 || l == "" {
			t.Errorf("a line of %d octets: %q", len(l), l)
		}
		if strings.ToValidUTF8(l, "?") != l {
			t.Errorf("a character is cut in two: %q", l)
		}
	}
	var events []map[string]string
	var open []string
	for _, l := range strings.Split(strings.TrimSuffix(strings.ReplaceAll(text, "\r\n ", ""), "\r\n"), "\r\n") {
		name, value, ok := strings.Cut(l, ":")
		if !ok || strings.Trim(name, "ABCDEFGHIJKLMNOPQRSTUVWXYZ-") != "" {
			t.Errorf("not a property: %q", l)
		}
		switch name {
		case "BEGIN":
			open = append(open, value)
			if value == "VEVENT" {
				events = append(events, map[string]string{})
			}
			continue
		case "END":
			if len(open) == 0 || open[len(open)-1] != value {
				t.Fatalf("END:%s closes nothing", value)
			}
			open = open[:len(open)-1]
			continue
		}
		if len(open) == 2 {
			if _, twice := events[len(events)-1][name]; twice {
				t.Errorf("%s stands twice", name)
			}
			events[len(events)-1][name] = unescape(t, value)
		}
	}
	if len(open) != 0 {
		t.Errorf("%v is not closed", open)
	}
	for _, e := range events {
		for _, must := range []string{"UID", "DTSTAMP", "DTSTART", "SUMMARY"} {
			if e[must] == "" {
				t.Errorf("an event without %s", must)
			}
		}
	}
	return events
}

func unescape(t testing.TB, s string) string {
	t.Helper()
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		switch {
		case s[i] == '\\' && i+1 < len(s):
			i++
			switch s[i] {
			case 'n', 'N':
				b.WriteByte('\n')
			case '\\', ';', ',':
				b.WriteByte(s[i])
			default:
				t.Errorf("an escape that there is not: \\%c", s[i])
			}
		case s[i] == ';' || s[i] == ',':
			t.Errorf("%q is not escaped in %q", s[i], s)
		default:
			b.WriteByte(s[i])
		}
	}
	return b.String()
}
