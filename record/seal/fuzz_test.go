package seal_test

import (
	"bytes"
	"strings"
	"testing"

	"backleaf/record/seal"
)

// Whatever a parser accepts is written back as the same bytes.

func FuzzNote(f *testing.F) {
	k := key1(f)
	for _, msg := range [][]byte{signedHead(f), signedStatement(f), signedSuccession(f), []byte("backleaf/KB\n\n— backleaf/KB AAAAAAAA\n")} {
		f.Add(msg)
	}
	f.Fuzz(func(t *testing.T, msg []byte) {
		text, err := seal.OpenNote(msg, k.Public())
		if err != nil {
			// A text that can be signed opens again.
			text, err = seal.UnsignedText(msg)
			if err != nil {
				return
			}
			if msg, err = seal.SignNote(k, text); err != nil {
				return
			}
			if got, err := seal.OpenNote(msg, k.Public()); err != nil || got != text {
				t.Fatalf("signed but does not open: %v\n%q", err, msg)
			}
		}
		again, err := seal.SignNote(k, text) // Ed25519 signatures are deterministic
		if err != nil || !bytes.Equal(again, msg) {
			t.Fatalf("%q is written as %q (%v)", msg, again, err)
		}
		if strings.HasPrefix(text, "{") {
			t.Fatalf("a note begins as a record does: %q", text)
		}
	})
}

func FuzzNoteTexts(f *testing.F) {
	for _, msg := range [][]byte{signedHead(f), signedStatement(f), signedSuccession(f), signedPage(f), signedStatus(f)} {
		text, _, _ := strings.Cut(string(msg), "\n\n")
		f.Add(text + "\n")
	}
	f.Fuzz(func(t *testing.T, text string) {
		accepted := 0
		for _, parse := range []func(string) (string, error){seal.ParseHeadText, seal.ParseStatementText, seal.ParseSuccessionText, seal.ParsePageText, seal.ParseStatusText} {
			if again, err := parse(text); err == nil {
				accepted++
				if again != text {
					t.Fatalf("%q is written as %q", text, again)
				}
			}
		}
		if accepted > 1 {
			t.Fatalf("%q passes for two kinds of note", text)
		}
	})
}

// A statement takes any value and either refuses it or reads back what it shows, on one line.
func FuzzStatementValues(f *testing.F) {
	f.Add("KB26-0142-1", "Evening, Low Tide", "Ada Example", "400 × 300 × 22 mm", "2026-03/2026-05")
	f.Add("a\nb", "", "\x00\u2028x", "\u202e", "key: x")
	f.Fuzz(func(t *testing.T, number, title, maker, size, made string) {
		s := seal.Statement{Origin: "backleaf/KB", Number: number, Title: title, Maker: maker, Size: size, Made: made, Issued: "2026-06-01"}
		msg, err := s.Sign(key1(t))
		if err != nil {
			return
		}
		got, err := seal.OpenStatement(msg)
		if err != nil {
			t.Fatalf("signed but does not open: %v\n%s", err, msg)
		}
		again, err := got.Sign(key1(t))
		if err != nil || !bytes.Equal(again, msg) {
			t.Fatalf("%q is written as %q (%v)", msg, again, err)
		}
	})
}

func FuzzProof(f *testing.F) {
	p, _ := proof1(f)
	data, err := p.Bytes()
	if err != nil {
		f.Fatal(err)
	}
	f.Add(data)
	f.Add([]byte(`{"backleaf":"inclusion/1","entries":[],"root":"47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=","size":0}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := seal.ParseProof(data)
		if err != nil {
			return
		}
		again, err := p.Bytes()
		if err != nil || !bytes.Equal(again, data) {
			t.Fatalf("%q is written as %q (%v)", data, again, err)
		}
		entries := make([]seal.Entry, len(p.Entries))
		for i, e := range p.Entries {
			entries[i].Seq = e.Seq
		}
		if len(entries) > 0 && p.Verify(seal.Head{Size: p.Size, Root: p.Root}, entries) == nil && p.Entries[0].Leaf != seal.LeafHash(nil) {
			t.Fatalf("entries that are not there were proved: %q", data)
		}
	})
}

func FuzzKeys(f *testing.F) {
	f.Add([]byte(test1SPKI))
	f.Add([]byte(test1PKCS8))
	f.Add([]byte(test1Encrypted))
	f.Fuzz(func(t *testing.T, data []byte) {
		if p, err := seal.ParsePublicPEM(data); err == nil && !bytes.Equal(p.PEM(), data) {
			t.Fatalf("public key %q is written as %q", data, p.PEM())
		}
		if k, err := seal.ParsePrivatePEM(data, nil); err == nil {
			if again, err := k.PrivatePEM(nil); err != nil || !bytes.Equal(again, data) {
				t.Fatalf("private key %q is written as %q (%v)", data, again, err)
			}
		}
	})
}

func FuzzDigest(f *testing.F) {
	f.Add(test1Fingerprint)
	f.Fuzz(func(t *testing.T, s string) {
		if d, err := seal.ParseDigest(s); err == nil && d.String() != s {
			t.Fatalf("%q is written as %q", s, d)
		}
	})
}

// A recovery text has one spelling beside case, white space and the digits taken for letters.
func FuzzRecovery(f *testing.F) {
	f.Add(test1Recovery)
	f.Add(strings.ToLower(test1Recovery))
	f.Fuzz(func(t *testing.T, s string) {
		k, err := seal.KeyFromRecovery(s)
		if err != nil {
			return
		}
		typed := strings.NewReplacer(" ", "", "\t", "", "\n", "", "\r", "", "-", "", "0", "O", "1", "I", "8", "B").Replace(strings.ToUpper(s))
		if want := strings.ReplaceAll(k.RecoveryText(), " ", ""); typed != want {
			t.Fatalf("%q is written as %q", s, want)
		}
	})
}
