package terminal

import (
	"cmp"
	"fmt"
	"io"

	"github.com/schollz/progressbar/v3"
)

// A Stage has the words for long work: how far it has come, or what it is.
type Stage struct{ Busy, Far string }

// Progress shows how far long work has come and how long it will still take,
// on a terminal only.
func Progress(w io.Writer, stages map[string]Stage) func(stage string, done, total int64) {
	if !Interactive(w) {
		return nil
	}
	var bar *progressbar.ProgressBar
	var of string
	return func(stage string, done, total int64) {
		words := stages[stage]
		switch {
		case words.Far != "":
			if bar == nil || stage != of {
				of, bar = stage, progressbar.NewOptions64(cmp.Or(total, 1), progressbar.OptionSetWriter(w), progressbar.OptionSetDescription(words.Far),
					progressbar.OptionShowCount(), progressbar.OptionSetWidth(20), progressbar.OptionSetPredictTime(true), progressbar.OptionThrottle(100e6))
			}
			_ = bar.Set64(done) // a picture of the work, not the work
		case done == 0 && total > 0:
			fmt.Fprintf(w, words.Busy+" …", total)
		case done == 0:
			fmt.Fprint(w, words.Busy+" …")
		}
		if done == total && total > 0 {
			bar = nil
			fmt.Fprint(w, "\r\x1b[K")
		}
	}
}
