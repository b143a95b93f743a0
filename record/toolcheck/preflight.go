package toolcheck

import (
	"os/exec"
	"strings"
	"testing"
)

// Preflight holds a file against PDF/A-1b with Apache PDFBox Preflight, an
// independent validator, and returns what it says; the error says that the
// file is not valid.
func Preflight(t testing.TB, path string) (string, error) {
	t.Helper()
	Long(t) // it starts slowly
	var jars []string
	for _, j := range []string{"pdfbox2", "preflight", "xmpbox", "fontbox2", "commons-logging", "javax.activation", "jaxb-api"} {
		jars = append(jars, "/usr/share/java/"+j+".jar")
	}
	Require(t, append([]string{"java"}, jars...)...)
	out, err := exec.Command("java", "-cp", strings.Join(jars, ":"), "org.apache.pdfbox.preflight.Validator_A1b", path).CombinedOutput()
	return string(out), err
}
