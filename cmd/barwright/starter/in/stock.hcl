# What the store has. Measure thicknesses: they are seldom what the label says.
# What a label says is printed on the bill.
sheet "side" { # for sides, bottoms and everything else but backs
  label     = "plywood 23/32 in, 4 x 8 ft"
  size      = ["8ft", "4ft"]
  thickness = "23/32in"
}

sheet "back" {
  label     = "plywood 1/4 in, 4 x 8 ft"
  size      = ["8ft", "4ft"]
  thickness = "7/32in"
}

stick "block" { # lumber, sold in lengths
  label     = "2x4, dry"
  thickness = 1.5
  width     = 3.5
  lengths   = ["8ft", "10ft"] # on sale
}

slab "top" {
  label     = "butcher block 1 1/2 in"
  thickness = 1.5
}

screw "box" {
  label    = "#8 x 1 1/2 in cabinet screw"
  diameter = 0.164
  length   = 1.5
  per_box  = 100
}

screw "joint" {
  label    = "#8 x 1 1/4 in trim head screw"
  head     = "trim" # small: it is seen in boxes without doors
  diameter = 0.164
  length   = 1.25
  per_box  = 100
}

screw "wall" {
  label    = "#8 x 2 1/2 in cabinet screw"
  diameter = 0.164
  length   = 2.5
  per_box  = 50
}
