# What the yard has. Thicknesses are measured: they are seldom what the label says.
sheet "birch" {
  size      = ["8ft", "4ft"]
  thickness = "23/32in"
}

sheet "thin" {
  size      = ["8ft", "4ft"]
  thickness = "7/32in"
}

stick "two_by_four" {
  thickness = 1.5
  width     = 3.5
  lengths   = ["8ft", "10ft"]
  gravity   = 0.55 # southern pine, which holds screws better than fir
}

slab "ash" { thickness = 1.5 }

slab "oak" { thickness = 1.25 }

flat_bar "arm" {
  thickness = 0.5
  width     = 5
  lengths   = ["6ft"]
}

screw "long" {
  diameter = 0.190 # #10
  length   = 3
  per_box  = 50
}

screw "joint" {
  diameter = 0.164 # #8
  length   = 1.25
  head     = "trim" # it shows in an open box
  per_box  = 100
}

screw "plate" {
  diameter = 0.190 # #10
  length   = 1.25
  per_box  = 50
}

router "bench" {
  bit  = "1/4in"
  feed = 150 # in a minute
}
