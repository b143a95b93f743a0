// Package toolcheck is for tests only: it says what happens when a test needs
// a program or file from outside that a user's machine may lack.
//
// The test is skipped with the reason, unless the environment variable
// BACKLEAF_REQUIRE_TOOLS is 1: then everything must be there, and a missing
// tool is a failure. It stands below record so that every room may use it.
package toolcheck

import (
	"os"
	"os/exec"
	"strings"
	"testing"
)

// Variable is the environment variable that makes a missing tool a failure.
const Variable = "BACKLEAF_REQUIRE_TOOLS"

// Require skips or fails the test unless every one of names is there: a
// program in PATH, or, if the name holds a slash, a file.
func Require(t testing.TB, names ...string) {
	t.Helper()
	var missing []string
	for _, name := range names {
		if !there(name) {
			missing = append(missing, name)
		}
	}
	if len(missing) > 0 {
		lack(t, "needs "+strings.Join(missing, ", "))
	}
}

// OneOf gives the first of names that is there, for programs that have another
// name on each system, and skips or fails the test if none is.
func OneOf(t testing.TB, names ...string) string {
	t.Helper()
	for _, name := range names {
		if there(name) {
			return name
		}
	}
	lack(t, "needs one of "+strings.Join(names, ", "))
	return ""
}

func there(name string) bool {
	if strings.Contains(name, "/") {
		_, err := os.Stat(name)
		return err == nil
	}
	_, err := exec.LookPath(name)
	return err == nil
}

func lack(t testing.TB, what string) {
	t.Helper()
	if Thorough() {
		t.Fatalf("%s, and %s=1 says that everything is there", what, Variable)
	}
	t.Skip(what)
}

// Thorough reports whether the tests are asked to do all they can: then those
// that take long run too, in all their rounds.
func Thorough() bool { return os.Getenv(Variable) == "1" }

// Rounds is how many rounds a test does: all of them if Thorough, else a part.
func Rounds(all, part int) int {
	if Thorough() {
		return all
	}
	return part
}

// Long skips a test that takes more than two seconds, unless Thorough.
func Long(t testing.TB) {
	t.Helper()
	if !Thorough() {
		t.Skipf("takes long; %s=1 runs it", Variable)
	}
}
