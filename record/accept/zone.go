package accept

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"
	"time"

	"backleaf/record"
)

// zones are the places of the IANA time zone database (zone.tab, public
// domain), to propose the nearest one; what is accepted is what can be loaded.
//
//go:embed zones.txt
var zones string

// checkZone refuses a time zone that no machine knows: times would be written
// in another one. "Local" is the machine's own, and no name of a place.
func checkZone(s string) error {
	if sh := shapes["zone"]; sh.matches().MatchString(s) && s != "Local" {
		if _, err := time.LoadLocation(s); err == nil {
			return nil
		}
	}
	names := strings.Fields(zones)
	low := strings.Fields(strings.ToLower(zones))
	all := slices.Clone(low)
	for _, n := range low {
		all = append(all, n[strings.LastIndex(n, "/")+1:])
	}
	if i := slices.Index(all, record.Nearest(strings.ReplaceAll(s, " ", "_"), all)); i >= 0 {
		return fmt.Errorf("there is no time zone %q; the nearest is %s", clip(s), names[i%len(names)])
	}
	return fmt.Errorf("there is no time zone %q: expected %s", clip(s), shapes["zone"].Meaning)
}
