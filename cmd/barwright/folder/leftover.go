package folder

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// clearLeftovers removes the staging folders that stopped runs left beside
// target, and puts back an old folder that such a run had moved aside. What it
// cannot tell for certain, or cannot remove, it leaves: a left-over folder is
// no reason to refuse work. Where the system has no file locks nothing is
// certain.
func clearLeftovers(target string) {
	parent := filepath.Dir(target)
	entries, err := os.ReadDir(parent)
	if err != nil {
		return
	}
	for _, e := range entries {
		if e.IsDir() && strings.HasPrefix(e.Name(), prefix(target)) {
			clearLeftover(filepath.Join(parent, e.Name()), target)
		}
	}
}

func clearLeftover(root, target string) {
	if os.Remove(root) == nil { // empty: stopped at once
		return
	}
	if !looksLikeStaging(root) {
		return
	}
	marker, err := os.OpenFile(filepath.Join(root, markerName), os.O_RDWR, 0)
	if err != nil {
		return
	}
	defer marker.Close()
	if lock(marker) != nil { // its run lives, or nobody can tell
		return
	}
	if _, err := os.Lstat(target); errors.Is(err, fs.ErrNotExist) {
		os.Rename(filepath.Join(root, asideName), target)
	}
	for _, name := range []string{freshName, asideName} {
		if holdsPersonal(filepath.Join(root, name)) {
			return
		}
	}
	removeStaging(root)
}

// looksLikeStaging reports whether a folder holds a marker with our text, or
// with the beginning of it, and nothing that a staging folder does not hold.
func looksLikeStaging(root string) bool {
	text, err := readPlain(filepath.Join(root, markerName), int64(len(markerText)))
	if err != nil || !strings.HasPrefix(markerText, string(text)) {
		return false
	}
	entries, err := os.ReadDir(root)
	for _, e := range entries {
		switch e.Name() {
		case markerName, manifestName:
			if !e.Type().IsRegular() {
				return false
			}
		case freshName, asideName:
			if !e.IsDir() {
				return false
			}
		default:
			return false
		}
	}
	return err == nil
}

// holdsPersonal reports whether a folder in a left-over holds what a person
// made. One without a manifest was never finished, or half removed already.
func holdsPersonal(dir string) bool {
	if _, ours, err := readManifest(dir); err == nil && !ours {
		return false
	}
	_, kept, err := personal(dir)
	return err != nil || len(kept) > 0
}
