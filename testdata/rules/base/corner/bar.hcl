# A closed room, 4.2 by 4 m, for what stands in the way of what: a run along the
# north wall, one along the east wall, and one that stands out from the west wall
# and faces the first. Round numbers, square corners, doors 18 thick.
build "corner" { unit = "mm" }

room {
  wall "north" {
    length  = 4200
    backing = "masonry"
  }

  wall "east" {
    length  = 4000
    backing = "masonry"
  }

  wall "south" {
    length  = 4200
    backing = "masonry"
  }

  wall "west" {
    length  = 4000
    backing = "masonry"
  }
}

sheet "ply" {
  size      = [3050, 1525]
  grain     = "none"
  thickness = 18
}

sheet "thin" {
  size      = [3050, 1525]
  grain     = "none"
  thickness = 6
}

slab "top" { thickness = 40 }

carcass "base" {
  height = 860
  depth  = 560
  board  = sheet.ply
  back   = { board = sheet.thin }
  door   = { board = sheet.ply }
  handle = { stands_out = 35 }
}

run "back" {
  along   = wall.north
  carcass = carcass.base
  filler "left" { width = 40 }

  cabinet "pans" {
    width = 800
    doors = 2
  }

  bay "cooler" {
    appliance = { width = 500, height = 858, depth = 530 }
    gap       = 5
    top_gap   = 2
  }

  cabinet "plates" {
    width   = 800
    drawers = [rest, rest]
  }

  cabinet "cups" {
    width  = 600
    doors  = 1
    hinged = "right"
  }
}

run "side" {
  along   = wall.east
  carcass = carcass.base
  start   = 800

  cabinet "jugs" {
    width   = 600
    drawers = [rest, rest]
  }

  cabinet "tins" {
    width = 900
    doors = 2
  }
}

run "bar" {
  out_from = wall.west
  faces    = "right"
  at       = 1000
  carcass  = carcass.base

  cabinet "kegs" {
    width = 600
    doors = 1
  }

  cabinet "bins" {
    width   = 900
    drawers = [rest, rest]
  }

  filler "wall" { width = 40 }
}

counter "back" {
  over     = run.back
  slab     = slab.top
  overhang = { front = 20 }
}

counter "side" {
  over     = run.side
  slab     = slab.top
  overhang = { front = 20 }
}

counter "bar" {
  over     = run.bar
  slab     = slab.top
  overhang = { front = 20 }
}
