package chance

import "testing"

// TestNext holds the first numbers of seed 1234567 as published with the generator's code in C, from memory.
func TestNext(t *testing.T) {
	s := Source(1234567)
	for _, want := range []uint64{6457827717110365317, 3203168211198807973, 9817491932198370423} {
		if got := s.Next(); got != want {
			t.Errorf("%d, want %d", got, want)
		}
	}
}
