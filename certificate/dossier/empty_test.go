package dossier_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"backleaf/record/toolcheck"
)

// No page but the last is left more than half empty: measured on the pages as
// they are printed, by the lowest ink on each.
func TestNoPageHalfEmpty(t *testing.T) {
	toolcheck.Require(t, "pdftoppm")
	pages := 0
	for name, d := range stress(t) {
		if !toolcheck.Thorough() && name != "afternoon" && name != "empty" {
			continue
		}
		base := filepath.Join(t.TempDir(), "page")
		toolcheck.Run(t, "pdftoppm", "-r", "18", "-gray", save(t, name+".pdf", pdf(t, d)), base)
		files, err := filepath.Glob(base + "-*.pgm")
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: no pages: %v", name, err)
		}
		for i, f := range files[:len(files)-1] {
			pages++
			if low := lowestInk(t, f); low < 0.5 {
				t.Errorf("%s: page %d of %d ends at %.0f %% of its height", name, i+1, len(files), low*100)
			}
		}
	}
	t.Logf("%d pages measured", pages)
}

// lowestInk is how far down a page, from 0 to 1, there is anything on it.
func lowestInk(t *testing.T, path string) float64 {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var w, h, most int
	if _, err := fmt.Sscanf(string(data[:min(len(data), 40)]), "P5\n%d %d\n%d\n", &w, &h, &most); err != nil || w*h == 0 || len(data) < w*h {
		t.Fatalf("%s: no picture: %v", path, err)
	}
	pix := data[len(data)-w*h:]
	for y := h - 1; y >= 0; y-- {
		for _, p := range pix[y*w : (y+1)*w] {
			if p < 0xd0 {
				return float64(y+1) / float64(h)
			}
		}
	}
	return 0
}
