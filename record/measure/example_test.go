package measure_test

import (
	"fmt"

	"backleaf/record/measure"
)

// Two acrylic coats of 60 µm were laid on the front of a hardboard panel and
// one was forgotten on the back.
func ExampleBowEstimate() {
	stress, err := measure.FilmStress(measure.AcrylicDispersion)
	if err != nil {
		panic(err)
	}
	board, err := measure.FibreboardStiffness(measure.Hardboard, 3200)
	if err != nil {
		panic(err)
	}
	sheet := measure.Sheet{ThicknessMicrons: 3200, ModulusMPa: board.AlongMPa, Poisson: board.Poisson}
	bow, err := measure.BowEstimate(sheet, 600_000, []measure.Pull{{PerUnit: stress, Front: 120, Back: 60}})
	if err != nil {
		panic(err)
	}
	fmt.Printf("hollow at the front by %.2f to %.2f mm over 600 mm (estimate, upper bound)\n", bow.Low/1000, bow.High/1000)
	fmt.Println(stress.Source)
	// Output:
	// hollow at the front by 0.02 to 0.25 mm over 600 mm (estimate, upper bound)
	// from memory of the literature on film formation of soft dispersions, order of magnitude; it relaxes
}
