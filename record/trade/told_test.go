package trade_test

import (
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/tell"
	"backleaf/record/trade"
)

// Every code that the tables of the trade can say has its words, and every
// advice its sentence with all its figures.
func TestTradeIsTold(t *testing.T) {
	for _, code := range trade.AllCodes() {
		if !tell.English().Knows(code) {
			t.Errorf("no words for %q", code)
		}
	}
	for _, a := range trade.AllAdvice() {
		s := a.Said()
		if err := tell.English().Lacks(s); err != nil {
			t.Error(err)
		}
		got := tell.Say(tell.English(), s)
		for _, v := range s.Values {
			number, _, _ := strings.Cut(v.Text(), " ")
			if !strings.Contains(got, number) {
				t.Errorf("%s: %q leaves out %s", s.Code, got, v.Text())
			}
		}
	}
	if got := tell.English().Word([]record.Code{"tooth", "waited"}); got != "a lower layer that is matt or was dulled and a lower layer that had dried long enough" {
		t.Error(got)
	}
}
