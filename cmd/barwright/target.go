package main

import (
	"fmt"
	"os"
	"path/filepath"
)

// unwritable says why a page cannot be written to a file, empty where it can or none
// is asked for.
func unwritable(out string) string {
	if out == "" {
		return ""
	}
	if info, err := os.Stat(out); err == nil && info.IsDir() {
		return fmt.Sprintf("-o %s is a folder; name the file for the page", out)
	}
	if filepath.Ext(out) == ".hcl" {
		return fmt.Sprintf("-o %s would be a description; name a file for the page, as in diff.html", out)
	}
	return ""
}

// overwrites says which of the files that were read the page would replace, empty
// where none.
func (o options) overwrites(from *[2]side, builds [2]result) string {
	page, err := os.Stat(o.out)
	if o.out == "" || err != nil {
		return ""
	}
	read := append([]string{o.cut}, o.setFiles...)
	for i, s := range from {
		if s.revised {
			continue
		}
		read = append(read, s.path)
		if src := builds[i].src; src != nil {
			for _, f := range src.Files {
				read = append(read, filepath.Join(folderOf(s.path), filepath.FromSlash(f.Name)))
			}
		}
	}
	for _, name := range read {
		if info, err := os.Stat(name); err == nil && os.SameFile(info, page) {
			return fmt.Sprintf("-o %s would replace a file that is read", o.out)
		}
	}
	return ""
}

// folderOf is the folder that a build's files lie in.
func folderOf(path string) string {
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return path
	}
	return filepath.Dir(path)
}
