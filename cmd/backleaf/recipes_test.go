package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"backleaf/record/deed"
	"backleaf/record/toolcheck"
)

// demoDir builds the demonstration.
func demoDir(t *testing.T) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "demo")
	a := &app{in: strings.NewReader(""), out: io.Discard, err: io.Discard, env: func(string) string { return "" }, now: time.Now}
	if code := a.run(context.Background(), []string{"demo", dir, "--quiet"}); code != exitDone {
		t.Fatalf("the demonstration ends with %d", code)
	}
	return dir
}

var recipe = regexp.MustCompile("(?ms)^<!-- recipe -->\n```sh\n(.*?)^```$")

// recipes are the README's recipes by which a stranger checks a certificate
// without this program.
func recipes(t *testing.T) (out []string) {
	t.Helper()
	data, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range recipe.FindAllStringSubmatch(string(data), -1) {
		if strings.Contains(m[1], "certificate.pdf") {
			out = append(out, m[1])
		}
	}
	return out
}

// inShell runs a recipe in a new folder that holds only a certificate. With a
// change, whatever a camera reads is changed by that sed command.
func inShell(t *testing.T, script string, pdf []byte, change string) error {
	t.Helper()
	dir := t.TempDir()
	writeTo(t, filepath.Join(dir, "certificate.pdf"), pdf)
	path := os.Getenv("PATH")
	if change != "" {
		camera, err := exec.LookPath("zbarimg")
		if err != nil {
			t.Fatal(err)
		}
		writeTo(t, filepath.Join(dir, "bin", "zbarimg"), fmt.Appendf(nil, "#!/bin/sh\n%s \"$@\" | sed '%s'\n", camera, change))
		if err := os.Chmod(filepath.Join(dir, "bin", "zbarimg"), 0o700); err != nil {
			t.Fatal(err)
		}
		path = filepath.Join(dir, "bin") + ":" + path
	}
	c := exec.Command("bash", "-euo", "pipefail", "-c", script)
	c.Dir, c.Env = dir, append(os.Environ(), "PATH="+path)
	if out, err := c.CombinedOutput(); err != nil {
		return fmt.Errorf("%w: %s", err, out)
	}
	return nil
}

// The recipes find the demonstration's certificate good, and refuse it with
// one byte changed in any of its files, or in what its symbol says.
func TestRecipes(t *testing.T) {
	toolcheck.Long(t)
	toolcheck.Require(t, "bash", "pdfdetach", "pdftoppm", "zbarimg", "openssl", "sha256sum", "base64", "sed", "python3", "qpdf")
	dir := demoDir(t)
	file := filepath.Join(dir, "certificate.pdf")
	pdf, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var byFile, byPaper []string
	for _, r := range recipes(t) {
		if err := inShell(t, r, pdf, ""); err != nil {
			t.Errorf("%s%v", r, err)
		}
		switch {
		case strings.Contains(r, "zbarimg"):
			byPaper = append(byPaper, r)
		case !strings.Contains(r, "! openssl"):
			byFile = append(byFile, r)
		}
	}
	if len(byFile) != 2 || len(byPaper) != 1 {
		t.Fatalf("%d recipes for the files and %d for the paper", len(byFile), len(byPaper))
	}
	for name, data := range attached(t, pdf) {
		for _, at := range []int{0, len(data) / 2} {
			if name == deed.HeadName && at > 0 {
				at = len(data) - 40 // in the signature: the middle is the name of the key, which openssl does not ask for
			}
			bad := bytes.Clone(data)
			bad[at] ^= 1
			tmp := t.TempDir()
			out := filepath.Join(tmp, "c.pdf")
			if msg, err := exec.Command("qpdf", file, "--add-attachment", writeTo(t, filepath.Join(tmp, name), bad), "--replace", "--", out).CombinedOutput(); err != nil {
				t.Fatalf("%v: %s", err, msg)
			}
			changed, err := os.ReadFile(out)
			if err != nil {
				t.Fatal(err)
			}
			if inShell(t, byFile[0], changed, "") == nil && inShell(t, byFile[1], changed, "") == nil {
				t.Errorf("%s with byte %d of %d changed passes", name, at, len(data))
			}
		}
	}
	for _, change := range []string{"s/^title: L/title: l/", "/^size/d", "s/^\\(record: .*\\)./\\10/"} {
		if inShell(t, byPaper[0], pdf, change) == nil {
			t.Errorf("the paper recipe passes after %s", change)
		}
	}
	if err := inShell(t, byPaper[0], pdf, "s/nothing/else/"); err != nil {
		t.Errorf("the paper recipe as it is: %v", err)
	}
}
