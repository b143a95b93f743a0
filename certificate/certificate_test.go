package certificate_test

import "testing"

func TestLook(t *testing.T) {
	for _, c := range []struct {
		name   string
		w, h   int
		paper  string
		signed bool
	}{{"landscape", 1600, 1200, "a4", true}, {"portrait", 1200, 1600, "letter", true}, {"wide", 2400, 800, "a4", true}, {"none", 0, 0, "a4", true}, {"unsigned", 1000, 1000, "a4", false}} {
		t.Run(c.name, func(t *testing.T) {
			k := finished(t)
			if c.w > 0 {
				k.photo(jpegFile(t, shore(c.w, c.h)))
			}
			key := k.key()
			if !c.signed {
				key = nil
			}
			in := k.input(key)
			in.Paper = c.paper
			save(t, "c.pdf", drawn(t, in))
		})
	}
}
