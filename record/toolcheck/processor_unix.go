//go:build unix

package toolcheck

import (
	"syscall"
	"time"
)

// processor is the processor time of this process and of those that it started
// and waited for.
func processor() time.Duration {
	var all int64
	for _, who := range []int{syscall.RUSAGE_SELF, syscall.RUSAGE_CHILDREN} {
		var r syscall.Rusage
		if syscall.Getrusage(who, &r) == nil {
			all += r.Utime.Nano() + r.Stime.Nano()
		}
	}
	return time.Duration(all)
}
