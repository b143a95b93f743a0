package toolcheck_test

import (
	"testing"
	"time"

	"backleaf/record/toolcheck"
)

var kept []byte

func TestCost(t *testing.T) {
	if toolcheck.InChild(t, func(arg string) {
		if arg != "much" {
			return
		}
		kept = make([]byte, 100<<20)
		for i := range kept {
			kept[i] = 1
		}
	}) {
		return
	}
	little, _ := toolcheck.Cost(t, "little")
	much, took := toolcheck.Cost(t, "much")
	if little > 50 || much < little+100 || much > little+150 || took <= 0 || took > 30*time.Second {
		t.Errorf("%d MB, %d MB and %v", little, much, took)
	}
}
