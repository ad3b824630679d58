package model

// Way is how a cable, a cord or a drain goes from one place to another. It is proposed:
// whoever is licensed to wire or to plumb decides.
type Way struct {
	Kind, Name string // "cable", "cord" or "drain"
	From, To   string // keys of blocks: "outlet.blender", "sink.prep"
	Points     []Spot // where it begins, turns and ends
	Length     Length // along it
	Need       Length // of what is laid, with what is left over; 0 where as long
	Diameter   Length // of what it asks room for: a hole, a pipe
	Holes      []WayHole
	Past       []string // keys of the boxes and knee walls that it comes through, in order
	Supports   int      // staples of a cable, hangers of a pipe
	Why        Why
}

// Spot is a point of the room: x and y in plan, z over the datum.
type Spot struct{ X, Y, Z Length }

// WayHole is where a way goes through a part.
type WayHole struct {
	Part   string // ID
	At     Spot   // in the middle of the part's thickness
	Wide   Length // of the hole
	High   Length // likewise; of a round one as much
	Edge   Length // in lumber: wood between it and the nearer edge
	Plates int    // of steel, that keep nails and screws off
}

// Key is the key of the way's block: "cable.scale".
func (w *Way) Key() string { return w.Kind + "." + w.Name }

// Words name it: "cable scale".
func (w *Way) Words() string { return w.Kind + " " + w.Name }
