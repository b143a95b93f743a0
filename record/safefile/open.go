package safefile

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// Unbounded is a bound for files that are read piece by piece.
const Unbounded = 1 << 62

// Open opens a file to read that somebody else may have put there: a regular
// one of at most so many bytes. A pipe or device is refused without waiting for
// it. A symbolic link is followed.
func Open(path string, most int64) (*os.File, error) { return open(disk{}, path, most) }

// OpenIn is [Open] for a path below root; see [os.Root] for links.
func OpenIn(root *os.Root, path string, most int64) (*os.File, error) { return open(root, path, most) }

// Read reads the whole of such a file. What it needs of memory is bounded too.
func Read(path string, most int64) ([]byte, error) {
	f, err := Open(path, most)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", path, err)
	}
	all := bytes.NewBuffer(make([]byte, 0, info.Size()+bytes.MinRead))
	n, err := all.ReadFrom(io.LimitReader(f, most+1))
	if err == nil && n > most { // it grew
		err = tooLarge(most)
	}
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", path, err)
	}
	return all.Bytes(), nil
}

// ReadIn reads the whole of such a file below root; its path has slashes.
func ReadIn(root *os.Root, path string, most int64) ([]byte, error) {
	f, err := OpenIn(root, filepath.FromSlash(path), most)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data, err := ReadAll(f, most)
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", path, err)
	}
	return data, nil
}

// ReadAll reads all of r, of which nobody knows how much it is, and refuses
// more than most bytes.
func ReadAll(r io.Reader, most int64) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, most+1))
	if err == nil && int64(len(data)) > most {
		return nil, tooLarge(most)
	}
	return data, err
}

type place interface {
	Stat(name string) (fs.FileInfo, error)
	OpenFile(name string, flag int, perm fs.FileMode) (*os.File, error)
}

type disk struct{}

func (disk) Stat(name string) (fs.FileInfo, error) { return os.Stat(name) }
func (disk) OpenFile(name string, flag int, perm fs.FileMode) (*os.File, error) {
	return os.OpenFile(name, flag, perm)
}

func open(in place, path string, most int64) (*os.File, error) {
	f, err := opened(in, path, most)
	if err != nil {
		if p, ok := errors.AsType[*fs.PathError](err); ok {
			err = p.Err // it names the path too
		}
		return nil, fmt.Errorf("cannot read %s: %w", path, err)
	}
	return f, nil
}

func opened(in place, path string, most int64) (*os.File, error) {
	info, err := in.Stat(path) // a device may act when it is opened
	if err != nil {
		return nil, err
	}
	if err := fit(info, most); err != nil {
		return nil, err
	}
	f, err := in.OpenFile(path, os.O_RDONLY|nonblock, 0)
	if err != nil {
		return nil, err
	}
	if info, err = f.Stat(); err == nil { // it may be another by now
		err = fit(info, most)
	}
	if err != nil {
		return nil, errors.Join(err, f.Close())
	}
	return f, nil
}

func fit(info fs.FileInfo, most int64) error {
	if !info.Mode().IsRegular() {
		return fmt.Errorf("it is %s and no regular file", Kind(info.Mode()))
	}
	if info.Size() > most {
		return tooLarge(most)
	}
	return nil
}

func tooLarge(most int64) error {
	if most < 1<<20 {
		return fmt.Errorf("it has more than %d bytes", most)
	}
	return fmt.Errorf("it is larger than %d MB", most>>20)
}

// Kind says what stands at a place where a regular file should.
func Kind(m fs.FileMode) string {
	switch {
	case m.IsDir():
		return "a folder"
	case m&fs.ModeSymlink != 0:
		return "a symbolic link"
	case m&fs.ModeNamedPipe != 0:
		return "a pipe"
	case m&fs.ModeSocket != 0:
		return "a socket"
	}
	return "a device"
}
