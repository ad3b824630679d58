package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"

	"barwright/emit/revision"
)

// unwritable says why a page cannot be written to a file, empty where it can or none
// is asked for. A file that holds anything but an older page stays.
func unwritable(out string) string {
	info, err := os.Stat(out)
	switch {
	case out == "":
		return ""
	case err == nil && info.IsDir():
		return fmt.Sprintf("-o %s is a folder; name the file for the page", out)
	case filepath.Ext(out) != ".html":
		return fmt.Sprintf("-o %s does not end in .html, as the name of a page does", out)
	case err != nil || info.Mode().IsRegular() && info.Size() == 0:
		return ""
	case !info.Mode().IsRegular() || !holdsPage(out):
		return fmt.Sprintf("-o %s is there, and is no page that barwright diff wrote; name another file", out)
	}
	return ""
}

func holdsPage(name string) bool {
	f, err := os.Open(name)
	if err != nil {
		return false
	}
	defer f.Close()
	head, err := io.ReadAll(io.LimitReader(f, 1<<10))
	return err == nil && revision.IsPage(head)
}
