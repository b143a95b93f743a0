package toolcheck

import (
	"os/exec"
	"strings"
	"testing"
)

// Run runs a program from outside and returns what it printed; the test is
// skipped or fails if it is not there, and fails if it ends with an error.
func Run(t testing.TB, name string, args ...string) string {
	t.Helper()
	Require(t, name)
	var out, complaints strings.Builder
	cmd := exec.Command(name, args...)
	cmd.Stdout, cmd.Stderr = &out, &complaints
	if err := cmd.Run(); err != nil {
		t.Fatalf("%s %s: %v\n%s%s", name, strings.Join(args, " "), err, out.String(), complaints.String())
	}
	return out.String()
}
