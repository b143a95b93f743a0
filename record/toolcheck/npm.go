package toolcheck

import (
	"os"
	"os/exec"
	"strings"
	"testing"
)

// Packages gives a folder with npm packages, named with their versions: the one
// that an environment variable names, or, where everything must be there, one
// of the test's own into which they are installed. Else the test is skipped.
func Packages(t testing.TB, variable string, packages ...string) (dir string) {
	t.Helper()
	if dir = os.Getenv(variable); dir != "" {
		return dir
	}
	if os.Getenv(Variable) != "1" {
		t.Skip(variable + " names no folder with " + strings.Join(packages, ", "))
	}
	Require(t, "npm", "node")
	dir = t.TempDir()
	if out, err := exec.Command("npm", append([]string{"install", "--no-save", "--ignore-scripts", "--prefix", dir}, packages...)...).CombinedOutput(); err != nil {
		t.Fatalf("cannot install %q: %v\n%s", packages, err, out)
	}
	return dir
}
