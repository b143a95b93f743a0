package register

import (
	"strings"
	"testing"
	"unicode"
)

// Every letter of Unicode that has an ASCII letter as another case stays what it
// is: such a host is another one (RFC 5891).
func TestHostsStayApart(t *testing.T) {
	const base = "https://pictures.example/sk/"
	for r := rune(0x80); r <= unicode.MaxRune; r++ {
		for _, other := range []rune{unicode.ToUpper(r), unicode.ToLower(r), unicode.SimpleFold(r)} {
			if other < 0x80 {
				if alike := strings.ReplaceAll(base, strings.ToLower(string(other)), string(r)); alike != base && hostFolded(alike) == hostFolded(base) {
					t.Errorf("%q passes for %q", alike, base)
				}
			}
		}
	}
	for link, same := range map[string]bool{"HTTPS://PICTURES.EXAMPLE/sk/": true, "https://Pictures.example/sk/": true, "https://pictures.example/SK/": false,
		"https://pictures.example.evil.example/sk/": false, "HTTPS://PICTURES.EXAMPLE?SK/": false} {
		if (hostFolded(link) == hostFolded(base)) != same {
			t.Errorf("%q: the same as %q is %v", link, base, !same)
		}
	}
	if hostFolded("ARK:/12345/") != "ark:/12345/" {
		t.Error(hostFolded("ARK:/12345/"))
	}
}
