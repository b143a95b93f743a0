package measure_test

import (
	"testing"

	"backleaf/record/measure"
)

func TestPaper(t *testing.T) {
	const iso = "ISO 9706, as in the Library of Congress report on permanent paper, appendix 3"
	run(t,
		val(measure.PaperTearMillinewtons(70)).is("70 g/m²", 350, 0, iso),
		val(measure.PaperTearMillinewtons(100)).is("100 g/m²", 350, 0, iso),
		val(measure.PaperTearMillinewtons(40)).is("40 g/m²", 170, 0, "computed from "+iso),
		val(measure.PaperTearMillinewtons(25)).is("25 g/m²", 80, 0, "computed from "+iso),
		val(measure.PaperAlkaliReserveMoles(20)).is("20 g/kg", 0.3997, 0.00006, "computed from the molar mass"),
		val(measure.PaperAlkaliReserveMoles(20)).is("20 g/kg", 0.4, 0.0005, "wording of ISO 9706"),
	)
	refuse(t, "PaperTearMillinewtons", measure.PaperTearMillinewtons, 24, 226, 0)
	refuse(t, "PaperAlkaliReserveMoles", measure.PaperAlkaliReserveMoles, -1, 501)
}
