package folder

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"hash"
	"os"
	"path/filepath"
)

// mostHeld is how many bytes of a file are held before it is made: more than nearly all files have.
const mostHeld = 1 << 18

// inFolder is what a folder holds, by its manifest, and as it was found to be.
type inFolder struct {
	dir     string
	entries map[string]entry // by name; lookup only
}

// draft is a file that is being written. One that is held whole is not made where the old folder has it already.
type draft struct {
	ctx  context.Context // until whose end is written
	path string
	held []byte // what is not written yet
	file *os.File
	size int64 // of what is written
	hash hash.Hash
}

func (d *draft) write(f File, old inFolder) (e entry, err error) {
	defer func() {
		if d.file != nil {
			err = errors.Join(err, d.file.Close())
		}
	}()
	if err := d.ctx.Err(); err != nil {
		return e, err
	}
	if err := f.Write(d); err != nil {
		return e, err
	}
	e = entry{Name: f.Name, Size: d.size + int64(len(d.held))}
	if d.file == nil {
		sum := sha256.Sum256(d.held)
		e.SHA256 = hex.EncodeToString(sum[:])
		if old.entries[f.Name] == e && os.Link(filepath.Join(old.dir, filepath.FromSlash(f.Name)), d.path) == nil {
			return e, nil
		}
		return e, d.pass(d.held)
	}
	if err := d.spill(); err != nil {
		return e, err
	}
	e.SHA256 = hex.EncodeToString(d.hash.Sum(nil))
	return e, nil
}

// Write fails where the context has ended.
func (d *draft) Write(p []byte) (int, error) {
	if err := d.ctx.Err(); err != nil {
		return 0, err
	}
	for rest := p; ; {
		n := min(len(rest), cap(d.held)-len(d.held))
		d.held, rest = append(d.held, rest[:n]...), rest[n:]
		if len(rest) == 0 {
			return len(p), nil
		}
		if err := d.spill(); err != nil {
			return 0, err
		}
	}
}

// spill writes what is held.
func (d *draft) spill() error {
	if d.hash == nil {
		d.hash = sha256.New()
	}
	d.hash.Write(d.held)
	d.size += int64(len(d.held))
	err := d.pass(d.held)
	d.held = d.held[:0]
	return err
}

// pass writes to the file, which is made where it is not yet.
func (d *draft) pass(p []byte) (err error) {
	if d.file == nil {
		if d.file, err = os.OpenFile(d.path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666); err != nil {
			return err
		}
	}
	_, err = d.file.Write(p)
	return err
}
