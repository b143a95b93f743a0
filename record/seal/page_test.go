package seal_test

import (
	"bytes"
	"errors"
	"reflect"
	"slices"
	"strings"
	"testing"

	"backleaf/record/seal"
)

func pageOf() seal.Page {
	p := seal.Page{Origin: "backleaf/KB", Number: "KB26-0142-1", Record: seal.DigestOf([]byte("record")), Text: seal.DigestOf([]byte("text")),
		Pictures: []seal.Digest{seal.DigestOf([]byte("small")), seal.DigestOf([]byte("large"))}}
	slices.SortFunc(p.Pictures, func(a, b seal.Digest) int { return bytes.Compare(a[:], b[:]) })
	return p
}

func signedPage(t testing.TB) []byte {
	t.Helper()
	msg, err := pageOf().Sign(key1(t))
	if err != nil {
		t.Fatal(err)
	}
	return msg
}

func statusOf() seal.Status {
	return seal.Status{Origin: "backleaf/KB", Date: "2026-06-01", Size: 3, Root: seal.Hash(seal.DigestOf([]byte("root"))), Papers: map[seal.Standing][]seal.Digest{
		seal.Issued: {seal.DigestOf([]byte("b")), seal.DigestOf([]byte("a")), seal.DigestOf([]byte("a"))}, seal.Withdrawn: {seal.DigestOf([]byte("a"))}}}
}

func signedStatus(t testing.TB) []byte {
	t.Helper()
	msg, err := statusOf().Sign(key1(t))
	if err != nil {
		t.Fatal(err)
	}
	return msg
}

func TestPageStatement(t *testing.T) {
	msg := signedPage(t)
	got, err := seal.OpenPage(msg)
	want := pageOf()
	want.Key = key1(t).Public()
	if err != nil || !reflect.DeepEqual(got, want) {
		t.Fatalf("%+v, %v", got, err)
	}
	for i := range msg {
		changed := slices.Clone(msg)
		changed[i] ^= 1
		if _, err := seal.OpenPage(changed); err == nil {
			t.Errorf("byte %d was changed and nothing is said", i)
		}
	}
	for _, bad := range []func(*seal.Page){func(p *seal.Page) { p.Number = "" }, func(p *seal.Page) { p.Origin = "somebody" }, func(p *seal.Page) { slices.Reverse(p.Pictures) }} {
		p := pageOf()
		if bad(&p); true {
			if _, err := p.Sign(key1(t)); err == nil {
				t.Errorf("signed: %+v", p)
			}
		}
	}
}

func TestStatus(t *testing.T) {
	msg := signedStatus(t)
	s, err := seal.OpenStatus(msg)
	if err != nil || s.Key != key1(t).Public() || s.Date != "2026-06-01" || len(s.Papers[seal.Issued]) != 2 {
		t.Fatalf("%+v, %v", s, err)
	}
	if says := s.Says(seal.DigestOf([]byte("a"))); !slices.Equal(says, []seal.Standing{seal.Issued, seal.Withdrawn}) {
		t.Errorf("%q", says)
	}
	if says := s.Says(seal.DigestOf([]byte("c"))); says != nil {
		t.Errorf("of a paper that it does not name it says %q", says)
	}
	for i := range msg {
		changed := slices.Clone(msg)
		changed[i] ^= 1
		if _, err := seal.OpenStatus(changed); err == nil {
			t.Errorf("byte %d was changed and nothing is said", i)
		}
	}
	// One signature never passes for another kind of note.
	if _, err := seal.OpenHead(msg, key1(t).Public()); err == nil {
		t.Error("a status passes for a head")
	}
	if _, err := seal.OpenPage(msg); err == nil {
		t.Error("a status passes for a page")
	}
	forged := strings.Replace(string(msg), "withdrawn: ", "issued: ", 1)
	if _, err := seal.OpenStatus([]byte(forged)); err == nil {
		t.Error("a second spelling passes")
	}
	// A studio of thirteen thousand papers has one too; more are refused.
	many := statusOf()
	for i := range 13000 {
		many.Papers[seal.Issued] = append(many.Papers[seal.Issued], seal.DigestOf([]byte{byte(i), byte(i >> 8)}))
	}
	if msg, err = many.Sign(key1(t)); err != nil {
		t.Fatal(err)
	}
	if _, err := seal.OpenStatus(msg); err != nil {
		t.Error(err)
	}
	if _, err := seal.OpenStatus(bytes.Repeat([]byte("a"), seal.MaxStatusBytes+1)); err == nil || errors.Is(err, seal.ErrSignature) {
		t.Errorf("too long: %v", err)
	}
}

// A status speaks for its own key and for those that led to it by their own
// word, whoever says what of others.
func TestStatusSpeaksFor(t *testing.T) {
	var keys []seal.Key
	for range 4 {
		k, err := seal.NewKey()
		if err != nil {
			t.Fatal(err)
		}
		keys = append(keys, k)
	}
	word := func(old, heir int, origin string) []byte {
		msg, err := seal.Succession{Origin: origin, New: keys[heir].Public(), Date: "2026-05-01"}.Sign(keys[old])
		if err != nil {
			t.Fatal(err)
		}
		return msg
	}
	const own = "backleaf/KB"
	for name, c := range map[string]struct {
		words [][]byte
		of    int
		want  bool
	}{
		"its own":                 {nil, 2, true},
		"its own, with words":     {[][]byte{word(0, 1, own), word(1, 2, own)}, 2, true},
		"the one before":          {[][]byte{word(0, 1, own), word(1, 2, own)}, 1, true},
		"two before":              {[][]byte{word(0, 1, own), word(1, 2, own)}, 0, true},
		"in another order":        {[][]byte{word(1, 2, own), word(0, 1, own)}, 0, true},
		"a gap":                   {[][]byte{word(0, 1, own)}, 0, false},
		"a stranger's":            {[][]byte{word(0, 1, own), word(1, 2, own)}, 3, false},
		"signed by somebody else": {[][]byte{word(3, 2, own)}, 0, false},
		"of another journal":      {[][]byte{word(1, 2, "backleaf/XX")}, 1, false},
		"in a circle":             {[][]byte{word(0, 1, own), word(1, 0, own)}, 0, false},
		"no words":                {[][]byte{nil, []byte("x\n")}, 0, false},
	} {
		s := statusOf()
		s.Successions = c.words
		msg, err := s.Sign(keys[2])
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		opened, err := seal.OpenStatus(msg)
		if err != nil || opened.SpeaksFor(keys[c.of].Public()) != c.want {
			t.Errorf("%s: %v, %v", name, !c.want, err)
		}
	}
	s := statusOf()
	for range 51 {
		s.Successions = append(s.Successions, word(0, 1, own))
	}
	if _, err := s.Sign(keys[1]); err == nil {
		t.Error("it is not bounded")
	}
}
