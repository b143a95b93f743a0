package seal_test

import (
	"encoding/base64"
	"errors"
	"strings"
	"testing"

	"backleaf/record/seal"
)

// The example of C2SP signed-note.
func TestSignedNoteExample(t *testing.T) {
	const (
		vkey = "example.com/foo+530d903a+AekyeRrm56hApGFkyQR4ZCbV54Id2LKaANYcrnKv3U2k"
		msg  = "This is an example message.\n\n— example.com/foo Uw2QOkn8srV1yJGh2VYRlL1Tnagv1YEq6TfXppzi2ONncAlTgK7Ztg1ERYNZXsYjOBH3mFXmRKuwHjG1Yu72IneyaQM=\n"
	)
	raw, err := base64.StdEncoding.DecodeString(vkey[strings.LastIndex(vkey, "+")+1:])
	if err != nil || raw[0] != 1 {
		t.Fatal("not an Ed25519 verifier key")
	}
	key := seal.PublicKey(raw[1:])
	text, err := seal.UnsignedText([]byte(msg))
	if err != nil || text != "This is an example message.\n" {
		t.Fatalf("%q %v", text, err)
	}
	if err := seal.CheckNote([]byte(msg), text, "example.com/foo", key); err != nil {
		t.Error(err)
	}
	if err := seal.CheckNote([]byte(msg), text, "example.com/bar", key); !errors.Is(err, seal.ErrOtherKey) {
		t.Errorf("another name: %v", err)
	}
	if _, err := seal.OpenNote([]byte(msg), key); err == nil {
		t.Error("opened as one of ours")
	}
}

func head1(t testing.TB) seal.Head {
	tree := ctTree(t)
	root, err := seal.Root(tree.Size(), tree)
	if err != nil {
		t.Fatal(err)
	}
	return seal.Head{Origin: "backleaf/KB", Size: tree.Size(), Root: root}
}

func signedHead(t testing.TB) []byte {
	msg, err := head1(t).Sign(key1(t))
	if err != nil {
		t.Fatal(err)
	}
	return msg
}

func TestOrigin(t *testing.T) {
	if o, err := seal.Origin("KB", ""); err != nil || o != "backleaf/KB" {
		t.Errorf("%q %v", o, err)
	}
	for _, mark := range []string{"", "kb", "K B", "K+B", "K\nB", "K/B", "ÄB", strings.Repeat("K", 17)} {
		if _, err := seal.Origin(mark, ""); err == nil {
			t.Errorf("mark %q accepted", mark)
		}
	}
}

func TestHead(t *testing.T) {
	msg := signedHead(t)
	// The root of the eight leaves is a figure of the Certificate Transparency tests: see tree_test.go.
	want := "backleaf/KB\n8\n" + base64.StdEncoding.EncodeToString(unhex(t, ctRoots[8])) + "\n"
	if text, _, _ := strings.Cut(string(msg), "\n\n"); text+"\n" != want {
		t.Errorf("head:\n%s", msg)
	}
	h, err := seal.OpenHead(msg, key1(t).Public())
	if err != nil || h.Origin != "backleaf/KB" || h.Size != 8 || h.Root != head1(t).Root {
		t.Errorf("%+v %v", h, err)
	}
	if _, err := seal.OpenHead(msg, seal.DemoKey().Public()); !errors.Is(err, seal.ErrOtherKey) {
		t.Errorf("another key: %v", err)
	}
	extended := head1(t)
	extended.Extensions = []string{"a line", "another"}
	msg, err = extended.Sign(key1(t))
	if err != nil {
		t.Fatal(err)
	}
	if h, err = seal.OpenHead(msg, key1(t).Public()); err != nil || len(h.Extensions) != 2 {
		t.Errorf("%+v %v", h, err)
	}
}

// Read without a key, a head says the same, whoever signed it; its form is held to.
func TestUnverifiedHead(t *testing.T) {
	msg := signedHead(t)
	want, err := seal.OpenHead(msg, key1(t).Public())
	if err != nil {
		t.Fatal(err)
	}
	forged := append([]byte{}, msg...)
	forged[len(forged)-8] ^= 1
	for _, m := range [][]byte{msg, forged} {
		if h, err := seal.UnverifiedHead(m); err != nil || h.Root != want.Root || h.Size != want.Size || h.Origin != want.Origin {
			t.Errorf("%+v, %v", h, err)
		}
	}
	for _, bad := range []string{"", "backleaf/KB\n", "backleaf/KB\n1\n", string(signedStatement(t)), "x" + string(msg), strings.Replace(string(msg), "\n\n", "\n", 1)} {
		if h, err := seal.UnverifiedHead([]byte(bad)); err == nil {
			t.Errorf("%q is read as %+v", bad, h)
		}
	}
}

func TestHeadRefused(t *testing.T) {
	good := head1(t)
	for name, change := range map[string]func(*seal.Head){
		"no origin":            func(h *seal.Head) { h.Origin = "" },
		"bare mark":            func(h *seal.Head) { h.Origin = "KB" },
		"foreign origin":       func(h *seal.Head) { h.Origin = "example.com/log" },
		"origin like a record": func(h *seal.Head) { h.Origin = `{"backleaf":"record/1"}` },
		"negative size":        func(h *seal.Head) { h.Size = -1 },
		"huge size":            func(h *seal.Head) { h.Size = 1 << 62 },
		"empty, but a root":    func(h *seal.Head) { h.Size = 0 },
		"empty extension":      func(h *seal.Head) { h.Extensions = []string{""} },
		"two lines in one":     func(h *seal.Head) { h.Extensions = []string{"a\n\nb"} },
		"control character":    func(h *seal.Head) { h.Extensions = []string{"a\x1bb"} },
	} {
		h := good
		change(&h)
		if msg, err := h.Sign(key1(t)); err == nil {
			t.Errorf("%s: signed\n%s", name, msg)
		}
	}
	for _, text := range []string{"", "backleaf/KB\n", "backleaf/KB\n08\n" + good.Root.String() + "\n", "backleaf/KB\n+8\n" + good.Root.String() + "\n",
		"backleaf/KB\n8\n" + good.Root.String(), "backleaf/KB\n8\nAAAA\n", "backleaf/KB\r\n8\n" + good.Root.String() + "\n"} {
		if _, err := seal.ParseHeadText(text); err == nil {
			t.Errorf("%q accepted", text)
		}
	}
	if _, err := good.Sign(seal.Key{}); err == nil {
		t.Error("signed without a key")
	}
	if _, err := seal.SignNote(key1(t), `{"backleaf":"record/1"}`+"\n"); err == nil {
		t.Error("a record was signed as a note")
	}
}

// A note with a second signature, or the same one twice, is not in its one spelling.
func TestNoteSpelling(t *testing.T) {
	msg := string(signedHead(t))
	text, sigs, _ := strings.Cut(msg, "\n\n")
	other, err := head1(t).Sign(seal.DemoKey())
	if err != nil {
		t.Fatal(err)
	}
	_, otherSig, _ := strings.Cut(string(other), "\n\n")
	for name, s := range map[string]string{
		"twice":            msg + sigs,
		"cosigned":         msg + otherSig,
		"cosigned before":  text + "\n\n" + otherSig + sigs,
		"spare bits":       strings.Replace(msg, "=\n", "", 1),
		"blank line first": "\n" + msg,
		"blank line last":  msg + "\n",
		"no signature":     text + "\n",
		"carriage returns": strings.ReplaceAll(msg, "\n", "\r\n"),
		"too long":         text + "\n" + strings.Repeat("x\n", 3000) + "\n" + sigs,
	} {
		if _, err := seal.OpenHead([]byte(s), key1(t).Public()); err == nil {
			t.Errorf("%s: accepted", name)
		}
	}
}

func TestNoteEdits(t *testing.T) {
	msg := signedHead(t)
	eachEdit(msg, func(i int, changed []byte) {
		if _, err := seal.OpenHead(changed, key1(t).Public()); err == nil {
			t.Errorf("head byte %d changed: still holds", i)
		}
	})
	next := signedSuccession(t)
	eachEdit(next, func(i int, changed []byte) {
		if _, err := seal.OpenSuccession(changed, key1(t).Public()); err == nil {
			t.Errorf("succession byte %d changed: still holds", i)
		}
	})
	eachEdit(signedStatement(t), func(i int, changed []byte) {
		if _, err := seal.OpenStatement(changed); err == nil {
			t.Errorf("statement byte %d changed: still holds", i)
		}
	})
}

func signedSuccession(t testing.TB) []byte {
	k, err := seal.KeyFromSeed(unhex(t, rfc8032[1].seed))
	if err != nil {
		t.Fatal(err)
	}
	msg, err := seal.Succession{Origin: "backleaf/KB", New: k.Public(), Date: "2026-06-01"}.Sign(key1(t))
	if err != nil {
		t.Fatal(err)
	}
	return msg
}

func TestSuccession(t *testing.T) {
	s, err := seal.OpenSuccession(signedSuccession(t), key1(t).Public())
	if err != nil || s.Old != key1(t).Public().Fingerprint() || s.Date != "2026-06-01" || s.Origin != "backleaf/KB" {
		t.Errorf("%+v %v", s, err)
	}
	if _, err := seal.OpenSuccession(signedSuccession(t), s.New); !errors.Is(err, seal.ErrOtherKey) {
		t.Errorf("opened with the new key: %v", err)
	}
	text, _, _ := strings.Cut(string(signedSuccession(t)), "\n\n")
	foreign, err := seal.SignNote(seal.DemoKey(), text+"\n")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := seal.OpenSuccession(foreign, seal.DemoKey().Public()); err == nil {
		t.Error("a key speaks for another one")
	}
	for name, changed := range map[string]string{
		"line twice": text + "\ndate: 2026-06-01\n",
		"other line": text + "\nreason: none\n",
		"order":      strings.Replace(strings.TrimSuffix(text, "date: 2026-06-01"), "old: ", "date: 2026-06-01\nold: ", 1),
	} {
		if _, err := seal.ParseSuccessionText(changed); err == nil {
			t.Errorf("%s: accepted", name)
		}
	}
	good := seal.Succession{Origin: "backleaf/KB", New: s.New, Date: "2026-06-01"}
	for name, change := range map[string]func(*seal.Succession){
		"no date":    func(s *seal.Succession) { s.Date = "" },
		"wrong date": func(s *seal.Succession) { s.Date = "2026-02-30" },
		"same key":   func(s *seal.Succession) { s.New = key1(t).Public() },
		"demo key":   func(s *seal.Succession) { s.New = seal.DemoKey().Public() },
		"no origin":  func(s *seal.Succession) { s.Origin = "" },
	} {
		s := good
		change(&s)
		if _, err := s.Sign(key1(t)); err == nil {
			t.Errorf("%s: signed", name)
		}
	}
}

// The kinds of note never pass for each other.
func TestNoteKinds(t *testing.T) {
	p := key1(t).Public()
	if _, err := seal.OpenStatement(signedHead(t)); err == nil {
		t.Error("a head passes for a statement")
	}
	if _, err := seal.OpenHead(signedStatement(t), p); err == nil {
		t.Error("a statement passes for a head")
	}
	if _, err := seal.OpenHead(signedSuccession(t), p); err == nil {
		t.Error("a succession passes for a head")
	}
	if _, err := seal.OpenSuccession(signedHead(t), p); err == nil {
		t.Error("a head passes for a succession")
	}
	text, _, _ := strings.Cut(string(signedHead(t)), "\n\n")
	if _, err := key1(t).SignRecord([]byte(text + "\n")); err == nil {
		t.Error("a head was signed as a record")
	}
}
