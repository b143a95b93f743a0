package bag

import (
	"cmp"
	"encoding/hex"
	"errors"
	"fmt"
	"hash"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
	"unicode"

	"backleaf/record/safefile"
)

// Bag is what is to be written.
type Bag struct {
	Payload []File  // paths below data/
	Tags    []File  // further tag files, beside data/; those of RFC 8493 are refused
	Info    []Field // of bag-info.txt, before the three fields the writer adds
	Agent   string  // Bag-Software-Agent
	Date    time.Time

	// Sign makes one more tag file from tagmanifest-sha512.txt, which leads to
	// every other byte of the bag. No manifest lists it. nil: there is none.
	Sign func(tagManifest []byte) (File, error)
}

// Write makes the folder dir, which must not be there yet, and writes b into
// it: all of it or nothing (see package safefile). Same bag, same bytes.
func Write(dir string, b Bag) error {
	if err := check(b); err != nil {
		return fmt.Errorf("cannot write bag %s: %w", dir, err)
	}
	return safefile.CreateDir(dir, func(temp string) error {
		w := writer{dir: temp}
		if err := os.Mkdir(filepath.Join(temp, payloadDir), 0o777); err != nil {
			return err
		}
		payload := newManifests()
		for _, f := range sorted(b.Payload) {
			f.Path = payloadDir + f.Path
			if err := w.put(f, payload); err != nil {
				return err
			}
		}
		info := append(slices.Clone(b.Info),
			Field{"Bag-Software-Agent", b.Agent},
			Field{"Bagging-Date", b.Date.Format(time.DateOnly)},
			Field{"Payload-Oxum", fmt.Sprintf("%d.%d", w.octets, len(b.Payload))})
		tags := append(payload.files("manifest-"),
			Bytes("bagit.txt", []byte(declaration)),
			Bytes("bag-info.txt", []byte(formatInfo(info))))
		tagged := newManifests()
		for _, f := range sorted(append(tags, b.Tags...)) {
			if err := w.put(f, tagged); err != nil {
				return err
			}
		}
		last := tagged.files("tagmanifest-")
		if b.Sign != nil {
			f, err := b.Sign([]byte(tagged["sha512"].String()))
			if err != nil {
				return err
			}
			last = append(last, f)
		}
		for _, f := range last {
			if err := w.put(f, nil); err != nil {
				return err
			}
		}
		return nil
	})
}

func sorted(files []File) []File {
	return slices.SortedFunc(slices.Values(files), func(a, b File) int { return cmp.Compare(a.Path, b.Path) })
}

// check refuses a bag whole before anything is written.
func check(b Bag) error {
	if b.Date.IsZero() {
		return errors.New("the bagging date is missing")
	}
	taken := names{}
	for _, f := range b.Payload {
		if err := checkWrite(f.Path); err != nil {
			return fmt.Errorf("payload %q: %w", f.Path, err)
		}
		if err := taken.add(payloadDir + f.Path); err != nil {
			return fmt.Errorf("payload %q: %w", f.Path, err)
		}
	}
	for _, f := range b.Tags {
		err := checkWrite(f.Path)
		if err == nil && ours(f.Path) {
			err = errors.New("the path belongs to the format itself")
		}
		if err == nil {
			err = taken.add(f.Path)
		}
		if err != nil {
			return fmt.Errorf("tag file %q: %w", f.Path, err)
		}
	}
	for _, f := range append(slices.Clone(b.Info), Field{"Bag-Software-Agent", b.Agent}) {
		if err := f.check(); err != nil {
			return err
		}
	}
	for _, f := range b.Info {
		if f.Is("Payload-Oxum") || f.Is("Bagging-Date") || f.Is("Bag-Software-Agent") {
			return fmt.Errorf("bag-info field %s is written by the program itself", f.Label)
		}
	}
	return nil
}

// ours reports whether a tag file path has a meaning in RFC 8493.
func ours(p string) bool {
	p = fold(p)
	first, _, _ := strings.Cut(p, "/")
	return first == "data" || p == "bagit.txt" || p == "bag-info.txt" || p == "fetch.txt" || isManifest(p, "manifest-") || isManifest(p, "tagmanifest-")
}

func isManifest(name, prefix string) bool {
	return strings.HasPrefix(name, prefix) && strings.HasSuffix(name, ".txt") && !strings.Contains(name, "/")
}

func (f Field) check() error {
	bad := func(r rune) bool { return !unicode.IsGraphic(r) }
	switch {
	case f.Label == "" || strings.Contains(f.Label, ":") || strings.TrimSpace(f.Label) != f.Label || strings.ContainsFunc(f.Label, bad):
		return fmt.Errorf("bag-info label %q is empty or holds a colon or a control character", f.Label)
	case strings.TrimSpace(f.Value) != f.Value || strings.ContainsFunc(f.Value, bad) || strings.ContainsRune(f.Value, unicode.ReplacementChar):
		return fmt.Errorf("bag-info value %q of %s is not one line of text", f.Value, f.Label)
	}
	return nil
}

// manifests holds one manifest for each algorithm that is written.
type manifests map[string]manifest

func newManifests() manifests {
	ms := manifests{}
	for _, a := range written {
		ms[a.name] = manifest{}
	}
	return ms
}

func (ms manifests) files(prefix string) []File {
	var out []File
	for _, a := range written {
		out = append(out, Bytes(prefix+a.name+".txt", []byte(ms[a.name].String())))
	}
	return out
}

type writer struct {
	dir    string
	octets int64 // of the payload
}

// put writes one file, reading it once, and enters it in ms if there is one.
func (w *writer) put(f File, ms manifests) (err error) {
	defer func() {
		if err != nil {
			err = fmt.Errorf("%s: %w", f.Path, err)
		}
	}()
	name := filepath.Join(w.dir, filepath.FromSlash(f.Path))
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		return err
	}
	in, err := f.Open()
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	defer out.Close()
	sums := map[string]hash.Hash{}
	to := []io.Writer{out}
	for _, a := range written {
		if ms != nil {
			sums[a.name] = a.new()
			to = append(to, sums[a.name])
		}
	}
	n, err := io.Copy(io.MultiWriter(to...), in)
	if err != nil {
		return err
	}
	for name, m := range ms {
		m[f.Path] = hex.EncodeToString(sums[name].Sum(nil))
	}
	if strings.HasPrefix(f.Path, payloadDir) {
		w.octets += n
	}
	return out.Close()
}
