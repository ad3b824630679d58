package replay

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"hash"
	"math"
	"sync"

	"barwright/compile/model"
)

// Checker checks the programs of a build, several at once. Each text is read, and its settings and travel are
// judged; of those whose moves as read are the same to the bit, and which must cut the same out of the same wood as far as
// the bit may come, only one is cut. Where that is refused, each of them is cut and refused for itself.
type Checker struct {
	lock sync.Mutex
	cuts map[[sha256.Size]byte]*cut // lookup only
}

// cut is what comes of cutting programs that are alike.
type cut struct {
	sync.Once
	passed bool
}

// Check is the function Check.
func (c *Checker) Check(text []byte, p *model.Program) error {
	if err := c.check(text, taskOf(p, woodNear(p))); err != nil {
		return fmt.Errorf("program %s: %w", p.Name, err)
	}
	return nil
}

// CheckRouting is the function CheckRouting.
func (c *Checker) CheckRouting(text []byte, r *model.Routing) error {
	if err := c.check(text, taskOfRouting(r)); err != nil {
		return fmt.Errorf("program %s: %w", r.Name, err)
	}
	return nil
}

func (c *Checker) check(text []byte, t *task) error {
	tape, err := t.read(text)
	if err != nil {
		return err
	}
	all := c.like(t, tape)
	cutHere := false
	all.Do(func() {
		cutHere = true
		err = t.cut(tape)
		all.passed = err == nil
	})
	if cutHere || all.passed {
		return err
	}
	return t.cut(tape)
}

// like is what comes of the programs that a program is alike.
func (c *Checker) like(t *task, tape *Tape) *cut {
	key := t.key(tape)
	c.lock.Lock()
	defer c.lock.Unlock()
	if c.cuts == nil {
		c.cuts = map[[sha256.Size]byte]*cut{}
	}
	if c.cuts[key] == nil {
		c.cuts[key] = new(cut)
	}
	return c.cuts[key]
}

// key is a digest of all that cutting hangs on: what must be cut, and the moves.
func (t *task) key(tape *Tape) (sum [sha256.Size]byte) {
	h := sha256.New()
	h.Write([]byte(t.given))
	for i := range tape.Motions {
		tape.Motions[i].digest(h)
	}
	h.Sum(sum[:0])
	return sum
}

// digest writes a move, but for the line that it stands in.
func (m *Motion) digest(h hash.Hash) {
	var b [8*10 + 3]byte
	for i, v := range [...]float64{m.From.X, m.From.Y, m.From.Z, m.To.X, m.To.Y, m.To.Z, m.CX, m.CY, m.Sweep, m.Feed} {
		binary.LittleEndian.PutUint64(b[8*i:], math.Float64bits(v))
	}
	for i, is := range [...]bool{m.Rapid, m.Arc, m.Spinning} {
		if is {
			b[8*10+i] = 1
		}
	}
	h.Write(b[:])
}
