package folder

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// A run that finds another at its folder looks again every so often, patience times.
const (
	lookEvery = 20 * time.Millisecond
	patience  = 500
)

// errTaken says that another run is writing a folder.
var errTaken = errors.New("another build is writing it")

// claim makes the staging folder of a target. While it stands no other run has one, where
// the system has file locks. The error is a [*Refused] where another run has one at each
// of so many looks.
func claim(ctx context.Context, dir, target string, looks int) (*staging, error) {
	for ; ; looks-- {
		s, err := claimNow(target)
		switch {
		case !errors.Is(err, errTaken):
			return s, err
		case looks <= 1:
			return nil, &Refused{Dir: dir, Why: errTaken.Error()}
		}
		select {
		case <-ctx.Done():
			return nil, ctx.Err()
		case <-time.After(lookEvery):
		}
	}
}

// claimNow does so at once. Of two runs that begin together one looks after the other: the
// folder around the target is locked meanwhile, for who writes beside it too.
func claimNow(target string) (*staging, error) {
	if around, err := os.Open(filepath.Dir(target)); err == nil {
		defer around.Close()
		if held(lock(around)) {
			return nil, errTaken
		}
	}
	if lives(target) {
		return nil, errTaken
	}
	clearLeftovers(target)
	return newStaging(target)
}

// lives reports whether a run that lives has a staging folder of the target.
func lives(target string) bool {
	parent := filepath.Dir(target)
	entries, err := os.ReadDir(parent)
	if err != nil {
		return false
	}
	for _, e := range entries {
		root := filepath.Join(parent, e.Name())
		if !e.IsDir() || !strings.HasPrefix(e.Name(), prefix(target)) || !looksLikeStaging(root) {
			continue
		}
		marker, err := os.OpenFile(filepath.Join(root, markerName), os.O_RDWR, 0)
		if err != nil {
			continue
		}
		taken := held(lock(marker))
		marker.Close()
		if taken {
			return true
		}
	}
	return false
}
