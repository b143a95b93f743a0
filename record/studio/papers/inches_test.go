package papers_test

import (
	"regexp"
	"strings"
	"testing"

	"backleaf/record/toolcheck"
)

// A length has one figure in inches on every paper, that to the nearest eighth,
// computed here on its own: 300 mm are 11 3/4 in and nowhere 11 13/16.
func TestOneRounding(t *testing.T) {
	toolcheck.Require(t, "pdftotext")
	for size, inches := range map[string]string{
		"30 x 40 cm x 3 mm": "11 3⁄4 × 15 3⁄4 × 1⁄8 in", "240 x 300 mm": "9 1⁄2 × 11 3⁄4 in", "50.8 x 61 cm x 19 mm": "20 × 24 × 3⁄4 in",
	} {
		for paper, page := range requiredPages(t, requiredRecord{name: size, swap: sized(size)}) {
			if !strings.Contains(page, squeezed(inches)) {
				t.Errorf("%s: %q is not on the %s", size, inches, paper)
			}
			if odd := regexp.MustCompile(`\d+⁄(16|32|64)`).FindString(page); odd != "" {
				t.Errorf("%s: %s on the %s", size, odd, paper)
			}
		}
	}
}
