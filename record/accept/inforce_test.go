package accept_test

import (
	"slices"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/accept"
)

func TestInForce(t *testing.T) {
	const now = "2026-11-26T10:00:00Z"
	for _, c := range []struct {
		name, versions, at string // versions: from, and when it was written if not now
		want               []int64
	}{
		{"one", "2020", "1990", []int64{1}},
		{"the first held before its date", "2015 2020", "1990", []int64{1}},
		{"by its date", "2015 2020", "2021-05", []int64{2}},
		{"in the year of the change", "2015 2020", "2020-06", []int64{1, 2}},
		{"unknown", "2015 2020 2022", "unknown", []int64{1, 2, 3}},
		{"inexact", "2015 2020 2022", "2021/2023", []int64{2, 3}},
		{"told afterwards of an earlier time", "2020 2010", "2015", []int64{1, 2}},
		{"told afterwards, and long ago", "2020 2010", "2024", []int64{1}},
		{"opened today, changed before", now + " 2024", "2020", []int64{1}},
		{"opened today, changed before, now", now + " 2024", "2026-11-27", []int64{2}},
		{"from this year on, after it was written", "2015 2026", "2026-11-27T09:00:00Z", []int64{2}},
		{"from this year on, before", "2015 2026", "2026-05", []int64{1, 2}},
		{"from next year on", "2015 2027", "2026-11-27", []int64{1}},
		{"today, by the hour", "2015 2026-11-26", "2026-11-26T15:00:00Z", []int64{2}},
		{"today, without the hour", "2015 2026-11-26", "2026-11-26", []int64{1, 2}},
	} {
		var vs []accept.Version
		for i, f := range strings.Fields(c.versions) {
			vs = append(vs, accept.Version{Seq: int64(i + 1), From: when(t, f), Written: when(t, now)})
		}
		if got := accept.InForce(vs, when(t, c.at)); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

func when(t *testing.T, s string) record.When {
	t.Helper()
	w, err := record.ParseWhen(s)
	if err != nil {
		t.Fatal(err)
	}
	return w
}
