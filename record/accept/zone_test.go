package accept

import (
	"strings"
	"testing"
	"time"
	_ "time/tzdata"
)

// A time zone that no machine knows is refused, and the place that was most
// likely meant is named, by its whole name. Names are those of the IANA time
// zone database.
func TestZone(t *testing.T) {
	for typed, near := range map[string]string{
		"Europe/Riga": "", "UTC": "", "Etc/GMT-2": "", "America/Argentina/Ushuaia": "", "Europe/Kiev": "",
		"Berlin": "Europe/Berlin", "berlin": "Europe/Berlin", "Europe/Berln": "Europe/Berlin", "New York": "America/New_York", "Ushuaia": "America/Argentina/Ushuaia",
		"Narnia": "expected", "Local": "no time zone", "../../etc/passwd": "expected", "Europe": "no time zone", "1": "expected",
	} {
		err := checkZone(typed)
		if (err == nil) != (near == "") || err != nil && !strings.Contains(err.Error(), near) {
			t.Errorf("%q: %v, expected %q", typed, err, near)
		}
	}
	for i, name := range strings.Fields(zones) { // each that is proposed is one
		if _, err := time.LoadLocation(name); err != nil {
			t.Error(err)
		}
		if err := checkZone(name); err != nil {
			t.Error(err)
		}
		if i%5 > 0 { // to look for one takes a while
			continue
		}
		place := strings.ToLower(strings.ReplaceAll(name[strings.LastIndex(name, "/")+1:], "_", " "))
		if err := checkZone(place); err != nil && !strings.HasSuffix(err.Error(), " "+name) {
			t.Errorf("%s is not found by its place: %v", name, err)
		}
	}
}
