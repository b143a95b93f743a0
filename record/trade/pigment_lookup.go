package trade

import (
	"slices"
	"strings"
	"sync"
)

// allPigments are the rows of all tables.
var allPigments = sync.OnceValue(func() []pigmentRow { return slices.Concat(whites, yellows, reds, blues, greens, darks) })

// byIndex finds a row by its Colour Index name without suffix.
var byIndex = sync.OnceValue(func() map[string]*pigmentRow {
	m := map[string]*pigmentRow{}
	for i := range allPigments() {
		for s := range strings.SplitSeq(allPigments()[i].index, ",") {
			if x, ok := ParseIndex(s); ok {
				m[x.base()] = &allPigments()[i]
			}
		}
	}
	return m
})

// byName finds what a name stands for, by its spelling; a misleading name goes
// before one of the pigment tables.
var byName = sync.OnceValue(func() map[string]part {
	m := map[string]part{}
	for _, row := range misleading {
		var p part
		for s := range strings.SplitSeq(row.maybe, ",") {
			var mixture []*pigmentRow
			for s := range strings.SplitSeq(s, "+") {
				if x, ok := ParseIndex(s); ok {
					mixture = append(mixture, byIndex()[x.base()])
				}
			}
			if mixture != nil {
				p.maybe = append(p.maybe, mixture)
			}
		}
		p.open = row.open
		for n := range strings.SplitSeq(row.names, "|") {
			m[strings.Join(spelled(n), " ")] = p
		}
	}
	for i := range allPigments() {
		for n := range strings.SplitSeq(allPigments()[i].names, "|") {
			n = strings.Join(spelled(n), " ")
			if p, ok := m[n]; ok && p.open || n == "" {
				continue
			}
			p := m[n]
			p.maybe = append(p.maybe, []*pigmentRow{&allPigments()[i]})
			m[n] = p
		}
	}
	return m
})

// longestName is the most words that a name of the tables has.
var longestName = sync.OnceValue(func() int {
	most := 0
	for n := range byName() {
		most = max(most, strings.Count(n, " ")+1)
	}
	return most
})

// stemRows are the stems as rows of their own.
var stemRows = sync.OnceValue(func() []pigmentRow {
	rows := make([]pigmentRow, len(stems))
	for i, s := range stems {
		rows[i] = pigmentRow{names: s.stem, holds: s.holds, zinc: s.zinc, from: "memory"}
	}
	return rows
})

func stemmed(word string) *pigmentRow {
	rows := stemRows()
	for i := range rows {
		if strings.HasPrefix(word, rows[i].names) && !unlike[word] {
			return &rows[i]
		}
	}
	return nil
}
