package check_test

import (
	"fmt"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/check"
)

// BenchmarkPanel judges one panel of a batch of fourteen.
func BenchmarkPanel(b *testing.B) { benchmark(b, 14) }

// BenchmarkLargeBatch judges one panel of a batch of a thousand.
func BenchmarkLargeBatch(b *testing.B) { benchmark(b, 1000) }

func benchmark(b *testing.B, n int) {
	var numbers []string
	for i := range n {
		num, err := record.NewNumber("KB", 26, i+1, "")
		if err != nil {
			b.Fatal(err)
		}
		numbers = append(numbers, string(num))
	}
	all := " panels=" + strings.Join(numbers, ",")
	text := `material - key=mdf name=mdf uses=board board={"kind":"mdf"}
material - key=sealer name=sealer uses=sealer binder=acrylic-dispersion waterborne=yes solids_by_volume=45_% density=1.04_g/mL cure_from=24_h cure_to=36_h
cut 05-01T09:00 batch=may size=30_x_40_cm_x_3_mm board=mdf` + all + strings.Repeat(`
coat 05-02T09:00 purpose=sealer faces=front,back,edges mix=sealer wet_total=400_g`+all, 6) + `
cloth 05-03T09:00 faces=front mix=sealer wet_total=300_g` + all + `
paint 05-20 medium=oil` + all
	w, err := record.Fold(lines(b, text))
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if fs := check.Panel(w, w.Panels[0], moment); len(fs) != len(check.Rules) {
			b.Fatal(fmt.Sprint(fs))
		}
	}
}
