# A wet bar along a wall. Its sink drains into the wall behind it.
build "wet bar" { unit = "in" }

sheet "ply" {
  size      = [96, 48]
  thickness = 0.75
}

sheet "thin" {
  size      = [96, 48]
  thickness = 0.25
}

slab "oak" {
  thickness = 1.5
}

room {
  wall "north" {
    length = 96
    stub "waste" {
      at         = [78, 18]
      diameter   = 1.9
      stands_out = 3
    }

    stub "cold" {
      at         = [84, 20]
      diameter   = 0.625
      carries    = "water"
      stands_out = 2.5
    }
  }
}

carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.thin }
}

run "back" {
  along   = wall.north
  carcass = carcass.base
  cabinet "jars" { width = 30 }
  cabinet "cups" { width = 30 }
  cabinet "basin" { width = 36 }
}

counter "work" {
  over     = run.back
  slab     = slab.oak
  overhang = { front = 1 }
  sink "basin" {
    in         = cabinet.basin
    cut        = { width = 15, depth = 14 }
    from_front = 5.5
  }

  tap "main" {
    behind   = sink.basin
    diameter = 1.5
  }
}

drain "waste" {
  from     = sink.basin
  to       = stub.waste
  diameter = 1.9
  slope    = 0.03125
}
