package seal_test

import (
	"errors"
	"strings"
	"testing"

	"backleaf/record/seal"
)

func statement1() seal.Statement {
	return seal.Statement{Origin: "backleaf/KB", Number: "KB26-0142-1", Title: "Evening, Low Tide", Maker: "Ada Example",
		Size: "400 × 300 × 22 mm", Made: "2026-03/2026-05", Issued: "2026-06-01", Record: seal.DigestOf([]byte(record1))}
}

func signedStatement(t testing.TB) []byte {
	msg, err := statement1().Sign(key1(t))
	if err != nil {
		t.Fatal(err)
	}
	return msg
}

func TestStatement(t *testing.T) {
	msg := signedStatement(t)
	want := `backleaf/KB panel statement
number: KB26-0142-1
title: Evening, Low Tide
maker: Ada Example
size: 400 × 300 × 22 mm
made: 2026-03/2026-05
issued: 2026-06-01
record: ` + seal.DigestOf([]byte(record1)).String() + `
key: MCowBQYDK2VwAyEA11qYAYKxCrfVS/7TyWQHOg7hcvPapiMlrwIaaPcHURo=
`
	if text, _, _ := strings.Cut(string(msg), "\n\n"); text+"\n" != want {
		t.Errorf("statement:\n%s", msg)
	}
	s, err := seal.OpenStatement(msg)
	if err != nil {
		t.Fatal(err)
	}
	wantStatement := statement1()
	wantStatement.Key = key1(t).Public()
	if s != wantStatement {
		t.Errorf("read back: %+v", s)
	}
	// Byte capacity of QR version 16 at level M: 450 (ISO/IEC 18004 table 7, from memory).
	if len(msg) > 450 {
		t.Errorf("a usual statement has %d bytes and needs a larger symbol than planned", len(msg))
	}
}

func TestStatementOfDemo(t *testing.T) {
	msg, err := statement1().Sign(seal.DemoKey())
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(msg), "\ndemonstration: anyone can sign with this key\n\n") {
		t.Errorf("does not say that it is a demonstration:\n%s", msg)
	}
	s, err := seal.OpenStatement(msg)
	if err != nil || !s.Key.IsDemo() {
		t.Errorf("%+v %v", s, err)
	}
	text, _, _ := strings.Cut(string(msg), "\n\n")
	if _, err := seal.ParseStatementText(strings.Replace(text+"\n", "demonstration: anyone can sign with this key\n", "", 1)); err == nil {
		t.Error("a demonstration that does not say so is accepted")
	}
}

func TestStatementValues(t *testing.T) {
	for value, want := range map[string]string{
		"two\nlines":                           "two lines",
		"record: 00\n\n— backleaf/KB AAAA":     "record: 00 — backleaf/KB AAAA",
		"  tabs\tand \u2028 separators\r\n":    "tabs and separators",
		"escape \x1b[31m":                      "escape [31m",
		"turned \u202eround\u202c":             "turned round",
		"Füße, 絵, שלום":                        "Füße, 絵, שלום",
		`<b>&amp;</b> (PDF) =1+1 ../../secret`: `<b>&amp;</b> (PDF) =1+1 ../../secret`,
	} {
		s := statement1()
		s.Title = value
		msg, err := s.Sign(key1(t))
		if err != nil {
			t.Errorf("%q: %v", value, err)
			continue
		}
		if got, err := seal.OpenStatement(msg); err != nil || got.Title != want {
			t.Errorf("%q reads %q (%v), want %q", value, got.Title, err, want)
		}
	}
	s := statement1()
	s.Title, s.Size, s.Made = "", "", ""
	msg, err := s.Sign(key1(t))
	if err != nil {
		t.Fatal(err)
	}
	if got, err := seal.OpenStatement(msg); err != nil || got.Title != "" {
		t.Errorf("without title: %v", err)
	}
}

func TestStatementRefused(t *testing.T) {
	for name, change := range map[string]func(*seal.Statement){
		"no number":     func(s *seal.Statement) { s.Number = "" },
		"no maker":      func(s *seal.Statement) { s.Maker = " \n" },
		"no date":       func(s *seal.Statement) { s.Issued = "" },
		"wrong date":    func(s *seal.Statement) { s.Issued = "2026-6-1" },
		"no origin":     func(s *seal.Statement) { s.Origin = "" },
		"invalid UTF-8": func(s *seal.Statement) { s.Title = "\xff" },
		"too long":      func(s *seal.Statement) { s.Title = strings.Repeat("long ", 150) },
	} {
		s := statement1()
		change(&s)
		if _, err := s.Sign(key1(t)); err == nil {
			t.Errorf("%s: signed", name)
		}
	}
	text, _, _ := strings.Cut(string(signedStatement(t)), "\n\n")
	text += "\n"
	for name, changed := range map[string]string{
		"order":       strings.Replace(text, "number: KB26-0142-1\ntitle: Evening, Low Tide\n", "title: Evening, Low Tide\nnumber: KB26-0142-1\n", 1),
		"line twice":  strings.Replace(text, "maker: Ada Example\n", "maker: Ada Example\nmaker: Ada Example\n", 1),
		"other line":  text + "price: 100\n",
		"no digest":   strings.Replace(text, "record: ", "digest: ", 1),
		"white space": strings.Replace(text, "maker: Ada", "maker:  Ada", 1),
		"false demo":  text + "demonstration: anyone can sign with this key\n",
	} {
		if _, err := seal.ParseStatementText(changed); err == nil {
			t.Errorf("%s: accepted", name)
		}
	}
}

// A statement that was signed with another key than the one it names is refused, whatever else holds.
func TestStatementNamesItsKey(t *testing.T) {
	text, _, _ := strings.Cut(string(signedStatement(t)), "\n\n")
	other, err := seal.KeyFromSeed(unhex(t, rfc8032[1].seed))
	if err != nil {
		t.Fatal(err)
	}
	msg, err := seal.SignNote(other, text+"\n")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := seal.OpenStatement(msg); !errors.Is(err, seal.ErrOtherKey) {
		t.Errorf("got %v", err)
	}
}

func TestFromPaper(t *testing.T) {
	msg := string(signedStatement(t))
	for _, paper := range []string{msg, msg + "\n", strings.TrimSuffix(msg, "\n"), "\n " + strings.ReplaceAll(msg, "\n", "\r\n"), "\ufeff" + msg} {
		if got := seal.FromPaper([]byte(paper)); string(got) != msg {
			t.Errorf("%q becomes %q", paper, got)
		}
	}
}
