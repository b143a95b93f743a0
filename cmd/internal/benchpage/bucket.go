package benchpage

import (
	"sync"
	"time"
)

// bucket lets so many through a second, and a few more at once.
type bucket struct {
	mu   sync.Mutex
	left float64
	last time.Time
}

const burst = 2 * perSecond

func (b *bucket) take(now time.Time) bool {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.last.IsZero() {
		b.left = burst
	} else if d := now.Sub(b.last); d > 0 {
		b.left = min(burst, b.left+d.Seconds()*perSecond)
	}
	b.last = now
	if b.left < 1 {
		return false
	}
	b.left--
	return true
}
