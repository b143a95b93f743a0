package seal_test

import (
	"errors"
	"strings"
	"testing"

	"backleaf/record/seal"
)

func proof1(t testing.TB) (seal.Proof, []seal.Entry) {
	p, err := seal.Prove(head1(t), []int64{0, 5, 7}, ctTree(t))
	if err != nil {
		t.Fatal(err)
	}
	var entries []seal.Entry
	for _, seq := range []int64{0, 5, 7} {
		entries = append(entries, seal.Entry{Seq: seq, Bytes: unhex(t, ctLeaves[seq])})
	}
	return p, entries
}

func TestProofFile(t *testing.T) {
	p, entries := proof1(t)
	data, err := p.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	// hashes: the figures of tree_test.go in base64
	const start = `{"backleaf":"inclusion/1","entries":[{"leaf":"bjQLnP+zepicpUTmu3gKLHiQHT+zNzh2hRGjBhevoB0=","path":["lqKW0iTyhcZ77pPDD4owkVfw2qNdxbh+QQt4YwoJz8c=",`
	if !strings.HasPrefix(string(data), start) {
		t.Errorf("proof.json: %s", data)
	}
	if !strings.HasSuffix(string(data), `],"seq":7}],"root":"`+head1(t).Root.String()+`","size":8}`) {
		t.Errorf("proof.json: %s", data)
	}
	got, err := seal.ParseProof(data)
	if err != nil {
		t.Fatal(err)
	}
	if err := got.Verify(head1(t), entries); err != nil {
		t.Error(err)
	}
	empty, err := seal.Prove(head1(t), nil, ctTree(t))
	if err != nil {
		t.Fatal(err)
	}
	if data, err = empty.Bytes(); err != nil || !strings.Contains(string(data), `"entries":[]`) {
		t.Errorf("%s %v", data, err)
	}
	if _, err := seal.ParseProof(data); err != nil {
		t.Error(err)
	}
}

func TestProofRefused(t *testing.T) {
	p, entries := proof1(t)
	h := head1(t)
	other := h
	other.Size--
	if p.Verify(other, entries) == nil {
		t.Error("proof for another head accepted")
	}
	if p.Verify(h, entries[1:]) == nil || p.Verify(h, nil) == nil {
		t.Error("a proof of more entries than the record has is accepted")
	}
	swapped := []seal.Entry{entries[1], entries[0], entries[2]}
	if p.Verify(h, swapped) == nil {
		t.Error("swapped entries accepted")
	}
	twice := seal.Proof{Size: p.Size, Root: p.Root, Entries: []seal.EntryProof{p.Entries[0], p.Entries[0]}}
	if twice.Verify(h, []seal.Entry{entries[0], entries[0]}) == nil {
		t.Error("one entry counted twice")
	}
	changed := append([]seal.Entry(nil), entries...)
	changed[1].Bytes = []byte("changed")
	if err := p.Verify(h, changed); !errors.Is(err, seal.ErrProof) || !strings.Contains(err.Error(), "entry 5") {
		t.Errorf("changed entry: %v", err)
	}
	for _, seqs := range [][]int64{{8}, {-1}, {1, 0}, {1, 1}} {
		if _, err := seal.Prove(h, seqs, ctTree(t)); err == nil {
			t.Errorf("proved %v", seqs)
		}
	}
	other = h
	other.Root[3] ^= 4
	if _, err := seal.Prove(other, []int64{1}, ctTree(t)); err == nil {
		t.Error("proved under a head that the hashes do not lead to")
	}
	if _, err := seal.Prove(other, nil, ctTree(t)); err == nil {
		t.Error("proved nothing under a head that the hashes do not lead to")
	}
	data, _ := p.Bytes()
	s := string(data)
	for name, text := range map[string]string{
		"nothing":       "",
		"null":          "null",
		"white space":   strings.Replace(s, ",", ", ", 1),
		"text after":    s + "\n",
		"another type":  strings.Replace(s, "inclusion/1", "inclusion/2", 1),
		"more members":  strings.Replace(s, `"size":8}`, `"size":8,"x":1}`, 1),
		"twice":         strings.Replace(s, `"size":8}`, `"size":8,"size":8}`, 1),
		"other case":    strings.Replace(s, `"size"`, `"Size"`, 1),
		"float":         strings.Replace(s, `"size":8`, `"size":8.0`, 1),
		"huge":          strings.Replace(s, `"size":8`, `"size":9000000000000000000`, 1),
		"negative":      strings.Replace(s, `"size":8`, `"size":-8`, 1),
		"beyond size":   strings.Replace(s, `"size":8`, `"size":7`, 1),
		"not ascending": strings.Replace(s, `"seq":5`, `"seq":0`, 1),
		"null path":     strings.Replace(s, `"path":["lq`, `"path":null,"x":["lq`, 1),
		"short hash":    strings.Replace(s, "bjQL", "", 1),
		"spare bits":    strings.Replace(s, "oB0=", "oB1=", 1),
		"too long":      s + strings.Repeat(" ", 5<<20),
	} {
		if text == s {
			t.Fatalf("%s: the text is unchanged", name)
		}
		if _, err := seal.ParseProof([]byte(text)); err == nil {
			t.Errorf("%s: accepted", name)
		}
	}
}

// Every byte of proof.json changed, doubled or taken out is refused by the parser or by Verify.
func TestProofEdits(t *testing.T) {
	p, entries := proof1(t)
	data, err := p.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	eachEdit(data, func(i int, changed []byte) {
		got, err := seal.ParseProof(changed)
		if err == nil && got.Verify(head1(t), entries) == nil {
			t.Errorf("byte %d changed: still holds\n%s", i, changed)
		}
	})
}
