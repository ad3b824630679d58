# A servery in a village hall. Millimetres. The numbers are made up.
build "village hall servery" {
  unit     = "mm"
  marks    = 0.5
  revision = "1"
}

given {
  counter_top = 900
  bar_top     = 1110
}

# Outlets and drain are for somebody licensed to judge.
limits {
  wiring   = "none"
  plumbing = "none"
}

# Four walls, masonry all round.
room {
  wall "hatch" { # as one stands facing it: along is from its left end
    length  = 3622
    corner  = 89.6 # to the next wall, as measured
    backing = "masonry"

    # Bowed, and leaning back: how far its face stands out of a string and a plumb line.
    reading {
      at  = [900, 100]
      off = 0
    }

    reading {
      at  = [3600, 100]
      off = 0
    }

    reading {
      at  = [2250, 450]
      off = 5
    }

    reading {
      at  = [900, 900]
      off = -4
    }

    reading {
      at  = [3600, 900]
      off = -3
    }

    outlet "urn" { at = [1172, 480] }
    outlet "fridge" { at = [2180, 480] } # in the box beside the bay: behind the fridge no plug fits

    outlet "hotplate" {
      at    = [2600, 480]
      box   = { width = 135, height = 76, depth = 35 }
      cover = { width = 146, height = 86 }
    }
  }

  wall "yard" {
    length  = 4180
    corner  = 90.4
    backing = "masonry"

    # Leaning in, most where the back run ends.
    reading {
      at  = [600, 100]
      off = 0
    }

    reading {
      at  = [600, 900]
      off = 5
    }

    reading {
      at  = [2400, 900]
      off = 3
    }

    reading {
      at  = [2500, 100]
      off = 1
    }

    outlet "till" { at = [290, 610] } # beside the end of the back run

    stub "waste" {
      at         = [2060, 395]
      diameter   = 43
      stands_out = 90
    }

    stub "cold" {
      at         = [1905, 520]
      diameter   = 15
      stands_out = 70
    }
  }

  wall "hall" {
    length  = 3622
    corner  = 89.6
    backing = "masonry"
  }

  wall "store" {
    length  = 4180
    corner  = 90.4
    backing = "masonry"
  }

  # Below the laser's line: 9 mm out in all, highest where the hatch and the bar meet.
  floor {
    reading { point = [0, 0, 1004] }
    reading { point = [3600, 0, 1009] }
    reading { point = [1800, 1000, 1000] }
    reading { point = [0, 2600, 1005] }
    reading { point = [3600, 2600, 1006] }
  }
}

carcass "base" {
  height   = given.counter_top - counter.back.thickness
  depth    = 580
  board    = sheet.birch
  back     = { board = sheet.thin, fixed = "captured", inset = 18 }
  toe_kick = { height = 150, setback = 50 }
  screws   = screw.box
}

# Against the wall: on legs, closed with inset doors.
carcass "legs" {
  height    = carcass.base.height
  depth     = carcass.base.depth
  board     = sheet.birch
  back      = { board = sheet.thin, fixed = "rabbeted" }
  top       = "full"
  stands_on = "legs"
  toe_kick  = { height = 150, setback = 50 }
  screws    = screw.box
  banding   = banding.beech
  pins      = { depth = 8, fitting = fitting.pin }
  door      = { board = sheet.birch, fit = "inset", banding = banding.beech }
  hinge     = { fitting = fitting.hinge }
  handle    = { pitch = 0, fitting = fitting.knob }
  legs      = { fitting = fitting.leg }
}

run "back" {
  along        = wall.hatch
  from         = "right"
  carcass      = carcass.legs
  joint_screws = screw.joint
  wall_screws  = screw.wall
  length       = 2740

  cabinet "urn" { width = 600 }

  bay "fridge" {
    appliance = { width = 595, height = 818, depth = 575 }
    gap       = 5
    top_gap   = 4
    back_gap  = 25
    blocks    = stick.batten
  }

  cabinet "plates" {
    width    = 800
    dividers = [400]
    doors    = 2
    shelves  = 2
  }

  cabinet "till" {
    width   = rest
    doors   = 1
    hinged  = "right"
    shelves = 1
  }

  filler "corner" { width = 20 }

  end_panel "gable" {
    end   = "left"
    board = sheet.birch
  }
}

run "front" {
  out_from     = wall.yard
  at           = 1800
  carcass      = carcass.base
  joint_screws = screw.joint

  cabinet "sink" { width = 800 }
  cabinet "tea" { width = 600 }
  cabinet "trays" { width = 600 }

  anchor "end" {
    under  = cabinet.trays
    block  = stick.batten
    fixed  = "adhesive"
    screws = screw.box
  }
}

knee_wall "bar" {
  behind       = run.front
  lumber       = stick.cls
  top_plates   = 2 # for the screws of the supports
  screws       = screw.framing
  floor_screws = screw.framing
  run_screws   = screw.wall
  router       = router.bench
  supports {
    count       = 5
    end         = 100 # who leans on a corner bears on the last plate
    plate       = flat_bar.arm
    reach       = 230
    screws      = screw.tail
    screws_each = 8
    top_screws  = screw.plate
  }

  outlet "warmer" {
    face      = "work"
    from_left = 1300
  }

  skin "room" {
    face    = "room"
    board   = sheet.thin
    grain   = "up"
    battens = { board = sheet.thin, width = 45, about = 350 }
  }

  skin "work" {
    face  = "work"
    board = sheet.thin
  }

  skin "end" {
    face     = "right"
    board    = sheet.thin
    over_run = true
  }
}

counter "back" {
  over     = run.back
  slab     = slab.beech
  overhang = { front = 20, left = 28 } # 10 over the end panel
}

counter "work" {
  over     = run.front
  slab     = slab.beech
  overhang = { front = 20, right = 20 }
  sink "bowl" {
    in  = cabinet.sink
    cut = { width = 400, depth = 340, radius = 60 }
  }

  tap "mixer" { behind = sink.bowl }
}

bar_top "ash" {
  over     = knee_wall.bar
  slab     = slab.ash
  height   = given.bar_top
  overhang = { room = 280, work = 20, right = 40 }
}

drain "waste" {
  from     = sink.bowl
  to       = stub.waste
  diameter = 43
  size     = 40
  trap     = { seal = 75 }
}

cord "fridge" { # through the side of plates to the outlet in there
  of     = bay.fridge
  to     = outlet.fridge
  length = 1800
}
