package folder

import (
	"fmt"
	"io/fs"
	"path"
	"strings"
	"unicode"
)

// checkNames tells of the first name that cannot be written: one that leads
// out of the folder, that not every system can hold, that differs from another
// only in capitals, or that is a folder and a file at once.
func checkNames(files []File) error {
	spelled := map[string]string{lower(manifestName): manifestName} // lower case to the name that has it
	isFile := map[string]bool{lower(manifestName): true}
	for _, f := range files {
		if err := checkName(f.Name); err != nil {
			return err
		}
		if name, taken := spelled[lower(f.Name)]; taken {
			return fmt.Errorf("file name %q: %q is there already", f.Name, name)
		}
		spelled[lower(f.Name)], isFile[lower(f.Name)] = f.Name, true
		for up := path.Dir(f.Name); up != "."; up = path.Dir(up) {
			name, known := spelled[lower(up)]
			if isFile[lower(up)] || known && name != up {
				return fmt.Errorf("file name %q: %q is there already", f.Name, name)
			}
			spelled[lower(up)] = up
		}
	}
	return nil
}

func lower(name string) string { return strings.ToLower(name) }

func checkName(name string) error {
	if !fs.ValidPath(name) || name == "." {
		return fmt.Errorf("file name %q: not a name inside the output folder", name)
	}
	for _, element := range strings.Split(name, "/") {
		if strings.ContainsAny(element, `<>:"|?*\`) || strings.ContainsFunc(element, unicode.IsControl) ||
			strings.HasSuffix(element, ".") || strings.HasSuffix(element, " ") {
			return fmt.Errorf("file name %q: not every system can hold this name", name)
		}
	}
	return nil
}
