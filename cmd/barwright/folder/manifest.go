package folder

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

const (
	manifestName   = "manifest.json"
	manifestFormat = 1
	mostManifest   = 64 << 20 // bytes: hundreds of thousands of files
)

// errNotPlain says that a file is none that this program could have written.
var errNotPlain = errors.New("no plain file of that size")

// readPlain reads a file of most bytes or fewer. It follows no link, and waits for
// nobody at the other end of a pipe.
func readPlain(path string, most int64) ([]byte, error) {
	info, err := os.Lstat(path)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() || info.Size() > most {
		return nil, errNotPlain
	}
	return os.ReadFile(path)
}

// manifest lists the files of a folder, sorted by name, itself left out.
type manifest struct {
	Format int     `json:"barwright_manifest"`
	Files  []entry `json:"files"`
}

type entry struct {
	Name   string `json:"name"`
	Size   int64  `json:"size"`
	SHA256 string `json:"sha256"`
}

// encode returns the manifest's bytes, one line for each file.
func (m manifest) encode() []byte {
	slices.SortFunc(m.Files, func(a, b entry) int { return strings.Compare(a.Name, b.Name) })
	var b bytes.Buffer
	fmt.Fprintf(&b, "{\"barwright_manifest\": %d, \"files\": [", m.Format)
	for i, e := range m.Files {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString("\n ")
		line, err := json.Marshal(e)
		if err != nil {
			panic(err) // strings and a number always marshal
		}
		b.Write(line)
	}
	b.WriteString("\n]}\n")
	return b.Bytes()
}

// readManifest returns the entries of a folder's manifest by name; ours is
// false where there is none, or none that this program could have written.
func readManifest(dir string) (entries map[string]entry, ours bool, err error) {
	data, err := readPlain(filepath.Join(dir, manifestName), mostManifest)
	if errors.Is(err, errNotPlain) || errors.Is(err, fs.ErrNotExist) {
		return nil, false, nil
	}
	if err != nil {
		return nil, false, err
	}
	var m manifest
	if json.Unmarshal(data, &m) != nil || m.Format != manifestFormat {
		return nil, false, nil
	}
	entries = map[string]entry{}
	for _, e := range m.Files {
		if checkName(e.Name) != nil {
			return nil, false, nil
		}
		entries[e.Name] = e
	}
	return entries, true, nil
}

// holds reports whether the file is still as the entry says; it is read by way of a buffer.
func (e entry) holds(path string, buffer []byte) (bool, error) {
	info, err := os.Lstat(path)
	if err != nil {
		return false, err
	}
	if !info.Mode().IsRegular() || info.Size() != e.Size {
		return false, nil
	}
	f, err := os.Open(path)
	if err != nil {
		return false, err
	}
	hash := sha256.New()
	_, err = io.CopyBuffer(hash, struct{ io.Reader }{f}, buffer) // a file alone would take one of its own
	if err := errors.Join(err, f.Close()); err != nil {
		return false, err
	}
	return hex.EncodeToString(hash.Sum(nil)) == e.SHA256, nil
}
