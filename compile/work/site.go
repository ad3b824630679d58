package work

import (
	"fmt"
	"slices"
	"strconv"

	"barwright/compile/model"
	"barwright/lang/length"
)

// measure has what the description says of the room held against the room.
func (o *order) measure() {
	o.walls()
	o.fixtures()
	o.studs()
	o.floor()
	o.makersSheets()
	o.proposed()
	o.wayIn()
}

func (o *order) walls() {
	t := model.Task{Key: "site.walls", Phase: measuring, Title: "Measure the walls again, at the floor and at counter height",
		Tools: []string{"tape or laser measure", "level, 6 ft (1.8 m)", "angle finder"}}
	walls := o.Room.Walls
	for i := range walls {
		w := &walls[i]
		t.About = append(t.About, "wall."+w.Name)
		t.Checks = append(t.Checks, model.Check{What: "wall " + w.Name + ", length", Figure: o.plain(w.Length)})
		if i+1 < len(walls) {
			t.Checks = append(t.Checks, model.Check{What: "corner of walls " + w.Name + " and " + walls[i+1].Name,
				Figure: strconv.FormatFloat(w.Corner.Degrees(), 'f', -1, 64) + " degrees"})
		}
		for _, r := range w.Read {
			t.Checks = append(t.Checks, model.Check{What: "face of wall " + w.Name + " at " + o.plain(r.Along) + " along, " + o.plain(r.Height) + " up",
				Figure: o.offLine(r.Off)})
		}
	}
	read := slices.ContainsFunc(walls, func(w model.Wall) bool { return len(w.Read) > 0 })
	if f := &o.Room.Floor; read && len(f.Readings) > 0 {
		t.Title += "; up is from the datum, which lies " + o.Model.Build.Near(f.Line) + " under the line that the floor is read from"
	}
	if len(walls) > 0 {
		o.do(t)
	}
}

// offLine tells how far a wall's face is off the straight plumb plane through its line.
func (o *order) offLine(off length.Length) string {
	switch {
	case off > 0:
		return o.plain(off) + " out"
	case off < 0:
		return o.plain(-off) + " back"
	}
	return "on the line"
}

func (o *order) fixtures() {
	t := model.Task{Key: "site.fixtures", Phase: measuring, Title: "Measure again what is in the walls: to the centres, from the left end and from the floor there",
		Tools: []string{"tape", "level"}, Cautions: []string{wiring}}
	for i := range o.Room.Walls {
		w, from := &o.Room.Walls[i], " up"
		if o.Text(o.Block("wall."+w.Name), "heights_from") == "line" {
			from = " below the line"
		}
		for _, f := range w.Fixtures() {
			t.About = append(t.About, f.Key())
			at := o.Lengths(o.Block(f.Key()), "at")
			figure := o.plain(at[0]) + " along, " + o.plain(at[1]) + from
			if f.StandsOut > 0 {
				figure += ", stands out " + o.plain(f.StandsOut)
			}
			t.Checks = append(t.Checks, model.Check{What: f.Words() + " in wall " + w.Name, Figure: figure})
		}
	}
	if len(t.About) > 0 {
		o.do(t)
	}
}

func (o *order) studs() {
	t := model.Task{Key: "site.studs", Phase: measuring, Title: "Find the studs, to their centres from the left end of the wall",
		Tools: []string{"stud finder", "fine nail, where a box will cover its hole"}, Cautions: []string{drilling}}
	for i := range o.Room.Walls {
		w := &o.Room.Walls[i]
		along := slices.ContainsFunc(o.Runs, func(r model.Run) bool { return r.Along && r.Wall == w.Name })
		if !along || w.Backing != "studs" {
			continue
		}
		t.About = append(t.About, "wall."+w.Name)
		figure := "none are given: mark what is found"
		if len(w.Studs) > 0 {
			figure = o.list(w.Studs)
		}
		t.Checks = append(t.Checks, model.Check{What: "studs of wall " + w.Name, Figure: figure})
	}
	if len(t.About) > 0 {
		o.do(t)
	}
}

func (o *order) floor() {
	t := model.Task{Key: "site.floor", Phase: measuring, Title: "Read the floor from one level line, under every corner of what will stand on it",
		Tools: []string{"laser level, or water level", "tape"}}
	for i := range o.Runs {
		r := &o.Runs[i]
		t.About = append(t.About, "run."+r.Name)
		t.Checks = append(t.Checks, model.Check{What: "floor under run " + r.Name + ", front and rear, every 4 ft (1.2 m)",
			Figure: o.plain(r.Length) + " by " + o.plain(r.Depth)})
	}
	for _, room := range o.Source.Top("room") {
		for _, floor := range room.Inner("floor") {
			for _, reading := range floor.Inner("reading") {
				if at := o.Lengths(reading, "point"); len(at) == 3 {
					t.Checks = append(t.Checks, model.Check{What: "reading at " + o.plain(at[0]) + ", " + o.plain(at[1]), Figure: o.plain(at[2]) + " below the line"})
				}
			}
		}
	}
	if len(t.About) > 0 {
		o.do(t)
	}
}

// makersSheets holds against the makers' papers what was copied from them.
func (o *order) makersSheets() {
	t := model.Task{Key: "site.makers", Phase: measuring, Title: "Hold the makers' sheets of appliances and sinks against the description"}
	for _, box := range o.Boxes(model.Bay) {
		a := box.Appliance
		t.About = append(t.About, box.Key())
		t.Checks = append(t.Checks, model.Check{What: "appliance " + box.Name + ", width, height, depth with door and handle",
			Figure: o.plain(a.U.Size()) + ", " + o.plain(a.Z.Size()) + ", " + o.plain(a.V.Size())})
	}
	for i := range o.Slabs {
		for _, c := range o.Slabs[i].Cuts {
			t.About = append(t.About, c.Kind+"."+c.Name)
			size := o.plain(c.Box.U.Size()) + " by " + o.plain(c.Box.V.Size())
			if c.Kind == "tap" {
				size = o.plain(2*c.Radius) + " across"
				if o.Model.Build.Metric(2*c.Radius, length.Millimetre) {
					size = length.Show(2*c.Radius, length.Millimetres, length.Millimetre) + " across"
				}
			}
			t.Checks = append(t.Checks, model.Check{What: c.Kind + " " + c.Name + ", cut-out", Figure: size})
		}
	}
	if len(t.About) > 0 {
		o.do(t)
	}
}

func (o *order) wayIn() {
	w := o.Carry
	t := model.Task{Key: "site.way", Phase: measuring, Title: "Measure the way in", Tools: []string{"tape", "strip of card as long as the longest piece"}}
	check := func(what string, long, wide length.Length) {
		if wide > 0 {
			t.Checks = append(t.Checks, model.Check{What: what, Figure: fmt.Sprintf("%s by %s", o.plain(long), o.plain(wide))})
		}
	}
	check("car, the largest flat piece", w.CarLength, w.CarWidth)
	if w.Doorway > 0 {
		t.Checks = append(t.Checks, model.Check{What: "doorway, its height", Figure: o.plain(w.Doorway)})
	}
	check("stair, the largest flat piece that goes round it", w.StairLength, w.StairWidth)
	if len(t.Checks) > 0 {
		o.do(t)
	}
}
