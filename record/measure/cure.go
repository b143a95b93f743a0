package measure

import (
	"fmt"
	"time"
)

// Stated is a time as a maker states it, from the early to the late edge, such
// as 20 to 30 minutes to touch-dry or 24 to 36 hours to cure. The edges may be
// equal. Late is above zero and at most ten years.
type Stated struct {
	Early, Late time.Duration
}

const longestStated = 10 * 366 * 24 * time.Hour

func (s Stated) check() error {
	if s.Early < 0 || s.Late <= 0 || s.Early > s.Late || s.Late > longestStated {
		return fmt.Errorf("a stated time from %v to %v cannot be used: the edges must be in order, above zero and at most ten years", s.Early, s.Late)
	}
	return nil
}

// Window is counted from the end of the application: the film counts as not
// done before the one and safely done by the other.
type Window struct {
	NotBefore, SafeBy time.Duration
}

// Where on the humidity scale the stated time begins and ends.
const (
	dryRoomRH  = 40
	dampRoomRH = 70
)

// DryingWindow moves through a stated time, to touch-dry or to cure, with the
// humidity of the room, 0 to 100 %. Not before: the early edge at or below 40 %
// RH, rising evenly to the late edge at 70 % RH and above. Safe by: the late edge
// up to 70 % RH, later at the same rate in damper air, so that it has moved by
// the whole stated window at 100 % RH. Where no humidity is recorded, ask for
// 100 %.
//
// Warm air blown over the film makes it touch-dry within the stated time
// whatever the humidity. It drives out water and hardens nothing: no curing is
// asked for with it. Source: common practice (24 to 36 hours, longer in humid
// air); the even rise and the two humidities are this package's own reading.
func DryingWindow(stated Stated, rhPercent float64, warmAir bool) (Window, error) {
	if err := first(stated.check(), within("relative humidity", rhPercent, 0, 100, "%")); err != nil {
		return Window{}, err
	}
	if warmAir {
		return Window{stated.Early, stated.Late}, nil
	}
	span := float64(stated.Late - stated.Early)
	place := max(0, (rhPercent-dryRoomRH)/(dampRoomRH-dryRoomRH))
	return Window{
		// Long spans round in a float64: the late edge is not to be passed.
		NotBefore: min(stated.Early+time.Duration(span*min(place, 1)), stated.Late),
		SafeBy:    stated.Late + time.Duration(span*max(place-1, 0)),
	}, nil
}
