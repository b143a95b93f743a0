package seal

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"

	"github.com/go-json-experiment/json/jsontext"
	"golang.org/x/mod/sumdb/tlog"
)

const (
	proofType = "inclusion/1"
	// maxProofBytes bounds a proof file: some four thousand entries of a journal of a million.
	maxProofBytes = 4 << 20
)

// A Proof shows that some entries stand in the journal under one head. proof.json is canonical JSON (RFC 8785), hashes in base64 as in a head:
//
//	{"backleaf":"inclusion/1","entries":[{"leaf":"…","path":["…","…"],"seq":17}],"root":"…","size":142}
//
// seq counts from 0; leaf is SHA-256(0x00 || entry); path is the audit path of RFC 6962 section 2.1.1, from the leaf upwards.
type Proof struct {
	Size    int64
	Root    Hash
	Entries []EntryProof // seq ascending
}

// An EntryProof leads from one entry to the root.
type EntryProof struct {
	Leaf Hash   `json:"leaf"`
	Path []Hash `json:"path"`
	Seq  int64  `json:"seq"`
}

// An Entry is one entry's canonical bytes and its number in the journal, counted from 0.
type Entry struct {
	Seq   int64
	Bytes []byte
}

// proofFile is proof.json. Members stand in canonical order.
type proofFile struct {
	Backleaf string       `json:"backleaf"`
	Entries  []EntryProof `json:"entries"`
	Root     Hash         `json:"root"`
	Size     int64        `json:"size"`
}

var errProofFile = errors.New("not an inclusion proof as this program writes it")

// Prove makes the proof that the entries with these numbers, ascending, stand under the head. It fails if the stored hashes do not lead to the
// head's root.
func Prove(h Head, seqs []int64, r HashReader) (Proof, error) {
	root, err := Root(h.Size, r)
	if err != nil {
		return Proof{}, fmt.Errorf("cannot prove the entries: %w", err)
	}
	if root != h.Root {
		return Proof{}, fmt.Errorf("cannot prove the entries: the stored hashes of the journal do not lead to its head")
	}
	p := Proof{Size: h.Size, Root: h.Root}
	for _, seq := range seqs {
		if seq < 0 || seq >= h.Size {
			return Proof{}, fmt.Errorf("cannot prove entry %d: the head has %d entries", seq, h.Size)
		}
		leaf, err := r.ReadHashes([]int64{StoredHashIndex(seq)})
		if err == nil && len(leaf) != 1 {
			err = errors.New("its hash is missing")
		}
		var path []Hash
		if err == nil {
			path, err = tlog.ProveRecord(h.Size, seq, r)
		}
		if err == nil {
			err = tlog.CheckRecord(path, h.Size, h.Root, seq, leaf[0])
		}
		if err != nil {
			return Proof{}, fmt.Errorf("cannot prove entry %d: %w", seq, err)
		}
		p.Entries = append(p.Entries, EntryProof{Leaf: leaf[0], Path: path, Seq: seq})
	}
	if !p.ascending() {
		return Proof{}, errors.New("cannot prove the entries: their numbers must ascend")
	}
	return p, nil
}

// Verify returns nil if the proof is for this head and exactly these entries, ascending, and leads from each to the head's root.
// The head must have been opened with the studio's key. The error names the first entry that fails, by its number counted from 0.
func (p Proof) Verify(h Head, entries []Entry) error {
	if p.Size != h.Size || p.Root != h.Root {
		return errors.New("the proof is for another head")
	}
	if p.Size < 0 || p.Size > MaxSize {
		return errProofFile
	}
	if len(p.Entries) != len(entries) {
		return fmt.Errorf("the proof covers %d entries, not the %d of the record", len(p.Entries), len(entries))
	}
	for i, e := range entries {
		proved := p.Entries[i]
		if e.Seq != proved.Seq {
			return fmt.Errorf("the proof covers entry %d where the record has entry %d", proved.Seq, e.Seq)
		}
		if i > 0 && e.Seq <= entries[i-1].Seq {
			return fmt.Errorf("entry %d stands after entry %d", e.Seq, entries[i-1].Seq)
		}
		leaf := LeafHash(e.Bytes)
		if leaf != proved.Leaf {
			return fmt.Errorf("entry %d is not the one that was proved: %w", e.Seq, ErrProof)
		}
		if tlog.CheckRecord(proved.Path, p.Size, p.Root, e.Seq, leaf) != nil {
			return fmt.Errorf("entry %d: %w", e.Seq, ErrProof)
		}
	}
	return nil
}

// Bytes returns proof.json.
func (p Proof) Bytes() ([]byte, error) {
	file := proofFile{Backleaf: proofType, Entries: make([]EntryProof, len(p.Entries)), Root: p.Root, Size: p.Size}
	for i, e := range p.Entries {
		e.Path = append([]Hash{}, e.Path...) // never null
		file.Entries[i] = e
	}
	data, err := json.Marshal(file)
	if err != nil {
		return nil, err
	}
	value := jsontext.Value(data)
	if err := value.Canonicalize(); err != nil {
		return nil, err
	}
	return value, nil
}

// ParseProof reads proof.json in its one spelling. It checks the form only: see Verify.
func ParseProof(data []byte) (Proof, error) {
	if len(data) > maxProofBytes {
		return Proof{}, fmt.Errorf("an inclusion proof has at most %d bytes", maxProofBytes)
	}
	var file proofFile
	if json.Unmarshal(data, &file) != nil || file.Backleaf != proofType || file.Size < 0 || file.Size > MaxSize {
		return Proof{}, errProofFile
	}
	p := Proof{Size: file.Size, Root: file.Root, Entries: file.Entries}
	again, err := p.Bytes()
	if err != nil || !bytes.Equal(again, data) || !p.ascending() {
		return Proof{}, errProofFile
	}
	return p, nil
}

// ascending reports whether the numbers ascend and are those of entries under the head.
func (p Proof) ascending() bool {
	for i, e := range p.Entries {
		if e.Seq < 0 || e.Seq >= p.Size || (i > 0 && e.Seq <= p.Entries[i-1].Seq) {
			return false
		}
	}
	return true
}
