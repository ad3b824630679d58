package compile_test

import "barwright/lang/length"

// specimen is a part, and what the letters of its formulas stand for.
type specimen struct {
	label   string
	origin  length.Length // of u
	letters string        // as in a given block: "W = 600, t = 18"
}

// specimens has one or more of each part whose sizes SPEC.md gives as
// formulas, by the code in the tables; boxes has those of boxes. The build is
// specimenBuild.
var specimens = map[string][]specimen{
	"B*n*L": {{"FRIDGE-B2L", 0, "n = 2, A = 1551, gap = 5, w = 44, back_gap = 25, d = 575, D = 580, S = 60, t = 19"}},
	"B*n*R": {{"FRIDGE-B2R", 0, "n = 2, A = 1551, gap = 5, w = 44, a = 595, back_gap = 25, d = 575, D = 580, S = 60, t = 19"}},
	// The corner is 90.4 degrees; tan 0.4 degrees is 0.006 981 430, times 580 it is 4.049 229 6…
	"F": {{"CORNER-F", 0, "A = 2156, B = 2176, scribe = 13, w = 4.04923, D = 580, t = 17.8, K = 110, H = 862"}},
	"E": {
		{"CHEEK-E", 0, "L = 800, D = 580, to_front = 19, scribe = 0, H = 862, t = 6.4"},
		{"GABLE-E", 0, "L = 300, D = 580, to_front = 22, scribe = 9, H = 862, t = 17.8"},
	},
	"A":       {{"END-A", 0, "A = 0, B = 800, t = 17.8, p = 4, D = 580, S = 60, w = 44, h = 19"}},
	"P*n*":    {{"BAR-P1", 0, "n = 1, A = 30, B = 780, gap = 12, w = 89, t = 38"}, {"BAR-P3", 0, "n = 3, A = 30, B = 780, gap = 12, w = 89, t = 38"}},
	"S*n*":    {{"BAR-S2", 0, "c = 330, gap = 12, w = 89, t = 38, T = 1060, p = 3, q = 2"}},
	"P*p+m*":  {{"BAR-P4", 0, "m = 1, q = 2, A = 30, B = 780, gap = 12, w = 89, t = 38, T = 1060"}, {"BAR-P5", 0, "m = 2, q = 2, A = 30, B = 780, gap = 12, w = 89, t = 38, T = 1060"}},
	"X*n*":    {{"BAR-X1", 0, "c = 155, gap = 12, w = 89, e = 60, h = 10, low = 0.2, q = 70, reach = 230, T = 1060"}},
	"counter": {{"counter", 0, "left = 0, right = 20, front = 25, L = 800, D = 580, H = 862, t = 38"}},
	"bar top": {{"bar_top", 0, "left = 5, right = 40, room = 280, work = 15, A = 30, B = 780, gap = 12, w = 89, T = 1060, t = 38"}},
	"C*n*":    {{"WORK-C2", 0, "x = 700, y = 820, front = 25, D = 580, H = 862, t = 38"}},
	"T*n*": {
		{"OAK-T1", 0, "x = -5, y = 300, room = 280, work = 15, A = 30, gap = 12, w = 89, T = 1060, t = 38"},
		{"OAK-T2", 0, "x = 300, y = 790, room = 280, work = 15, A = 30, gap = 12, w = 89, T = 1060, t = 38"},
	},
	"sink":                 {{"sink middle", 0, "A = 17.8, B = 782.2, f = 6.4, D = 580, w = 300, d = 200"}},
	"sink with from_front": {{"sink front", 0, "A = 17.8, B = 782.2, D = 580, o = 25, w = 301, d = 60, from_front = 55"}},
	"tap": {
		{"tap behind", 0, "c = 400, q = 35, from_rear = 60"},
		{"tap beside", 0, "c = 609, q = 32, from_rear = 90"},
	},
}

const specimenBuild = `
build "specimens" { unit = "mm" }
sheet "ply" {
  size      = [2440, 1220]
  thickness = 17.8
}
sheet "thin" {
  size      = [2440, 1220]
  thickness = 6.4
}
stick "batten" {
  thickness = 19
  width     = 44
  lengths   = [2400]
}
stick "cls" {
  thickness = 38
  width     = 89
  lengths   = [2400, 3600]
}
flat_bar "arm" {
  thickness = 10
  width     = 60
  lengths   = [2000]
}
slab "oak" { thickness = 38 }
router "bench" {
  bit  = 8
  feed = 3000
  low  = 0.2
}
room {
  wall "long" {
    length = 2176
    corner = 90.4
  }
  wall "short" { length = 6000 }
  wall "more" { length = 17000 }
}
carcass "applied" {
  height    = 862
  depth     = 580
  board     = sheet.ply
  back      = { board = sheet.thin }
  toe_kick  = { height = 110, setback = 60 }
  stretcher = 90
}
run "back" {
  along   = wall.long
  carcass = carcass.applied
  cabinet "left" { width = 801 }
  cabinet "right" { width = 750 }
  bay "fridge" {
    appliance = { width = 595, height = 820, depth = 575 }
    gap       = 5
    top_gap   = 2
    back_gap  = 25
    blocks    = stick.batten
  }
  filler "corner" {
    width  = 20
    scribe = 13
  }
}
run "front" {
  out_from = wall.short
  at       = 1800
  carcass  = carcass.applied
  cabinet "sink" { width = 800 }
  anchor "end" {
    under = cabinet.sink
    block = stick.batten
    play  = 4
  }
  end_panel "cheek" {
    end      = "right"
    board    = sheet.thin
    to_front = 19
  }
}
run "side" {
  along   = wall.short
  start   = 2600
  carcass = carcass.applied
  cabinet "gabled" { width = 300 }
  end_panel "gable" {
    end      = "right"
    board    = sheet.ply
    to_front = 22
    scribe   = 9
  }
}
knee_wall "bar" {
  behind      = run.front
  top         = 1060
  lumber      = stick.cls
  spacing     = 300
  gap         = 12
  top_plates    = 2
  bottom_plates = 3
  left_inset  = 30
  right_inset = 20
  router      = router.bench
  supports {
    count = 3
    plate = flat_bar.arm
    reach = 230
    tail  = 70
  }
  skin "hroom" {
    face  = "room"
    board = sheet.thin
  }
  skin "hend" {
    face        = "right"
    board       = sheet.thin
    above_floor = 7
    below_top   = 2
  }
  corner "hpost" {
    end   = "right"
    board = sheet.ply
    width = 60
  }
}
run "far" {
  out_from = wall.short
  at       = 3600
  faces    = "right"
  carcass  = carcass.applied
  cabinet "near" { width = 1000 }
  cabinet "mid" { width = 1000 }
  cabinet "next" { width = 1000 }
}
knee_wall "low" {
  behind  = run.far
  top     = 1000
  lumber  = stick.cls
  spacing = 300
  skin "lwork" {
    face          = "work"
    board         = sheet.thin
    above_counter = 4
    below_top     = 2
    battens       = { board = sheet.ply, width = 45, between = 0, mirrored = false }
    cap           = { board = sheet.ply, width = 30 }
  }
  skin "lroom" {
    face        = "room"
    board       = sheet.thin
    above_floor = 5
    below_top   = 2
    battens     = { board = sheet.ply, width = 45, between = 1 }
    cap         = { board = sheet.ply, width = 50 }
  }
  skin "lend" {
    face        = "left"
    board       = sheet.thin
    above_floor = 7
    below_top   = 2
  }
  corner "lpost" {
    end   = "left"
    board = sheet.ply
    width = 60
  }
}
counter "work" {
  over     = run.front
  slab     = slab.oak
  overhang = { front = 25, right = 20 }
  seams    = [700]
  sink "middle" {
    in  = cabinet.sink
    cut = { width = 300, depth = 200, radius = 30 }
  }
  sink "front" {
    in         = cabinet.sink
    cut        = { width = 301, depth = 60 }
    from_front = 55
  }
  tap "behind" { behind = sink.middle }
  tap "beside" {
    diameter  = 32
    from_left = 609
    from_rear = 90
  }
}
bar_top "oak" {
  over     = knee_wall.bar
  slab     = slab.oak
  overhang = { room = 280, work = 15, left = 5, right = 40 }
  seams    = [300]
}
`
