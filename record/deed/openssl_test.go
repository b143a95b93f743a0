package deed_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"backleaf/record/deed"
	"backleaf/record/toolcheck"
)

// openssl and sha256sum alone say the same as this package.
func TestOpenSSL(t *testing.T) {
	toolcheck.Require(t, "openssl", "sha256sum", "sh")
	k := testKey(t, 1)
	d := made(t, newBook(t, k), first, &k)
	f := d.Files()
	dir := t.TempDir()
	for _, n := range []string{deed.RecordName, deed.SignatureName, deed.KeyName, deed.HeadName, deed.ProofName, deed.StatementName} {
		if err := os.WriteFile(filepath.Join(dir, n), *f.Named(n), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	run := func(line string) (string, error) {
		c := exec.Command("sh", "-c", line)
		c.Dir = dir
		out, err := c.CombinedOutput()
		return string(out), err
	}
	const verify = "openssl pkeyutl -verify -rawin -pubin -inkey studio.pem -in record.json -sigfile record.sig"
	if out, err := run(verify); err != nil {
		t.Errorf("%v: %s", err, out)
	}
	if out, err := run("openssl pkey -pubin -in studio.pem -outform DER | sha256sum"); err != nil || !strings.HasPrefix(out, d.Key.Fingerprint().String()) {
		t.Errorf("%v: %s", err, out)
	}
	if out, err := run("grep \"^record: $(sha256sum record.json | cut -c 1-64)$\" statement.txt"); err != nil {
		t.Errorf("%v: %s", err, out)
	}
	changed := append([]byte{}, d.Record...)
	changed[len(changed)/2] ^= 1
	if err := os.WriteFile(filepath.Join(dir, deed.RecordName), changed, 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := run(verify); err == nil {
		t.Errorf("a changed record passes: %s", out)
	}
}
