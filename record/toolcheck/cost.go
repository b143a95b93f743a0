package toolcheck

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"
)

const costVariable = "BACKLEAF_COST"

// InChild does work if this process was started by [Cost], on what Cost was
// given, and reports so: the test that calls Cost begins with it, and ends if
// it is true.
func InChild(t testing.TB, work func(arg string)) bool {
	t.Helper()
	arg, ok := os.LookupEnv(costVariable)
	if !ok {
		return false
	}
	work(arg)
	status, err := os.ReadFile("/proc/self/status")
	if err != nil {
		t.Fatal(err)
	}
	_, rest, _ := strings.Cut(string(status), "VmHWM:") // the most memory ever held
	var kb int
	if _, err := fmt.Sscan(rest, &kb); err != nil {
		t.Fatal(err)
	}
	fmt.Printf("\n%s %d\n", costVariable, kb)
	return true
}

// Cost runs the test again in a process of its own, where it does the work of
// [InChild] on arg, and returns the memory and processor time that the whole
// process took. What else the machine does changes neither. It needs Linux.
func Cost(t testing.TB, arg string) (mb int, took time.Duration) {
	t.Helper()
	Require(t, "/proc/self/status")
	cmd := exec.Command(os.Args[0], "-test.run=^"+t.Name()+"$")
	cmd.Env = append(os.Environ(), costVariable+"="+arg)
	out, err := cmd.CombinedOutput()
	_, rest, ok := strings.Cut(string(out), "\n"+costVariable+" ")
	if err != nil || !ok {
		t.Fatalf("%v\n%s", err, out)
	}
	if _, err := fmt.Sscan(rest, &mb); err != nil {
		t.Fatal(err)
	}
	return mb >> 10, cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
}
