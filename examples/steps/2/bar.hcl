# Step 2: an outlet behind the box.
build "boat shed bar" { unit = "in" } # a bare number below means inches

room {
  wall "lake" {
    length = "11ft 2in"

    extenders = true                    # a ring brings its box out to the face of the cabinet's back
    outlet "kettle" { at = [12.5, 17] } # new: its centre, along the wall and above the floor
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
