package deed

import (
	"bytes"
	"fmt"
	"io"

	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/form"
)

// Bounds of the work that a record from outside may ask for, far beyond the life
// of one panel: acts are put into the order of their times, and each correction
// is compared with what stood before it.
const (
	maxEntries     = 4000
	maxActs        = 2000
	maxCorrections = 1000
	maxKeys        = 100 // entries about keys
	maxList        = 500 // items of one list, but for the panels of an entry
	maxItems       = 50000
)

// bounded reads the entries of a record.
func bounded(raw []jsontext.Value) ([]record.Entry, error) {
	var entries []record.Entry
	acts, corrections, keys, items := 0, 0, 0, 0
	for _, data := range raw {
		if err := shortLists(data, &items); err != nil {
			return nil, fmt.Errorf("entry %d of the record: %w", len(entries)+1, err)
		}
		e, err := form.Read(data)
		if err != nil {
			return nil, fmt.Errorf("entry %d of the record: %w", len(entries)+1, err)
		}
		switch e.Body.(type) {
		case record.Amended, record.Withdrawn:
			corrections++
		case record.KeyMade, record.KeyRetired, record.KeyLost:
			keys++
		}
		if len(e.Panels) > 0 {
			acts++
		}
		if entries = append(entries, e); len(entries) > maxEntries || acts > maxActs || corrections > maxCorrections || keys > maxKeys {
			return nil, fmt.Errorf("it has more than %d entries, %d acts on its panel, %d corrections or %d of keys", maxEntries, maxActs, maxCorrections, maxKeys)
		}
	}
	return entries, nil
}

// shortLists bounds each list of an entry, and adds up the items of all.
func shortLists(data []byte, items *int) error {
	d := jsontext.NewDecoder(bytes.NewReader(data))
	for {
		if _, err := d.ReadToken(); err == io.EOF {
			return nil
		} else if err != nil {
			return err
		}
		if kind, n := d.StackIndex(d.StackDepth()); kind == '[' && n > 0 && d.StackPointer().Parent() != "/panels" {
			if *items++; n > maxList || *items > maxItems {
				return fmt.Errorf("a list of more than %d, or %d items in all lists", maxList, maxItems)
			}
		}
	}
}
