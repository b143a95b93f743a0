package dossier_test

import "testing"

func TestLook(t *testing.T) {
	d := afternoonDossier(t)
	pdf, err := d.PDF()
	if err != nil {
		t.Fatal(err)
	}
	save(t, "d.pdf", pdf)
	text, err := d.Text()
	if err != nil {
		t.Fatal(err)
	}
	save(t, "d.txt", []byte(text))
	html, err := d.HTML()
	if err != nil {
		t.Fatal(err)
	}
	save(t, "d.html", html)
}
