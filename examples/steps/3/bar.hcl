# Step 3: a bay for the cooler, and boxes that share the rest of the wall.
build "boat shed bar" { unit = "in" } # a bare number below means inches

room {
  wall "lake" {
    length = "11ft 2in"

    extenders = true                    # a ring brings its box out to the face of the cabinet's back
    outlet "kettle" { at = [12.5, 17] } # its centre, along the wall and above the floor
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

  # New: an open place that is as wide as the appliance and a gap on each side.
  bay "cooler" {
    appliance = { width = 20.625, height = 32.75, depth = 21.5 }
    gap       = "3/8in"
    top_gap   = "1/4in"
    blocks    = stick.two_by_four # under it, to bring its top to the line
  }

  # New: what is left of the wall goes to these two, in equal shares.
  cabinet "plates" { width = rest }
  cabinet "tins" { width = rest }
  filler "corner" { width = 1.5 } # a strip to be cut to the wall
}

# New: the slab on the boxes.
counter "back" {
  over     = run.back
  slab     = slab.ash
  overhang = { front = 1 }
}
