# A coffee bar in a converted boat shed. Inches. The numbers are made up.
build "boat shed coffee bar" {
  unit     = "in"
  marks    = "1/32in"
  revision = "A"
}

given {
  counter_top = 36
  bar_top     = 42
}

room {
  wall "north" { # as one stands facing it: along is from its left end
    length  = "11ft 4 1/8in"
    corner  = 90.4 # to the next wall, as measured
    backing = "studs"
    studs   = { first = 9.5, spacing = 16 }

    extenders    = true # rings bring its boxes out to the faces of the cabinets' backs
    ground_fault = true # the room has a sink, and drinks are made here
    outlet "kettle" { at = [14.5, 17] }
    outlet "cooler" { at = [62.5, 17] } # in the box beside the bay: behind the cooler no plug fits
    outlet "grinder" { at = [83.375, 19.5] }
  }

  wall "east" {
    length  = "10ft 2in"
    backing = "planks"
    stub "drain" {
      at         = [78.5, 14.25]
      diameter   = 1.9 # 1 1/2 in pipe
      stands_out = 3.5
    }

    stub "cold" {
      at         = [71, 20]
      diameter   = 0.625
      stands_out = 2.5
    }
  }

  floor { # below the laser's line: it falls to the east, and has a hump where one walks
    reading { point = [0, 0, 48] }
    reading { point = [68, 0, "48 3/16in"] }
    reading { point = [136, 0, "48 7/16in"] }
    reading { point = [60, 45, "47 15/16in"] }
    reading { point = [0, 96, "48 1/16in"] }
    reading { point = [68, 96, "48 1/4in"] }
    reading { point = [136, 96, "48 7/16in"] }
  }
}

carcass "base" {
  height   = given.counter_top - counter.back.thickness
  depth    = 23.25 # over the back, without a door
  board    = sheet.birch
  back     = { board = sheet.thin, fixed = "applied" }
  toe_kick = { height = 4, setback = 3 }
  screws   = screw.box
  banding  = banding.birch
  shelf    = { setback = "1/4in" }
  pins     = { depth = "5/16in", fitting = fitting.pin }
  door     = { board = sheet.birch, banding = banding.birch }
  hinge    = { fitting = fitting.hinge }
  handle   = { fitting = fitting.handle }
  drawer   = { board = sheet.half, bottom = sheet.thin, fitting = fitting.slides }
}

run "back" {
  along        = wall.north
  carcass      = carcass.base
  joint_screws = screw.joint
  wall_screws  = screw.wall
  seen_screws  = screw.seen # in cups, which has no doors

  cabinet "kettle" {
    width   = 30
    doors   = 2
    shelves = 1
  }

  bay "cooler" {
    appliance = { width = 23.5, height = 32.75, depth = 22.5 }
    gap       = "3/8in"
    top_gap   = "1/4in"
    back_gap  = "3/4in"
    blocks    = stick.two_by_four
  }

  cabinet "cups" {
    width    = 42
    dividers = [21]
    shelves  = 2
  }

  cabinet "beans" {
    width   = rest
    drawers = [6, rest, rest]
  }

  filler "corner" { width = 1.5 }
}

run "front" {
  out_from     = wall.east # its left end touches it, the far end is free
  at           = 66        # where the fronts meet that wall
  carcass      = carcass.base
  joint_screws = screw.joint
  seen_screws  = screw.seen # in mugs

  filler "wall" { width = 1.5 } # so that the door beside the wall opens with its handle

  cabinet "sink" {
    width       = 36
    false_front = 6
    doors       = 2
  }

  cabinet "bins" {
    width   = 18
    doors   = 1
    drawers = [6]
  }

  cabinet "mugs" {
    width         = 27
    fixed_shelves = [18]
  }

  cabinet "kegs" {
    width = 27
    doors = 2
  }

  anchor "end" {
    under  = cabinet.kegs
    block  = stick.two_by_four
    fixed  = "adhesive"
    screws = screw.framing
  }
}

knee_wall "bar" {
  behind       = run.front
  top          = given.bar_top - bar_top.oak.thickness
  lumber       = stick.two_by_four
  screws       = screw.framing
  floor_screws = screw.floor
  run_screws   = screw.wall
  router       = router.bench
  ground_fault = true # its outlets are near the sink
  supports {
    count       = 4
    end         = 4.5 # beside the end studs: who leans on a corner bears on the last plate
    plate       = flat_bar.arm
    reach       = 8 # from the bare framing
    screws      = screw.plate
    screws_each = 10
    top_screws  = screw.plate
  }

  outlet "blender" {
    face      = "work"
    from_left = 27
    lying     = true # 3 in between counter and plate: no room for a box that stands
  }

  outlet "scale" {
    face    = "work"
    mirrors = outlet.blender
    lying   = true
  }

  skin "work" {
    face  = "work"
    board = sheet.thin
  }

  skin "room" {
    face    = "room"
    board   = sheet.thin
    battens = { board = sheet.thin, width = 1.5, about = 18 }
    cap     = { board = sheet.thin, width = 2.5 }
  }

  skin "end" {
    face  = "right"
    board = sheet.thin
  }

  corner "end" {
    end   = "right"
    board = sheet.thin
    width = 1.5
  }
}

counter "back" {
  over     = run.back
  slab     = slab.maple
  overhang = { front = 1 }
}

counter "work" {
  over     = run.front
  slab     = slab.maple
  overhang = { front = 1, right = 1 }
  sink "prep" {
    in  = cabinet.sink
    cut = { width = 14, depth = 14, radius = 1 }
  }

  tap "mixer" { behind = sink.prep }
}

bar_top "oak" {
  over     = knee_wall.bar
  slab     = slab.oak
  overhang = { room = 10, work = 1, right = 2 }
}

drain "waste" {
  from     = sink.prep
  to       = stub.drain
  diameter = 1.9 # 1 1/2 in pipe
  vent     = "wall"
}

cable "scale" { # on from the blender's box, through the studs
  from = outlet.blender
  to   = outlet.scale
}

cord "cooler" { # through the side of cups to the outlet in there
  of     = bay.cooler
  to     = outlet.cooler
  length = "6ft"
}
