# Step 6: doors, drawers and shelves; a sink; the knee wall covered.
build "boat shed bar" { unit = "in" } # a bare number below means inches

# A number to play with, as in --set bar_top=44.
given { bar_top = 42 }

room { # walls follow one another to the right, as one turns round facing them
  wall "lake" {
    length = "11ft 2in"

    extenders    = true                 # a ring brings its box out to the face of the cabinet's back
    ground_fault = true                 # new: there is a sink now
    outlet "kettle" { at = [12.5, 17] } # its centre, along the wall and above the floor
  }

  # The wall on the right, and the pipe that stands out of it.
  wall "slip" {
    length = "9ft 8in"
    stub "drain" {
      at         = [75, 13.5]
      diameter   = 1.9
      stands_out = 3
    }
  }
}

carcass "base" { # how boxes are made
  height = 34.5  # from the floor to the top edge
  depth  = 22.75 # over the back, without a door
  board  = sheet.birch
  back   = { board = sheet.thin }
  door   = { board = sheet.birch } # new: what closes them
  drawer = { bottom = sheet.thin }
}

run "back" { # boxes in a row, left to right as one faces them
  along   = wall.lake
  carcass = carcass.base

  cabinet "mugs" { width = 30 }

  # An open place that is as wide as the appliance and a gap on each side.
  bay "cooler" {
    appliance = { width = 20.625, height = 32.75, depth = 21.5 }
    gap       = "3/8in"
    top_gap   = "1/4in"
    blocks    = stick.two_by_four # under it, to bring its top to the line
  }

  # What is left of the wall goes to these two, in equal shares.
  cabinet "plates" {
    width   = rest
    shelves = 2 # new: on pins; the holes for them are bored
  }

  cabinet "tins" { width = rest }
  filler "corner" { width = 1.5 } # a strip to be cut to the wall
}

# A run whose left end touches the side wall; its far end is free.
run "front" {
  out_from = wall.slip
  at       = 62 # where its fronts meet that wall
  carcass  = carcass.base

  joint_screws = screw.joint # from box to box: so the run is one

  # New: fronts, from the top down.
  cabinet "sink" {
    width       = 30
    false_front = 6
    doors       = 2
  }

  cabinet "bins" {
    width   = 24
    drawers = [6, rest]
  }

  # A block on the floor that keeps the free end where it is.
  anchor "end" {
    under        = cabinet.bins
    block        = stick.two_by_four
    screws       = screw.long # through the toe kick into it
    floor_screws = screw.long
  }
}

# The slabs on the boxes.
counter "back" {
  over     = run.back
  slab     = slab.ash
  overhang = { front = 1 }
}

counter "work" {
  over     = run.front
  slab     = slab.ash
  overhang = { front = 1, right = 1 }

  # New: a cut-out in the slab, over the middle of its cabinet.
  sink "prep" {
    in  = cabinet.sink
    cut = { width = 14, depth = 12 }
  }
}

# A framed wall behind the second run. Its height follows from the bar top.
knee_wall "bar" {
  behind       = run.front
  lumber       = stick.two_by_four
  spacing      = 15
  run_screws   = screw.long # from inside the boxes: they hold the wall
  floor_screws = screw.long
  router       = router.bench

  # Steel plates, let in flush, that carry what stands out over the room.
  ground_fault = true # its outlet is near the sink
  supports {
    count       = 3
    at          = [4.5, 25.5, 49.5] # between the studs, near the ends: a corner bears on the last one
    plate       = flat_bar.arm
    reach       = 8 # beyond the bare framing
    screws      = screw.plate
    screws_each = 10
    top_screws  = screw.plate
  }

  # New: an outlet between counter and bar top, and panels over the framing.
  outlet "blender" {
    face      = "work"
    from_left = 40
    lying     = true
  }

  skin "work" {
    face  = "work"
    board = sheet.thin
  }

  skin "room" {
    face    = "room"
    board   = sheet.thin
    battens = { board = sheet.thin, width = 2 }
  }

  skin "end" {
    face  = "right"
    board = sheet.thin
  }
}

# The raised top.
bar_top "oak" {
  over     = knee_wall.bar
  slab     = slab.oak
  height   = given.bar_top
  overhang = { room = 10, work = 1, right = 1 }
}
