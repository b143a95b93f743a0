package seal_test

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"slices"
	"testing"

	"backleaf/record/seal"
)

// Leaf inputs, leaf hashes and roots by size of the Certificate Transparency reference tests (certificate-transparency,
// cpp/merkletree/merkle_tree_test.cc; transparency-dev/merkle, testonly/constants.go).
var (
	ctLeaves = []string{"", "00", "10", "2021", "3031", "40414243", "5051525354555657", "606162636465666768696a6b6c6d6e6f"}
	ctHashes = []string{
		"6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
		"96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7",
		"0298d122906dcfc10892cb53a73992fc5b9f493ea4c9badb27b791b4127a7fe7",
		"07506a85fd9dd2f120eb694f86011e5bb4662e5c415a62917033d4a9624487e7",
		"bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b",
		"4271a26be0d8a84f0bd54c8c302e7cb3a3b5d1fa6780a40bcce2873477dab658",
		"b08693ec2e721597130641e8211e7eedccb4c26413963eee6c1e2ed16ffb1a5f",
		"46f6ffadd3d06a09ff3c5860d2755c8b9819db7df44251788c7d8e3180de8eb1",
	}
	ctRoots = []string{
		"e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
		"6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
		"fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125",
		"aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77",
		"d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
		"4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4",
		"76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef",
		"ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c",
		"5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328",
	}
)

func ctTree(t testing.TB) *seal.Tree {
	tree := new(seal.Tree)
	for _, leaf := range ctLeaves {
		if err := tree.Append(unhex(t, leaf)); err != nil {
			t.Fatal(err)
		}
	}
	return tree
}

func TestRoots(t *testing.T) {
	tree := ctTree(t)
	for size, want := range ctRoots {
		got, err := seal.Root(int64(size), tree)
		if err != nil || hex.EncodeToString(got[:]) != want {
			t.Errorf("root of %d: %v %v, want %s", size, got, err, want)
		}
	}
	for i, want := range ctHashes {
		if got := seal.LeafHash(unhex(t, ctLeaves[i])); hex.EncodeToString(got[:]) != want {
			t.Errorf("leaf %d: %v, want %s", i, got, want)
		}
	}
}

// Audit paths and consistency proofs worked out by the recursive definition of RFC 6962 section 2.1.
func TestPathFigures(t *testing.T) {
	tree := ctTree(t)
	for _, c := range []struct {
		seq, size int64
		path      []string
	}{
		{0, 1, nil},
		{2, 3, []string{ctRoots[2]}},
		{4, 5, []string{ctRoots[4]}},
		{0, 7, []string{ctHashes[1], "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e", "837dbb152e9b079010717e84e865da4ebc0fa198a806d59d31bf15accef22d0e"}},
		{6, 7, []string{"0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a", ctRoots[4]}},
		{5, 8, []string{ctHashes[4], "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0", ctRoots[4]}},
	} {
		root, err := seal.Root(c.size, tree)
		if err != nil {
			t.Fatal(err)
		}
		p, err := seal.Prove(seal.Head{Size: c.size, Root: root}, []int64{c.seq}, tree)
		if err != nil || !slices.Equal(hexList(p.Entries[0].Path), c.path) {
			t.Errorf("entry %d of %d: %v %v, want %s", c.seq, c.size, p.Entries, err, c.path)
		}
	}
	for _, c := range []struct {
		older, size int64
		path        []string
	}{
		{2, 3, []string{ctHashes[2]}},
		{4, 6, []string{"0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a"}},
		{3, 7, []string{ctHashes[2], ctHashes[3], ctRoots[2], "837dbb152e9b079010717e84e865da4ebc0fa198a806d59d31bf15accef22d0e"}},
		{6, 7, []string{"0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a", ctHashes[6], ctRoots[4]}},
		{4, 8, []string{"6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4"}},
	} {
		path, err := seal.ProvePrefix(c.size, c.older, tree)
		if err != nil || !slices.Equal(hexList(path), c.path) {
			t.Errorf("%d in %d: %v %v, want %s", c.older, c.size, path, err, c.path)
		}
	}
}

func hexList(path []seal.Hash) []string {
	var list []string
	for _, h := range path {
		list = append(list, hex.EncodeToString(h[:]))
	}
	return list
}

// rfcRoot is MTH of RFC 6962 section 2.1, written down as the RFC has it, to hold the library against.
func rfcRoot(entries [][]byte) [32]byte {
	switch n := len(entries); n {
	case 0:
		return sha256.Sum256(nil)
	case 1:
		return sha256.Sum256(append([]byte{0}, entries[0]...))
	default:
		k := 1
		for k*2 < n {
			k *= 2
		}
		left, right := rfcRoot(entries[:k]), rfcRoot(entries[k:])
		return sha256.Sum256(append(append([]byte{1}, left[:]...), right[:]...))
	}
}

// Every entry of every journal up to 33 entries is proved, and every older head against every newer; nothing passes for a neighbour.
func TestAllProofs(t *testing.T) {
	const max = 33
	tree := new(seal.Tree)
	var entries [][]byte
	heads := []seal.Head{{Origin: "backleaf/KB", Root: rfcRoot(nil)}}
	for n := range max {
		entry := fmt.Appendf(nil, `{"seq":%d}`, n)
		if err := tree.Append(entry); err != nil {
			t.Fatal(err)
		}
		entries = append(entries, entry)
		heads = append(heads, seal.Head{Origin: "backleaf/KB", Size: int64(n + 1), Root: rfcRoot(entries)})
	}
	if got, _ := tree.ReadHashes([]int64{seal.StoredHashIndex(5)}); got[0] != seal.LeafHash(entries[5]) {
		t.Error("the hash of entry 5 is not at its index")
	}
	for _, h := range heads {
		if root, err := seal.Root(h.Size, tree); err != nil || root != h.Root {
			t.Fatalf("root of %d: %v %v, RFC 6962 has %v", h.Size, root, err, h.Root)
		}
		for seq := range h.Size {
			p, err := seal.Prove(h, []int64{seq}, tree)
			if err != nil {
				t.Fatal(err)
			}
			if err := p.Verify(h, []seal.Entry{{Seq: seq, Bytes: entries[seq]}}); err != nil {
				t.Errorf("entry %d of %d: %v", seq, h.Size, err)
			}
			if h.Size > 1 {
				wrong := (seq + 1) % h.Size
				p.Entries[0].Seq = wrong
				if err := p.Verify(h, []seal.Entry{{Seq: wrong, Bytes: entries[seq]}}); !errors.Is(err, seal.ErrProof) {
					t.Errorf("entry %d of %d as entry %d: %v", seq, h.Size, wrong, err)
				}
			}
		}
		for _, older := range heads[:h.Size+1] {
			path, err := seal.ProvePrefix(h.Size, older.Size, tree)
			if err != nil {
				t.Fatal(err)
			}
			if err := h.CheckPrefix(older, path); err != nil {
				t.Errorf("%d in %d: %v", older.Size, h.Size, err)
			}
			forged := older
			forged.Root[0] ^= 1
			if err := h.CheckPrefix(forged, path); !errors.Is(err, seal.ErrProof) {
				t.Errorf("%d in %d with another root: %v", older.Size, h.Size, err)
			}
		}
	}
}

func TestPrefixRefused(t *testing.T) {
	tree := ctTree(t)
	h := head1(t)
	root5, _ := seal.Root(5, tree)
	older := seal.Head{Origin: h.Origin, Size: 5, Root: root5}
	path, err := seal.ProvePrefix(8, 5, tree)
	if err != nil {
		t.Fatal(err)
	}
	if err := h.CheckPrefix(older, path); err != nil {
		t.Error(err)
	}
	if h.CheckPrefix(older, path[1:]) == nil || h.CheckPrefix(older, append(path, seal.Hash{})) == nil || h.CheckPrefix(older, nil) == nil {
		t.Error("another path accepted")
	}
	if older.CheckPrefix(h, path) == nil {
		t.Error("a newer head passes for an older one")
	}
	other := older
	other.Origin = "backleaf/ZZ"
	if h.CheckPrefix(other, path) == nil {
		t.Error("the head of another journal accepted")
	}
	if _, err := seal.ProvePrefix(5, 8, tree); err == nil {
		t.Error("eight entries as the beginning of five")
	}
	if _, err := seal.ProvePrefix(9, 5, tree); err == nil {
		t.Error("proof from hashes that are not stored")
	}
	if h.CheckPrefix(seal.Head{Origin: h.Origin, Size: -1}, nil) == nil {
		t.Error("negative size accepted")
	}
}

// The journal that changed one old entry has another root at every size from there on, and no path can hide it.
func TestChangedEntry(t *testing.T) {
	tree, forged := new(seal.Tree), new(seal.Tree)
	for n := range 20 {
		entry := fmt.Appendf(nil, `{"seq":%d}`, n)
		if err := tree.Append(entry); err != nil {
			t.Fatal(err)
		}
		if n == 3 {
			entry = []byte(`{"seq":3,"changed":1}`)
		}
		if err := forged.Append(entry); err != nil {
			t.Fatal(err)
		}
	}
	head := func(size int64, tree *seal.Tree) seal.Head {
		root, err := seal.Root(size, tree)
		if err != nil {
			t.Fatal(err)
		}
		return seal.Head{Origin: "backleaf/KB", Size: size, Root: root}
	}
	newer := head(20, forged)
	for size := range int64(20) {
		path, err := seal.ProvePrefix(20, size, forged)
		if err != nil {
			t.Fatal(err)
		}
		if err := newer.CheckPrefix(head(size, tree), path); (err == nil) != (size <= 3) {
			t.Errorf("head of %d entries: %v", size, err)
		}
	}
}
