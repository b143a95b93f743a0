package deposit

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"

	"backleaf/record/bag"
	parts "backleaf/record/deposit"
	"backleaf/record/seal"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/verify"
)

// put takes a part that is ready; its path is below data/.
type put func(path string, data []byte) error

// onDisk keeps parts in a folder until the bag is written, however many there
// are.
func (d *depositor) onDisk(dir string) put {
	return func(path string, data []byte) error {
		name := filepath.Join(dir, filepath.FromSlash(path))
		if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
			return err
		}
		if err := os.WriteFile(name, data, 0o666); err != nil {
			return err
		}
		d.add(bag.FromDisk(path, name))
		return nil
	}
}

func (d *depositor) add(f bag.File) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.files = append(d.files, f)
}

func (d *depositor) leaveOut(path string, why error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.leftOut = append(d.leftOut, path+": "+why.Error())
}

// write makes the bag, which can be interrupted before each file.
func (d *depositor) write(ctx context.Context, dir string) error {
	readme, info, err := d.tags()
	if err != nil {
		return err
	}
	show, done := d.progress.Of("files"), int64(0)
	for i, f := range d.files {
		d.files[i].Open = func() (io.ReadCloser, error) {
			if err := ctx.Err(); err != nil {
				return nil, err
			}
			if done++; show != nil {
				show(done, int64(len(d.files)))
			}
			return f.Open()
		}
	}
	return bag.Write(dir, bag.Bag{Payload: d.files, Tags: []bag.File{bag.Bytes(readmeName, readme)}, Agent: "backleaf", Date: d.now, Sign: d.sign(), Info: info})
}

const readmeName = "README.txt"

// tags are the README and what bag-info.txt says beside the fields of every bag.
func (d *depositor) tags() (readme []byte, info []bag.Field, err error) {
	readme, err = parts.Readme(d.about)
	if err != nil {
		return nil, nil, err
	}
	words, err := wordsOf(d.words)
	return readme, []bag.Field{
		{Label: "Source-Organization", Value: d.about.Maker},
		{Label: "External-Identifier", Value: fmt.Sprintf("%s-%d-%s", cmp.Or(d.about.Mark, "empty"), d.about.Entries, d.about.Root[:16])},
		{Label: "External-Description", Value: fmt.Sprintf("The record of %s by %s: journal, book, photographs and papers. Begin with README.txt.", kept.Count(d.about.Panels, "painting panel"), d.about.Maker)},
		{Label: "Number-of-Panels", Value: fmt.Sprint(d.about.Panels)},
		{Label: "Number-of-Entries", Value: fmt.Sprint(d.about.Entries)},
		{Label: "Signed", Value: signedWords(d.about.Key)},
		{Label: infoMade, Value: d.now.Format(time.RFC3339)},
		{Label: infoWords, Value: words},
	}, err
}

// sign signs the list that leads to every byte of the bag; nil without a key.
func (d *depositor) sign() func([]byte) (bag.File, error) {
	if d.key == nil {
		return nil
	}
	return func(tagManifest []byte) (bag.File, error) {
		origin, err := seal.Origin(d.shop.Studio.Mark, d.shop.Studio.Journal)
		if err != nil {
			return bag.File{}, err
		}
		note, err := seal.Deposit{Origin: origin, Manifest: seal.DigestOf(tagManifest), Entries: d.head.Size, Root: d.head.Root,
			Panels: int64(len(d.shop.Panels)), Made: d.now.Format(time.DateOnly)}.Sign(*d.key)
		return bag.Bytes(verify.DepositSignature, note), err
	}
}

func signedWords(fingerprint string) string {
	if fingerprint == "" {
		return "no"
	}
	return "with key " + fingerprint
}
