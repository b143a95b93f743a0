package plan

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"time"
)

func window(from, safe time.Duration) Window { return Window{from, safe, true} }

// An afternoon: seal, lay, trim, answer, sand, prime.
func afternoon() []Act {
	dry, cure := window(20*time.Minute, 30*time.Minute), window(24*time.Hour, 36*time.Hour)
	return []Act{
		{Do: Coating, Name: "seal", Faces: []Face{Front, Back, Edges}, Dry: dry, Cure: cure, Takes: 4 * time.Minute},
		{Do: LayingCloth, Name: "lay", Faces: []Face{Front}, Dry: dry, Cure: cure, Needs: TouchDry, Takes: 8 * time.Minute},
		{Do: Trimming, Name: "trim", Needs: Tacky, Takes: 2 * time.Minute},
		{Do: Coating, Name: "answer", Faces: []Face{Back}, Dry: dry, Cure: cure, Needs: TouchDry, Takes: 3 * time.Minute},
		{Do: Sanding, Name: "sand", Needs: Cured, Takes: 3 * time.Minute},
		{Do: Coating, Name: "prime", Dry: dry, Cure: window(24*time.Hour, 72*time.Hour), Needs: Cured, Takes: 5 * time.Minute},
	}
}

func TestSchedule(t *testing.T) {
	start := time.Date(2026, 5, 4, 13, 0, 0, 0, time.UTC)
	table, err := Schedule([]Batch{{"may", 10, afternoon()}}, start, Hours{9 * time.Hour, 20 * time.Hour})
	if err != nil {
		t.Fatal(err)
	}
	// By hand: seal 13:00–13:40; lay from 14:10 to 15:30; trim from 15:40 to
	// 16:00; answer 16:00–16:30; sand when the last is cured, 36 h later, at
	// 04:30 on the 6th, so at 9:00; prime at 9:30–10:20; ready 72 h later.
	var got []string
	for _, s := range table.Slots {
		got = append(got, s.Start.Format("2 15:04")+" "+s.End.Format("2 15:04"))
	}
	want := []string{"4 13:00 4 13:40", "4 14:10 4 15:30", "4 15:40 4 16:00", "4 16:00 4 16:30", "6 09:00 6 09:30", "6 09:30 6 10:20"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	lay := table.Slots[1]
	if lay.From.Format("15:04") != "14:00" || lay.Safe.Format("15:04") != "14:10" {
		t.Errorf("lay from %v, safe %v", lay.From, lay.Safe)
	}
	if trim := table.Slots[2]; trim.Until != lay.End.Add(30*time.Hour) {
		t.Errorf("trim until %v", trim.Until)
	}
	if ready := table.Ready[0].Format("2 15:04"); ready != "9 10:20" {
		t.Errorf("ready %s", ready)
	}
}

func TestScheduleRefused(t *testing.T) {
	start, hours := time.Date(2026, 5, 4, 13, 0, 0, 0, time.UTC), Hours{9 * time.Hour, 12 * time.Hour}
	for name, c := range map[string]struct {
		b []Batch
		h Hours
	}{
		"no batch":       {nil, hours},
		"longer than":    {[]Batch{{"a", 60, afternoon()}}, hours},
		"hours reversed": {[]Batch{{"a", 1, afternoon()}}, Hours{12 * time.Hour, 9 * time.Hour}},
		"many":           {make([]Batch, maxBatches+1), hours},
	} {
		_, err := Schedule(c.b, start, c.h)
		if err == nil {
			t.Errorf("%s is planned", name)
		}
		if want := "cannot plan: seal takes 4 min for each of the 60 panels of a batch, together longer than a day's work; make the batches smaller"; name == "longer than" && (err.Error() != want || err.(*TooLong).Most != 22) { // 3 h of 8 min, the longest
			t.Errorf("%s: %v, want %s", name, err, want)
		}
	}
	acts := afternoon()
	acts[1].Dry.Known = false
	table, err := Schedule([]Batch{{"a", 2, acts}, {"b", 2, afternoon()}}, start, hours)
	if err != nil || table.Untimed[0] != 3 || !table.Ready[0].IsZero() || table.Untimed[1] != -1 || table.Ready[1].IsZero() {
		t.Errorf("%v %+v", err, table)
	}
}

// Whatever the batches, nobody does two things at once, nothing is done before
// it is safe or outside the hours of work, and what is late is said to be.
func TestScheduleProperties(t *testing.T) {
	each(t, 300, func(seed int) error {
		r := rand.New(rand.NewPCG(uint64(seed), 2))
		var batches []Batch
		for i := range r.IntN(6) + 1 {
			acts := afternoon()[:r.IntN(6)+1]
			for k := range acts {
				acts[k].Takes = time.Duration(r.IntN(9)) * time.Minute
				acts[k].Dry.Safe += time.Duration(r.IntN(300)) * time.Minute
			}
			batches = append(batches, Batch{fmt.Sprint(i), r.IntN(20) + 1, acts})
		}
		hours := Hours{time.Duration(r.IntN(10)) * time.Hour, time.Duration(r.IntN(8)+16) * time.Hour}
		zone, err := time.LoadLocation("Europe/Helsinki")
		if err != nil {
			zone = time.UTC
		}
		start := time.Date(2026, 3, 27, r.IntN(24), r.IntN(60), 0, 0, zone) // summer time begins on the 29th
		table, err := Schedule(batches, start, hours)
		if err != nil {
			return err
		}
		var end time.Time
		next := make([]int, len(batches))
		for _, s := range table.Slots {
			if s.Act != next[s.Batch] {
				return fmt.Errorf("act %d of batch %d out of turn", s.Act, s.Batch)
			}
			next[s.Batch]++
			if s.Start.Before(end) || s.Start.Before(s.Safe) || s.Start.Before(start) || s.Safe.Before(s.From) {
				return fmt.Errorf("%+v begins before %v", s, end)
			}
			if end = s.End; s.Late != (!s.Until.IsZero() && s.Start.After(s.Until)) {
				return fmt.Errorf("%+v", s)
			}
			clock := func(t time.Time) time.Duration {
				return time.Duration(t.Hour())*time.Hour + time.Duration(t.Minute())*time.Minute
			}
			if clock(s.Start) < hours.From || clock(s.Start) > hours.To || s.End.Day() == s.Start.Day() && clock(s.End) > hours.To {
				return fmt.Errorf("%+v outside the hours", s)
			}
		}
		for i, n := range next {
			if n != len(batches[i].Acts) {
				return fmt.Errorf("batch %d is not done", i)
			}
		}
		return nil
	})
}
