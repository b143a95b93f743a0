package record_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"backleaf/record"
)

// Readings finds what looking at every reading finds.
func TestReadings(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	when := func() record.When {
		at := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC).Add(time.Duration(r.IntN(400)) * time.Hour)
		texts := []string{at.Format(time.RFC3339), at.Format(time.DateOnly), at.Format("2006-01"), "../" + at.Format(time.DateOnly), at.Format(time.DateOnly) + "/..", "unknown",
			at.Format(time.DateOnly) + "/" + at.AddDate(0, 0, 1+r.IntN(40)).Format(time.DateOnly)}
		w, err := record.ParseWhen(texts[r.IntN(len(texts))])
		if err != nil {
			t.Fatal(err)
		}
		return w
	}
	for range 100 {
		es := []record.Entry{{Seq: 1, Body: record.Studio{Maker: "x", Mark: "KB"}}}
		for i := range 60 {
			es = append(es, record.Entry{Seq: int64(i + 2), At: when(), Body: record.Climate{Place: fmt.Sprint(i)}})
		}
		w, err := record.Fold(es)
		if err != nil {
			t.Fatal(err)
		}
		at := when()
		var want []int64
		for _, c := range w.Climate {
			if c.At.Within(at, 12*time.Hour) {
				want = append(want, c.Seq)
			}
		}
		var got []int64
		for _, c := range w.Readings(at) {
			got = append(got, c.Seq)
		}
		if !slices.Equal(got, want) {
			t.Fatalf("%s: %v, want %v", at, got, want)
		}
	}
}
