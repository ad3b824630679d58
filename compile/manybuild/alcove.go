package manybuild

import (
	"fmt"
	"strings"
)

// Sizes in inches. An alcove is open to the near side. Along its left wall, its right wall and
// out from its far wall stand runs, that to the left ends in the corner, the others begin there.
const (
	high, deep = 34.5, 23.25 // of a carcass
	out        = 72          // along the far wall to the fronts of the run that stands out from it
	wide       = 204         // of an alcove
	pier       = 8           // between two alcoves
	spare      = 60          // of side walls beyond the runs
)

// alcove writes one with so many cabinets: three of eight in the bar, the others along walls.
func (w *writer) alcove(i, n int) {
	var bar []cabinet
	for len(bar) < n*3/8 {
		if len(bar) == 0 {
			bar = append(bar, w.sinkBox())
		}
		bar = append(bar, w.cabinet())
	}
	var sides [2][]cabinet
	for k := range n - len(bar) {
		sides[k%2] = append(sides[k%2], w.cabinet())
	}
	long := max(w.length(bar), w.length(sides[0]), w.length(sides[1])) + w.size(spare)
	w.wall(fmt.Sprint("left", i), long, 90, w.outlets(sides[0], long-w.length(sides[0])))
	w.wall(fmt.Sprint("far", i), w.size(wide), 90, w.stubs(i, len(bar) > 0))
	w.wall(fmt.Sprint("right", i), long, 270, w.outlets(sides[1], w.size(filler)))
	w.wall(fmt.Sprint("pier", i), w.size(pier), 270, "")
	w.floor(i, long)
	w.run(fmt.Sprint("left", i), "left", sides[0])
	w.run(fmt.Sprint("right", i), "right", sides[1])
	if len(bar) > 0 {
		w.bar(i, bar)
	}
}

const filler = 1.5 // between a run and the wall in its corner

func (w *writer) length(boxes []cabinet) number {
	sum := w.size(filler)
	for _, b := range boxes {
		sum += b.width
	}
	return sum
}

// wall adds one to the room, with the interior angle to the next.
func (w *writer) wall(name string, length number, corner int, within string) {
	fmt.Fprintf(&w.walls, "  wall %q {\n    length = %v\n    corner = %d\n    backing = \"planks\"\n    ground_fault = true\n    extenders = true\n%s  }\n", name, length, corner, within)
}

// outlets are those behind boxes whose doors open to them, where the first box begins at left.
func (w *writer) outlets(boxes []cabinet, left number) string {
	var text strings.Builder
	for _, b := range boxes {
		if b.plug {
			fmt.Fprintf(&text, "    outlet %q { at = [%v, %v] }\n", b.name, left+b.width/2+w.between(-4, 4), w.between(16, 19))
		}
		left += b.width
	}
	return text.String()
}

// stubs are the pipes in a far wall behind a sink.
func (w *writer) stubs(i int, sink bool) string {
	if !sink {
		return ""
	}
	return fmt.Sprintf("    stub \"drain%d\" {\n      at = [%v, %v]\n      diameter = %v\n      stands_out = %v\n    }\n",
		i, w.size(out+12.5), w.size(14.25), w.size(1.9), w.size(3.5))
}

// floor adds what is read below a line at the four corners of an alcove.
func (w *writer) floor(i int, long number) {
	y := number(i) * w.size(wide+pier)
	for _, at := range [][2]number{{0, y}, {long, y}, {long, y + w.size(wide)}, {0, y + w.size(wide)}} {
		fmt.Fprintf(&w.hall, "    reading { point = [%v, %v, %v] }\n", at[0], at[1], w.size(48+float64(w.chance.IntN(9))/32))
	}
}

// room writes the walls of all alcoves, and the floor.
func (w *writer) room() {
	w.printf("room {\n%s  floor {\n%s  }\n}\n", &w.walls, &w.hall)
}

// run writes one along a wall of its name, with its counter.
func (w *writer) run(name, side string, boxes []cabinet) {
	if len(boxes) == 0 {
		return
	}
	w.printf("run %q {\n  along = wall.%s\n  carcass = carcass.base\n  joint_screws = screw.joint\n  wall_screws = screw.wall\n  seen_screws = screw.seen\n", name, name)
	gap := fmt.Sprintf("  filler \"%s\" { width = %v }\n", name, w.size(filler))
	if side == "left" {
		w.printf("  from = \"right\"\n")
	} else {
		w.printf("%s", gap)
	}
	for _, b := range boxes {
		w.box(b)
	}
	free := "right"
	if side == "left" {
		w.printf("%s", gap)
		free = "left"
	}
	w.printf("}\ncounter %q {\n  over = run.%s\n  slab = slab.maple\n  overhang = { front = %v, %s = %v }\n%s}\n", name, name, w.size(1), free, w.size(1), w.seams(boxes))
}

// seams are those of a counter over boxes, of pieces that two people carry.
func (w *writer) seams(boxes []cabinet) string {
	var at []string
	var long number
	for k, b := range boxes {
		if long += b.width; k > 0 && long > w.size(110) {
			at = append(at, fmt.Sprintf("cabinet.%s.right", boxes[k-1].name))
			long = b.width
		}
	}
	if len(at) == 0 {
		return ""
	}
	return fmt.Sprintf("  seams = [%s]\n", strings.Join(at, ", "))
}

// bar writes a run that stands out from the far wall, with a sink in its first cabinet, its knee
// wall and its bar top.
func (w *writer) bar(i int, boxes []cabinet) {
	w.printf("run \"bar%d\" {\n  out_from = wall.far%d\n  at = %v\n  carcass = carcass.base\n  joint_screws = screw.joint\n  seen_screws = screw.seen\n  filler \"bar%d\" { width = %v }\n",
		i, i, w.size(out), i, w.size(filler))
	for _, b := range boxes {
		w.box(b)
	}
	last := boxes[len(boxes)-1].name
	w.printf("  anchor \"bar%d\" {\n    under = cabinet.%s\n    block = stick.two_by_four\n    fixed = \"adhesive\"\n    screws = screw.framing\n  }\n}\n", i, last)
	count := 2 + int(w.length(boxes)/w.size(30))
	w.printf(`knee_wall "bar%[1]d" {
  behind       = run.bar%[1]d
  lumber       = stick.two_by_four
  screws       = screw.framing
  floor_screws = screw.floor
  run_screws   = screw.wall
  router       = router.bench
  ground_fault = true
  supports {
    count       = %[2]d
    end         = %[3]v
    plate       = flat_bar.arm
    reach       = %[4]v
    screws      = screw.plate
    screws_each = 10
    top_screws  = screw.plate
  }
  skin "work%[1]d" {
    face  = "work"
    board = sheet.thin
  }
  skin "room%[1]d" {
    face    = "room"
    board   = sheet.thin
    battens = { board = sheet.thin, width = %[5]v, about = %[6]v, mirrored = false }
    cap     = { board = sheet.thin, width = %[7]v }
  }
  skin "end%[1]d" {
    face  = "right"
    board = sheet.thin
  }
}
counter "bar%[1]d" {
  over     = run.bar%[1]d
  slab     = slab.maple
  overhang = { front = %[8]v, right = %[8]v }
%[15]s  sink "s%[1]d" {
    in  = cabinet.%[9]s
    cut = { width = %[10]v, depth = %[10]v, radius = %[8]v }
  }
}
bar_top "bar%[1]d" {
  over     = knee_wall.bar%[1]d
  slab     = slab.oak
  height   = %[11]v
  overhang = { room = %[12]v, work = %[8]v, right = %[13]v }
}
drain "d%[1]d" {
  from     = sink.s%[1]d
  to       = stub.drain%[1]d
  diameter = %[14]v
  vent     = "wall"
}
`, i, count, w.size(4.5), w.size(6.5), w.size(1.5), w.size(18), w.size(2.5), w.size(1), boxes[0].name, w.size(14), w.size(42), w.size(8), w.size(2), w.size(1.9), w.seams(boxes))
}
