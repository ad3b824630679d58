# A bar that says all that the language has. The numbers are made up.
build "whole" {
  unit     = "mm"
  marks    = 0.5
  revision = "A"
  paper    = "A3"
}

given "bar" {
  value = 1130
  from  = 1000
  to    = 1200
}

sheet "ply" {
  size      = [2440, 1220]
  thickness = 18
  density   = 680
  stiffness = 8
  batch     = "June"
  price     = 60

  also {
    size  = [3050, 1525]
    price = 95
  }

  offcut {
    size  = [800, 500]
    count = 2
  }
}

sheet "thin" {
  size      = [2440, 1220]
  thickness = 6
  grain     = "none"
}

stick "cls" {
  thickness = 38
  width     = 89
  lengths   = [2400, 4800]
  ends      = 10
}

flat_bar "arm" {
  thickness = 10
  width     = 60
  lengths   = [3000]
  density   = 7850
  yield     = 235
  stiffness = 210
}

slab "oak" {
  thickness = 40
  solid     = true
  swell     = 0.0037
  material  = "wood"
  density   = 720
}

screw "all" {
  diameter = 4
  length   = 40
  per_box  = 200
}

fitting "any" { per_pack = 2 }

banding "beech" {
  thickness = 1
  roll      = 50000
  spare     = 20
}

finish "oil" {
  coverage = 12
  coats    = 3
  can      = 2.5
  price    = 40
  label    = "oil"
}

router "bench" {
  bit  = 12
  feed = 2000
  fit  = 0.3
  low  = 0.5
  tool = 2
  wood         = "softwood"
  machine      = "light"
  entry        = "helix"
  passes       = "parallel"
  floor        = "0.5mm"
  relief       = "diagonal"
  datum        = "end"
  travel       = { x = "800mm", y = "600mm", z = "100mm" }
  rapid        = "5m"
  acceleration = 400
  arcs         = "chords"
  chord        = "0.02mm"
  line_numbers = true
  comments     = "semicolon"
  start        = "G64"
  end          = "M9"
  change       = true
  spin_up      = 5
  guide        = { bush = "5/8in", bit = "1/2in", board = sheet.ply }
  also         = { openings = true, outlines = true, cups = true, pins = true, grooves = true, under = 1, room = 12 }
  tabs         = { width = 8, height = 2, spacing = 150, least = 3 }
}

saw {
  kerf       = 3
  trim       = 5
  stages     = 4
  corner_bit = 10
}

table "shop" {
  format      = "r2000"
  notes       = false
  unit_stated = false
  way         = "free"
  spacing     = 8
  margin      = 10
  unit     = "in"
  files    = "distinct"
  write    = { openings = true, recesses = true, bores = true, marks = false }
  depths   = true
  mirrored = true
  origin   = "middle"
  flatten  = "0.1mm"
  relief   = "long_side"
  bit      = "6mm"
  overrun  = "5mm"
  small    = "150mm"
  drawings = true
}

room {
  ceiling = 2400
  doorway {
    wall    = wall.short
    from    = 2600
    to      = 3500
    height  = 2000
    landing = 950
  }

  wall "long" {
    length    = 2950
    corner    = 89.5
    backing   = "studs"
    lining    = 12.5
    cavity    = 100
    extenders = false
    studs     = { first = 200, spacing = 400, last = 2800 }
    baseboard = { height = 80, thickness = 15, from = 2400, to = 2800 }
    outlet "a" {
      at        = [300, 380]
      clearance = 3
      cut       = "notch"
      open_to   = "bottom"
      corner    = 5
      wires     = { awg14 = 4, grounds = 2, devices = 1, fittings = 0, clamps = false }

      ground_fault = true
      extender     = true
    }

    switch "b" {
      extender   = true
      wires      = { awg12 = 2, grounds = 1 }
      at         = [900, 500]
      box        = { width = 70, height = 70, depth = 40 }
      cover      = { width = 90, height = 90 }
      clearance  = 1
      stands_out = 30
    }

    vent "air" {
      at         = [1500, 400]
      width      = 100
      height     = 100
      stands_out = 20
      cut        = "slot"
      open_to    = "bottom"
    }
  }

  wall "short" {
    ground_fault = false
    length       = 4000
    heights_from = "floor"

    reading {
      at  = [300, 100]
      off = -4
    }

    reading {
      at  = [500, 900]
      off = 3
    }

    stub "waste" {
      at         = [2000, 450]
      diameter   = 43
      stands_out = 700
      clearance  = 4
      cut        = "slot"
      open_to    = "rear"
    }
  }

  floor {
    laid    = 8
    read_to = 0.5
    reading { point = [100, 200, 48] }
    reading { point = [2900, 200, 51] }
    reading { point = [1500, 2000, 55] }
  }
}

carcass "closed" {
  height    = 860
  depth     = 580
  board     = sheet.ply
  back      = { board = sheet.thin, fixed = "rabbeted", groove = 7, play = 0.5 }
  stretcher = 90
  stands_on = "base"
  base      = { rear = 30, apart = 400 }
  toe_kick  = { height = 110, setback = 60 }
  screws    = screw.all
  banding   = banding.beech
  shelf     = { board = sheet.ply, setback = 25, play = 1 }
  pins      = { pitch = 32, diameter = 5, depth = 8, from_front = 60, from_back = 40, from_ends = 64, fitting = fitting.any }
  door      = { board = sheet.ply, fit = "inset", gap = 2, banding = banding.beech, grain = "along", match = "run" }
  hinge     = { cup = 35, depth = 13, from_edge = 4, from_end = 90, plate = 37, plate_pitch = 32, plate_bore = 5, plate_depth = 10, fitting = fitting.any }
  handle    = { pitch = 64, bore = 4.5, from_edge = 40, fitting = fitting.any }
  drawer    = { board = sheet.ply, bottom = sheet.thin, clearance = 13, lower = 50, up = 25, lengths = [300, 450], behind = 10, groove = 8, groove_up = 15, play = 0.3, fitting = fitting.any }
}

carcass "open" {
  height    = 860
  depth     = 580
  board     = sheet.ply
  back      = { board = sheet.thin, fixed = "captured", inset = 30 }
  top       = "full"
  stands_on = "legs"
  legs      = { inset = 60, across = 50, apart = 500, fitting = fitting.any }
  door      = { board = sheet.ply, top = 4, bottom = 1 }
}

run "back" {
  along        = wall.long
  start        = 20
  carcass      = carcass.closed
  joint_screws = screw.all
  wall_screws  = screw.all
  cabinet "a" {
    width         = 700
    dividers      = [300]
    holds         = "bottles"
    fixed_shelves = [500]
    shelves       = 1
  }

  cabinet "b" {
    stands  = false
    width   = 500
    drawers = [150, rest]
    doors   = 1
    hinged  = "right"
  }

  cabinet "c" {
    width       = rest
    carcass     = carcass.open
    false_front = 120
    doors       = 2
  }

  bay "cool" {
    stands    = false
    appliance = { width = 500, height = 800, depth = 500 }
    gap       = 5
    top_gap   = 2
    back_gap  = 20
    blocks    = stick.cls
    door      = "left"
    plug      = outlet.a
    air       = "front"
  }

  filler "f" {
    width  = 40
    board  = sheet.ply
    scribe = 10
  }
}

run "front" {
  out_from     = wall.short
  at           = 1700
  faces        = "left"
  carcass      = carcass.closed
  joint_screws = screw.all
  cabinet "sink" { width = 800 }
  cabinet "bins" { width = 700 }

  anchor "x" {
    under        = cabinet.bins
    block        = stick.cls
    fixed        = "screws"
    cure         = 12
    play         = 4
    screws       = screw.all
    floor_screws = screw.all
  }

  end_panel "e" {
    end      = "right"
    board    = sheet.ply
    to_front = 18
    toe_kick = false
    scribe   = 5
  }
}

knee_wall "bar" {
  behind        = run.front
  lumber        = stick.cls
  spacing       = 400
  gap           = 0
  screws        = screw.all
  floor_screws  = screw.all
  run_screws    = screw.all
  ground_fault  = true
  router        = router.bench
  top_plates    = 2
  bottom_plates = 2
  studs_from    = "right"
  bored         = { diameter = 30, from_work = 40 }
  notched       = 15
  supports {
    count           = 2
    at              = [250, 1150]
    plate           = flat_bar.arm
    reach           = 250
    tail            = 70
    corner          = 8
    screws          = screw.all
    screws_each     = 2
    top_screws      = screw.all
    top_screws_each = 3
    hole            = 1
    movement        = 4
    bolted          = false
  }

  outlet "o" {
    face      = "work"
    from_left = 500
    lying     = true
    clearance = 1
    height    = 957
    box       = { width = 76, height = 60, depth = 40, volume = 12 }
    wires     = { awg14 = 2 }

    ground_fault = false
    cover        = { width = 86, height = 70 }
  }

  outlet "p" {
    face    = "work"
    mirrors = outlet.o
    lying   = true
    height  = 957
    box     = { width = 76, height = 60, depth = 40 }
    cover   = { width = 86, height = 70 }
  }

  outlet "q" {
    face       = "room"
    from_right = 600
    height     = 400
  }

  skin "work" {
    face          = "work"
    board         = sheet.thin
    above_counter = 4
    below_top     = 2
    grain         = "up"
  }

  skin "room" {
    face        = "room"
    board       = sheet.thin
    above_floor = 10
    below_top   = 2
    clearance   = 2
    scribe      = 8
    battens     = { board = sheet.thin, width = 40, between = 1, mirrored = false, ends = false }
    cap         = { board = sheet.thin, width = 60 }
  }

  skin "end" {
    face  = "right"
    board = sheet.thin
  }

  corner "end" {
    end   = "right"
    board = sheet.thin
    width = 30
  }
}

counter "work" {
  over     = run.front
  slab     = slab.oak
  overhang = { front = 20, right = 30 }
  seams    = [cabinet.sink.right]
  sink "bowl" {
    in         = cabinet.sink
    cut        = { width = 350, depth = 300, radius = 40 }
    from_front = 120
    rail       = 60
  }

  tap "mixer" {
    behind    = sink.bowl
    diameter  = 32
    from_rear = 60
  }
}

bar_top "oak" {
  over     = knee_wall.bar
  slab     = slab.oak
  height   = given.bar
  overhang = { room = 300, work = 20, left = 0, right = 20 }
  seats    = 2
  held     = false
  seams    = [700]
}

cable "c" {
  from    = outlet.o
  to      = outlet.p
  through = [knee_wall.bar]
  height  = 300
  diameter = 22
  slack   = 200
}

cord "fridge" {
  of     = bay.cool
  to     = outlet.a
  length = 2000
  slack  = 100
  plug   = { width = 45, height = 40 }
}

drain "d" {
  from     = sink.bowl
  to       = stub.waste
  diameter = 40
  slope    = 0.02
  clearance = 4
  from_back = 90
}

limits {
  shim                = { step = 1, most = 15 }
  tops_flat           = 2
  floor_beyond        = 500
  floor_flat          = { near = 5, near_over = 800, far = 10, far_over = 5000 }
  wall_plumb          = { most = 9, over = 800 }
  chip_load           = { least = 0.05, most = 0.3 }
  rpm_least           = 10000
  rpm_most            = 20000
  bite_deep           = 1.5
  bite_wide           = 0.8
  plunge_share        = 0.6
  ramp_most           = 10
  low_most            = "1/4in"
  fit_most            = "1/4in"
  wiring              = "nec"
  plumbing            = "upc"
  aisle               = 900
  past_open           = 300
  appliance_out       = 50
  door_beside         = 25
  opening_edge        = 12
  opening_joint       = 6
  cover_lap           = 2
  box_gap             = 3
  stud_thickness      = 38
  box_stud            = 6
  plug_room           = 40
  hand_room           = 100
  slide_gap           = 1.5
  flush               = 0.5
  seam_support        = 100
  piece_least         = 75
  wall_play           = 6
  hinge_room          = { half = 25, back = 75 }
  vent_free           = 1
  counter_height      = { from = 850, to = 970 }
  bar_height          = { from = 1000, to = 1150 }
  toe_room            = { deep = 50, high = 75 }
  seat_width          = 600
  knee_depth          = { table = 450, counter = 380, bar = 300 }
  behind_seats        = 800
  stand_off           = 3
  stud_depth          = 32
  bite                = { structure = 6, box = 3, plug = 40 }
  under_head          = { flat = 4, trim = 9 }
  bar_load            = { edge = 890, area = 2394, share = 0.5, duration = 1.6 }
  steel_stress        = 0.6
  bar_sag             = { live = 360, total = 240 }
  floor_wood          = 18
  bar_span            = { thin = 600, thick = 900, wood = 900 }
  bare_overhang       = { thin = 150, thick = 250, wood = 250 }
  seam_off_plate      = 150
  recess_share        = 0.5
  moisture            = 4
  shelf_load          = 718
  bottle_load         = 2873
  shelf_sag           = { span_over = 192, most = 6, in_time = 1.5 }
  stud_spacing        = 610
  stud_bore           = 0.6
  stud_notch          = 0.4
  stud_edge           = 16
  plate_cut           = 0.5
  support_to_stud     = 200
  lift                = 50
  studs_each          = 2
  ground_fault_within = 1800
  ground_fault_area   = true
  pipe_room           = 30
  air_gap             = { back = 25, top = 25, sides = 3 }
  drain_slope         = 0.02
  drain_support       = 600
  trap_arm            = 900
  tailpiece           = 600
  trap_size           = 38
  way_in              = 600
  nail_plate          = 32
  tap_reach           = 300
}

carry {
  car     = [2000, 1300]
  doorway = 2000
  stair   = [2300, 1250]
}
