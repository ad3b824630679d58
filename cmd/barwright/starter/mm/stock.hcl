# What the store has. Measure thicknesses: they are seldom what the label says.
# What a label says is printed on the bill.
sheet "side" { # for sides, bottoms and everything else but backs
  label     = "plywood 18 mm, 2440 x 1220"
  size      = [2440, 1220]
  thickness = 17.8
}

sheet "back" {
  label     = "plywood 6.5 mm, 2440 x 1220"
  size      = [2440, 1220]
  thickness = 6.4
}

stick "block" { # lumber, sold in lengths
  label     = "batten 45 x 70, planed"
  thickness = 45
  width     = 70
  lengths   = [2400, 3000] # on sale
}

slab "top" {
  label     = "worktop 30 mm"
  thickness = 30
}

screw "box" {
  label    = "4.0 x 45 wood screw"
  diameter = 4
  length   = 45
  per_box  = 200
}

screw "joint" {
  label    = "4.0 x 30 trim head screw"
  head     = "trim" # small: it is seen in boxes without doors
  diameter = 4
  length   = 30
  per_box  = 200
}

screw "wall" {
  label    = "4.5 x 65 wood screw"
  diameter = 4.5
  length   = 65
  per_box  = 100
}
