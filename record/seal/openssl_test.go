package seal_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"backleaf/record/seal"
	"backleaf/record/toolcheck"
)

// needTools skips the test if a program is missing, or fails it where BACKLEAF_REQUIRE_TOOLS=1 says that all must be there.
func needTools(t *testing.T, names ...string) {
	t.Helper()
	for _, name := range names {
		if _, err := exec.LookPath(name); err != nil {
			if os.Getenv("BACKLEAF_REQUIRE_TOOLS") == "1" {
				t.Fatalf("%s is needed and not installed", name)
			}
			t.Skipf("%s is not installed", name)
		}
	}
}

func write(t *testing.T, dir, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(dir, name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func run(stdin []byte, name string, args ...string) (string, error) {
	cmd := exec.Command(name, args...)
	cmd.Stdin = bytes.NewReader(stdin)
	out, err := cmd.CombinedOutput()
	return string(out), err
}

// The recipe for a record, as the README gives it: it holds, and one changed byte in record, signature or key is refused.
func TestRecipeRecord(t *testing.T) {
	needTools(t, "sh", "openssl", "sha256sum")
	k := key1(t)
	sig, err := k.SignRecord([]byte(record1))
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	record, sigFile, key := write(t, dir, "record.json", []byte(record1)), write(t, dir, "record.sig", sig), write(t, dir, "studio.pem", k.Public().PEM())
	out, err := run(nil, "sh", "testdata/verify-record.sh", record, sigFile, key)
	if err != nil || !strings.Contains(out, "Signature Verified Successfully") {
		t.Errorf("%v\n%s", err, out)
	}
	if !strings.Contains(out, seal.DigestOf([]byte(record1)).String()) || !strings.Contains(out, k.Public().Fingerprint().String()) {
		t.Errorf("digest or fingerprint differ from those of the package:\n%s", out)
	}
	badRecord := write(t, dir, "bad.json", []byte(strings.Replace(record1, "0142", "0143", 1)))
	sig[10] ^= 1
	badSig, badKey := write(t, dir, "bad.sig", sig), write(t, dir, "bad.pem", seal.DemoKey().Public().PEM())
	for name, args := range map[string][]string{
		"record":    {badRecord, sigFile, key},
		"signature": {record, badSig, key},
		"key":       {record, sigFile, badKey},
	} {
		if out, err := run(nil, "sh", append([]string{"testdata/verify-record.sh"}, args...)...); err == nil {
			t.Errorf("%s changed: accepted\n%s", name, out)
		}
	}
}

// The recipe for a note, with openssl alone: head and succession with the studio's key, statement with the key that it names.
func TestRecipeNote(t *testing.T) {
	needTools(t, "sh", "openssl", "sed", "base64", "tail", "sha256sum")
	dir := t.TempDir()
	key := write(t, dir, "studio.pem", key1(t).Public().PEM())
	demo, err := statement1().Sign(seal.DemoKey())
	if err != nil {
		t.Fatal(err)
	}
	fromScanner := append(signedStatement(t), '\n') // a QR reader ends its output with a newline of its own
	for name, c := range map[string]struct {
		msg  []byte
		key  string
		from seal.PublicKey
	}{
		"head":                   {signedHead(t), key, key1(t).Public()},
		"succession":             {signedSuccession(t), key, key1(t).Public()},
		"statement":              {signedStatement(t), "", key1(t).Public()},
		"statement from scanner": {fromScanner, "", key1(t).Public()},
		"statement, studio key":  {signedStatement(t), key, key1(t).Public()},
		"demonstration":          {demo, "", seal.DemoKey().Public()},
	} {
		verify := func(msg []byte) (string, error) {
			args := []string{"testdata/verify-note.sh", write(t, dir, "note.txt", msg)}
			if c.key != "" {
				args = append(args, c.key)
			}
			return run(nil, "sh", args...)
		}
		out, err := verify(c.msg)
		if err != nil || !strings.Contains(out, "Signature Verified Successfully") || !strings.Contains(out, c.from.Fingerprint().String()) {
			t.Errorf("%s: %v\n%s", name, err, out)
		}
		for _, i := range []int{0, 12, 30, len(c.msg) - 30} {
			changed := bytes.Clone(c.msg)
			changed[i] ^= 1
			if out, err := verify(changed); err == nil {
				t.Errorf("%s: byte %d changed: accepted\n%s", name, i, out)
			}
		}
	}
}

// openssl reads both forms of the private key, and the package reads what openssl writes.
func TestOpensslKeys(t *testing.T) {
	toolcheck.Long(t)
	needTools(t, "openssl")
	k := key1(t)
	for _, passphrase := range []string{"", "größer als Öl"} {
		data, err := k.PrivatePEM([]byte(passphrase))
		if err != nil {
			t.Fatal(err)
		}
		out, err := run(data, "openssl", "pkey", "-passin", "pass:"+passphrase, "-pubout")
		if err != nil || out != test1SPKI {
			t.Errorf("passphrase %q: %v\n%s", passphrase, err, out)
		}
		if passphrase != "" {
			if out, err := run(data, "openssl", "pkey", "-passin", "pass:wrong", "-pubout"); err == nil {
				t.Errorf("wrong passphrase: %s", out)
			}
			out, err := run(data, "openssl", "asn1parse")
			for _, want := range []string{"PBES2", "PBKDF2", "hmacWithSHA256", "aes-256-cbc", "0927C0"} { // 0x0927C0 = 600 000
				if err != nil || !strings.Contains(out, want) {
					t.Errorf("%s missing: %v\n%s", want, err, out)
				}
			}
		}
	}
	plain, err := run(nil, "openssl", "genpkey", "-algorithm", "ed25519")
	if err != nil {
		t.Fatal(err, plain)
	}
	want, err := seal.ParsePrivatePEM([]byte(plain), nil)
	if err != nil {
		t.Fatal(err)
	}
	encrypted, err := run([]byte(plain), "openssl", "pkcs8", "-topk8", "-v2", "aes-256-cbc", "-v2prf", "hmacWithSHA256", "-iter", "600000", "-passout", "pass:words")
	if err != nil {
		t.Fatal(err, encrypted)
	}
	if got, err := seal.ParsePrivatePEM([]byte(encrypted), []byte("words")); err != nil || got.Public() != want.Public() {
		t.Errorf("encrypted by openssl: %v", err)
	}
	if out, err := run([]byte(plain), "openssl", "pkey", "-pubout"); err != nil || out != string(want.Public().PEM()) {
		t.Errorf("public key: %v\n%s", err, out)
	}
}

// The recipe for a recovery sheet gives the same file as the package writes.
func TestRecipeRecovery(t *testing.T) {
	needTools(t, "sh", "openssl", "base32", "tr", "head")
	out, err := run([]byte(key1(t).RecoveryText()+"\n"), "sh", "testdata/recover-key.sh")
	if err != nil || out != test1PKCS8 {
		t.Errorf("%v\n%s", err, out)
	}
}
