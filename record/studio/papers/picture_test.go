package papers

import (
	"fmt"
	"testing"

	"backleaf/certificate"
)

// A photograph that lies where the panel stands, that is cut or taken askew, or
// that prints coarsely, is questioned; one that fits is not.
func TestPhotographQuestioned(t *testing.T) {
	for name, c := range map[string]struct {
		photo certificate.Photo
		want  []string
	}{
		"none":          {certificate.Photo{}, nil},
		"fits":          {certificate.Photo{PixelsWide: 900, PixelsHigh: 1200, PixelsPerInch: 300, Ratio: 1}, nil},
		"a little off":  {certificate.Photo{PixelsWide: 900, PixelsHigh: 1200, PixelsPerInch: 300, Ratio: 1.04}, nil},
		"too wide":      {certificate.Photo{PixelsWide: 1200, PixelsHigh: 1200, PixelsPerInch: 300, Ratio: 4. / 3}, []string{"photograph-askew 33 wider"}},
		"too narrow":    {certificate.Photo{PixelsWide: 450, PixelsHigh: 1200, PixelsPerInch: 300, Ratio: 0.5}, []string{"photograph-askew 100 narrower"}},
		"turned":        {certificate.Photo{PixelsWide: 1200, PixelsHigh: 900, PixelsPerInch: 300, Ratio: 16. / 9, Turned: true}, []string{"photograph-turned"}},
		"coarse":        {certificate.Photo{PixelsWide: 90, PixelsHigh: 120, PixelsPerInch: 149, Ratio: 1}, []string{"photograph-coarse 149 150"}},
		"just fine":     {certificate.Photo{PixelsWide: 90, PixelsHigh: 120, PixelsPerInch: 150, Ratio: 1}, nil},
		"panel unsized": {certificate.Photo{PixelsWide: 900, PixelsHigh: 1200, PixelsPerInch: 300}, nil},
	} {
		_, warnings := photographSaid(c.photo)
		var got []string
		for _, w := range warnings {
			said := string(w.Code)
			for _, v := range w.Values {
				said += " " + v.Text()
			}
			got = append(got, said)
		}
		if fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}
