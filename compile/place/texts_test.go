package place

import "strings"

// shop is what the rooms below are built of: boxes 24 in deep and 34 1/2 in high, of boards 3/4 in thick.
const shop = `
build "room" { unit = "in" }
sheet "ply" {
  size      = [96, 48]
  thickness = 0.75
}
sheet "thin" {
  size      = [96, 48]
  thickness = 0.25
}
slab "maple" { thickness = 1.5 }
carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.thin }
}
`

// fourWalls are those of a room with a doorway in the south wall, 60 in to 92 in along it.
const fourWalls = `
  wall "north" { length = 130 }
  wall "east" { length = 100 }
  wall "south" { length = 130 }
  wall "west" { length = 100 }
  doorway {
    wall    = wall.south
    from    = 60
    to      = 92
    height  = 36
    landing = 12
  }
`

// longRun is a run along all of the east wall with a narrow appliance at its end, 22 1/2 in deep and 1/2 in off its
// neighbour, and a counter over it that is as long as the wall and 25 in wide.
const longRun = `
run "wash" {
  along   = wall.east
  carcass = carcass.base
  cabinet "a" { width = 46 }
  cabinet "b" { width = 47 }
  bay "cool" {
    appliance = { width = 6, height = 34, depth = 22.5 }
    gap       = 0.5
  }
}
counter "top" {
  over     = run.wash
  slab     = slab.maple
  overhang = { front = 1 }
}
`

// passage is a room with a passage that leads to it, and a wide cabinet in it.
func passage(behind, inside string) string {
	return strings.NewReplacer("BEHIND", behind, "INSIDE", inside).Replace(`
room {
  ceiling = 60
  wall "lip" { length = 36 }
  wall "north" { length = 60 }
  wall "east" {
    length = 100
    BEHIND
  }
  wall "south" { length = 60 }
  wall "other_lip" {
    length = 36
    corner = 270
  }
  wall "passage" { length = 80 }
  wall "west" { length = 28 }
  wall "opposite" {
    length = 80
    corner = 270
  }
  doorway {
    wall   = wall.west
    from   = 1
    to     = 27
    height = 50
  }
}
run "wash" {
  along   = wall.east
  carcass = carcass.base
  start   = 2
  cabinet "wide" {
    width    = 44
    INSIDE
  }
  cabinet "b" { width = 24 }
}`)
}

// corner is a bay that ends in a corner, and a cabinet along the other wall before it.
func corner(stands string) string {
	return strings.Replace(`
room {
  ceiling = 60
  wall "north" { length = 60 }
  wall "east" { length = 60 }
  wall "south" { length = 130 }
}
run "wash" {
  along   = wall.east
  carcass = carcass.base
  start   = 24
  cabinet "dry" {
    width  = 36
    STANDS
  }
}
run "third" {
  along   = wall.north
  carcass = carcass.base
  start   = 12
  cabinet "beside" {
    width  = 23
    stands = true
  }
  bay "cool" {
    appliance = { width = 24.5, height = 34, depth = 22.5 }
    gap       = 0.25
  }
}`, "STANDS", stands, 1)
}
