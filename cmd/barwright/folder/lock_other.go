//go:build !(darwin || dragonfly || freebsd || linux || netbsd || openbsd)

package folder

import (
	"errors"
	"os"
)

func lock(*os.File) error { return errors.ErrUnsupported }

func held(error) bool { return false }
