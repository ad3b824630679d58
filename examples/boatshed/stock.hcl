# What the yard and the hardware store have. Thicknesses are measured.
sheet "birch" {
  label     = "birch plywood 23/32 in, 4 x 8 ft"
  size      = [96, 48]
  thickness = "23/32in"
  density   = 685
  price     = 92
}

sheet "thin" {
  label     = "birch plywood 1/4 in, 4 x 8 ft"
  size      = [96, 48]
  thickness = "7/32in"
  density   = 670
  price     = 38
}

sheet "half" {
  label     = "birch plywood 1/2 in, 5 x 5 ft"
  size      = [60, 60]
  thickness = "15/32in"
  density   = 680
  price     = 61
}

stick "two_by_four" {
  label     = "2x4, southern pine, dry"
  thickness = 1.5
  width     = 3.5
  lengths   = ["8ft", "10ft", "12ft"]
  prices    = [4.6, 6.1, 7.9]
  density   = 580
  gravity   = 0.55
}

flat_bar "arm" {
  label     = "flat bar 1/2 x 5 in, mild steel"
  thickness = 0.5
  width     = 5
  lengths   = ["6ft", "12ft"]
  prices    = [82, 152]
}

slab "maple" {
  label     = "maple block 1 1/2 in"
  thickness = 1.5
  density   = 560 # soft maple
}

slab "oak" {
  label     = "white oak, glued up, 1 1/2 in"
  thickness = 1.5
  solid     = true
  density   = 720
}

screw "box" {
  label    = "#8 x 1 1/2 in cabinet screw"
  diameter = 0.164
  length   = 1.5
  per_box  = 100
  price    = 9.5
}

screw "joint" {
  label    = "#8 x 1 1/4 in cabinet screw"
  diameter = 0.164
  length   = 1.25
  per_box  = 100
  price    = 8.9
}

screw "wall" {
  label    = "#8 x 2 1/2 in washer head screw"
  head     = "wide"
  diameter = 0.164
  length   = 2.5
  per_box  = 50
  price    = 11
}

screw "seen" {
  label    = "#8 x 2 1/2 in trim head screw"
  head     = "trim"
  diameter = 0.164
  length   = 2.5
  per_box  = 50
  price    = 12
}

screw "framing" {
  label    = "#10 x 3 in framing screw"
  diameter = 0.190
  length   = 3
  per_box  = 100
  price    = 14
}

screw "floor" {
  label    = "#10 x 3 1/2 in framing screw"
  diameter = 0.190
  length   = 3.5
  per_box  = 50
  price    = 12
}

screw "plate" {
  label    = "#10 x 1 1/4 in flat head screw"
  diameter = 0.190
  length   = 1.25
  per_box  = 50
  price    = 7.5
}

fitting "hinge" {
  label = "concealed hinge with plate, 35 mm cup"
  price = 4.2
}

fitting "pin" {
  label    = "shelf pin, 5 mm"
  per_pack = 20
  price    = 3.5
}

fitting "slides" {
  label = "drawer slides, side mounted, a pair"
  price = 18
}

fitting "handle" {
  label = "handle, 96 mm"
  price = 5
}

banding "birch" {
  label     = "birch edge banding, 7/8 in"
  thickness = "0.02in"
  roll      = "25ft"
  price     = 9
}
