# A stand for two at a counter, one box long: small enough for figures by hand. Inches.
build "stand" { unit = "in" }

room {
  wall "north" { length = 100 }
}

sheet "ply" {
  size      = [96, 48]
  thickness = 0.75
}

sheet "thin" {
  size      = [96, 48]
  thickness = 0.25
}

stick "stud" {
  thickness = 1.5
  width     = 3.5
  lengths   = [96]
}

flat_bar "arm" {
  thickness = 0.5
  width     = 2.5
  lengths   = [72]
}

slab "oak" { thickness = 1.5 }

screw "any" {
  diameter = 0.164
  length   = 2
  per_box  = 100
}

router "bench" {
  bit  = 0.25
  feed = 150
}

carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.thin }
}

run "work" {
  out_from = wall.north
  at       = 30
  carcass  = carcass.base
  cabinet "cups" { width = 30 }

  anchor "end" {
    under  = cabinet.cups
    block  = stick.stud
    fixed  = "adhesive"
    screws = screw.any
  }
}

knee_wall "bar" {
  behind = run.work
  lumber = stick.stud
  router = router.bench
  supports {
    count = 2
    plate = flat_bar.arm
    reach = 8
    tail  = 3
  }
}

bar_top "oak" {
  over     = knee_wall.bar
  slab     = slab.oak
  height   = 42
  overhang = { room = 12 }
}
