package questions

import (
	"cmp"
	"maps"
	"slices"

	"golang.org/x/text/collate"
	"golang.org/x/text/language"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

// orders compare two rows by what a list may be sorted by. What is not recorded
// stands last.
var orders = map[string]func(a, b Row) int{
	"batch":  func(a, b Row) int { return cmp.Compare(a.Batch, b.Batch) },
	"board":  func(a, b Row) int { return absentLast(a.Board, b.Board) },
	"made":   func(a, b Row) int { return a.Made.Date().Compare(b.Made.Date()) },
	"number": func(a, b Row) int { return cmp.Compare(a.Number, b.Number) },
	"own":    func(a, b Row) int { return absentLast(a.Own, b.Own) },
	"since":  func(a, b Row) int { return a.Since.Date().Compare(b.Since.Date()) },
	"size":   func(a, b Row) int { return cmp.Compare(areaOf(a), areaOf(b)) },
	"stage": func(a, b Row) int {
		return cmp.Compare(slices.Index(record.Stages, a.Stage), slices.Index(record.Stages, b.Stage))
	},
	"title": func(a, b Row) int { return absentLast(a.Title, b.Title) },
	"where": func(a, b Row) int { return cmp.Compare(place(a), place(b)) },
}

// Orders are the words by which a list may be sorted.
func Orders() []string { return slices.Sorted(maps.Keys(orders)) }

// KnownOrder refuses what a list cannot be sorted by.
func KnownOrder(by []string) error {
	for _, b := range by {
		if orders[b] == nil {
			return typed.NotAmong("sort", b, Orders())
		}
	}
	return nil
}

// Sorted gives the rows of a list to f sorted by the first word, those alike by
// the next. A list as it comes is not held.
func Sorted(list func(func(Row) error) error, by []string, reverse bool, f func(Row) error) error {
	if by == nil && !reverse {
		return list(f)
	}
	var rows []Row
	if err := list(func(r Row) error { rows = append(rows, r); return nil }); err != nil {
		return err
	}
	slices.SortStableFunc(rows, func(a, b Row) int {
		for _, word := range by {
			if n := orders[word](a, b); n != 0 {
				return n
			}
		}
		return 0
	})
	if reverse {
		slices.Reverse(rows)
	}
	for _, r := range rows {
		if err := f(r); err != nil {
			return err
		}
	}
	return nil
}

func place(r Row) string { return r.Where.Code + " " + r.Where.Value("how").Text() }

// absentLast compares texts as a dictionary does, so that Č stands near C; an empty one stands after all others.
func absentLast(a, b string) int {
	if (a == "") != (b == "") {
		return cmp.Compare(len(b), len(a))
	}
	return cmp.Or(collate.New(language.Und).CompareString(a, b), cmp.Compare(a, b))
}

// areaOf is the face of a panel; one of unknown size stands last.
func areaOf(r Row) int64 {
	if mm2, ok := r.Size.AreaSquareMillimeters(); ok {
		return int64(mm2)
	}
	return 1 << 62
}
