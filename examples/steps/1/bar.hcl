# Step 1: one box along a wall.
build "boat shed bar" { unit = "in" } # a bare number below means inches

room {
  wall "lake" {
    length = "11ft 2in"
  }
}

carcass "base" { # how boxes are made
  height = 34.5  # from the floor to the top edge
  depth  = 22.75 # over the back, without a door
  board  = sheet.birch
  back   = { board = sheet.thin }
}

run "back" { # boxes in a row, left to right as one faces them
  along   = wall.lake
  carcass = carcass.base

  cabinet "mugs" { width = 30 }
}
