package history

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os/exec"
	"slices"
	"strings"
)

// Errors that a caller may want to tell in words of its own.
var (
	ErrNoGit        = errors.New("git is not installed; it is what reads revisions")
	ErrNoRepository = errors.New("there is no repository here")
	ErrNoRevision   = errors.New("no such revision")
)

// quiet keeps git from asking, from fetching what a partial clone lacks, from taking
// locks, and from other languages.
var quiet = [...]string{
	"GIT_OPTIONAL_LOCKS=0", "GIT_NO_LAZY_FETCH=1", "GIT_ALLOW_PROTOCOL=", "GIT_TERMINAL_PROMPT=0", "LC_ALL=C",
}

// git runs git in a folder and returns what it prints, at most so many bytes of it.
func git(dir string, most int64, args ...string) ([]byte, error) {
	cmd := exec.Command("git", append([]string{"--no-pager"}, args...)...)
	cmd.Dir = dir
	cmd.Env = append(slices.DeleteFunc(cmd.Environ(), func(v string) bool {
		// As a hook hears of its own repository, from the folder that it runs in.
		return dir != "." && (strings.HasPrefix(v, "GIT_DIR=") || strings.HasPrefix(v, "GIT_WORK_TREE="))
	}), quiet[:]...)
	var words bytes.Buffer
	cmd.Stderr = &words
	pipe, err := cmd.StdoutPipe()
	if err != nil {
		return nil, err
	}
	if err := cmd.Start(); err != nil {
		if errors.Is(err, exec.ErrNotFound) {
			return nil, ErrNoGit
		}
		return nil, err
	}
	out, err := io.ReadAll(io.LimitReader(pipe, most))
	if int64(len(out)) == most {
		cmd.Process.Kill() // the rest is not wanted, and neither is its exit status
		cmd.Wait()
		return out, err
	}
	if ended := cmd.Wait(); ended != nil {
		return nil, said(words.String(), ended)
	}
	return out, err
}

// said makes an error of what git said.
func said(words string, ended error) error {
	words = strings.TrimSpace(words)
	switch {
	case strings.Contains(words, "dubious ownership"):
		return fmt.Errorf("git does not trust this repository: %s", plain(words))
	case strings.Contains(words, "not a git repository"):
		return ErrNoRepository
	case strings.Contains(words, "Needed a single revision"):
		words, _, _ = strings.Cut(words, "fatal:")
		if words = strings.TrimSpace(words); words == "" {
			return ErrNoRevision
		}
		return fmt.Errorf("%w: git says: %s", ErrNoRevision, plain(words))
	case words == "":
		return fmt.Errorf("git failed: %w", ended)
	}
	return fmt.Errorf("git says: %s", plain(words))
}

// plain takes git's own marks from its words.
func plain(words string) string {
	var out []string
	for line := range strings.Lines(words) {
		line = strings.TrimRight(line, "\r\n")
		for _, mark := range []string{"fatal: ", "error: ", "hint: "} {
			line = strings.TrimPrefix(line, mark)
		}
		out = append(out, line)
	}
	return strings.Join(out, "\n")
}
