# A sink in the corner of a wash house: both pipes come out of the wall behind it.
build "wash house" { unit = "in" }

sheet "ply" {
  size      = [96, 48]
  thickness = 0.75
}

sheet "thin" {
  size      = [96, 48]
  thickness = 0.25
}

carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.thin }
}

room {
  wall "north" { length = 130 }
  wall "east" {
    length = 100
    stub "drain" {
      at         = [12, 14]
      diameter   = 2
      stands_out = 3
    }
    stub "cold" {
      at         = [24, 20]
      diameter   = 1
      stands_out = 2.5
    }
  }
  wall "south" { length = 130 }
}

run "wash" {
  along   = wall.east
  carcass = carcass.base
  cabinet "sink" { width = 36 }
  cabinet "dry" { width = 24 }
}
