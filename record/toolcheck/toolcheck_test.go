package toolcheck_test

import (
	"fmt"
	"os"
	"runtime"
	"strings"
	"testing"

	"backleaf/record/toolcheck"
)

// outcome notes how a test would have ended.
type outcome struct {
	testing.TB
	said string
}

func (o *outcome) Helper()          {}
func (o *outcome) Skip(args ...any) { o.said = "skip: " + fmt.Sprint(args...); runtime.Goexit() }
func (o *outcome) Fatalf(f string, a ...any) {
	o.said = "fail: " + fmt.Sprintf(f, a...)
	runtime.Goexit()
}

func run(f func(testing.TB)) string {
	o := &outcome{said: "went on"}
	done := make(chan bool)
	go func() { defer close(done); f(o) }()
	<-done
	return o.said
}

func TestRequire(t *testing.T) {
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		variable, name, want string
	}{
		{"", self, "went on"},
		{"1", self, "went on"},
		{"", "no-such-program", "skip: needs no-such-program"},
		{"0", "./no/such/file", "skip: needs ./no/such/file"},
		{"1", "no-such-program", "fail: needs no-such-program"},
	} {
		t.Setenv(toolcheck.Variable, c.variable)
		if got := run(func(t testing.TB) { toolcheck.Require(t, self, c.name) }); !strings.HasPrefix(got, c.want) {
			t.Errorf("%+v: %s", c, got)
		}
		one := ""
		got := run(func(t testing.TB) { one = toolcheck.OneOf(t, "no-such-program", c.name) })
		if (one == self) != (c.name == self) || got == "went on" != (c.name == self) {
			t.Errorf("%+v: found %q, %s", c, one, got)
		}
	}
}
