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

// Humidity is the relative humidity a film stood in, as recorded. The zero
// value means that it was not recorded.
type Humidity struct {
	Percent float64 // 0 to 100
	Known   bool
}

func (h Humidity) check() error {
	if !h.Known {
		return nil
	}
	return within("relative humidity", h.Percent, 0, 100, "%")
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

// place is where the humidity stands: 0 at or below 40 % RH, 1 at 70 %, going
// on to 2 at 100 %. Unknown is taken for the dampest air, so that it is never
// better than anything recorded.
func (h Humidity) place() float64 {
	if !h.Known {
		return 2
	}
	return max(0, (h.Percent-dryRoomRH)/(dampRoomRH-dryRoomRH))
}

// CureWindow moves through the stated time to cure with the humidity of the
// room. Not before: the early edge at or below 40 % RH, rising evenly to the
// late edge at 70 % RH and above. Safe by: the late edge up to 70 % RH, later
// at the same rate in damper air, so that it has moved by the whole stated
// window at 100 % RH. With no humidity recorded both stand where the dampest
// air would put them.
//
// It takes no account of warm air: a hair dryer drives out water and hardens
// nothing. Source: common practice (24 to 36 hours, longer in humid air); the
// even rise and the two humidities are this package's own reading of it.
func CureWindow(stated Stated, humidity Humidity) (Window, error) {
	if err := first(stated.check(), humidity.check()); err != nil {
		return Window{}, err
	}
	span := float64(stated.Late - stated.Early)
	p := humidity.place()
	return Window{
		// Long spans round in a float64: the late edge is not to be passed.
		NotBefore: min(stated.Early+time.Duration(span*min(p, 1)), stated.Late),
		SafeBy:    stated.Late + time.Duration(span*max(p-1, 0)),
	}, nil
}

// TouchDryWindow moves through the stated time to touch-dry like [CureWindow].
// Warm air blown over the film puts not-before at the early edge and safe-by
// at the late one whatever the room's humidity. Source: common practice.
func TouchDryWindow(stated Stated, humidity Humidity, warmAir bool) (Window, error) {
	window, err := CureWindow(stated, humidity)
	if err != nil {
		return Window{}, err
	}
	if warmAir {
		return Window{stated.Early, stated.Late}, nil
	}
	return window, nil
}
