# What the timber merchant and the steel stockist have. Thicknesses are measured.
sheet "birch" {
  label     = "birch plywood 18 mm, 2440 x 1220"
  size      = [2440, 1220]
  thickness = 17.8
  density   = 685
  price     = 78
}

sheet "thin" {
  label     = "birch plywood 6.5 mm, 2440 x 1220"
  size      = [2440, 1220]
  thickness = 6.4
  density   = 685
  price     = 36
}

stick "cls" {
  label     = "studwork 38 x 89"
  thickness = 38
  width     = 89
  lengths   = [2400, 3000, 3600, 4800]
  prices    = [5.2, 6.6, 7.9, 10.8]
  density   = 470
}

stick "batten" {
  label     = "batten 25 x 50, planed"
  thickness = 19
  width     = 44
  lengths   = [2400, 3000]
  prices    = [2.9, 3.6]
  density   = 470
}

flat_bar "arm" {
  label     = "flat bar 100 x 15, mild steel"
  thickness = 15
  width     = 100
  lengths   = [2000, 3000, 6000]
  prices    = [60, 88, 165]
}

slab "beech" {
  label     = "beech worktop 38"
  thickness = 38
  density   = 710
  price     = 118
}

slab "ash" {
  label     = "ash, glued up, 40"
  thickness = 40
  density   = 690
}

screw "box" {
  label    = "4.0 x 45 wood screw"
  diameter = 4
  length   = 45
  per_box  = 200
  price    = 7.4
}

screw "joint" {
  label    = "4.0 x 30 trim head screw"
  head     = "trim"
  diameter = 4
  length   = 30
  per_box  = 200
  price    = 5.6
}

screw "wall" {
  label    = "5.0 x 80 wood screw"
  diameter = 5
  length   = 80
  per_box  = 100
  price    = 9.8
}

screw "framing" {
  label    = "5.0 x 90 wood screw"
  diameter = 5
  length   = 90
  per_box  = 100
  price    = 10.9
}

screw "tail" {
  label    = "5.0 x 60 countersunk screw"
  diameter = 5
  length   = 60
  per_box  = 100
  price    = 7.9
}

screw "plate" {
  label    = "5.0 x 35 countersunk screw"
  diameter = 5
  length   = 35
  per_box  = 100
  price    = 6.2
}

fitting "hinge" {
  label = "concealed hinge, 35 mm cup, for inset doors"
  price = 3.9
}

fitting "pin" {
  label    = "shelf pin, 5 mm"
  per_pack = 20
  price    = 3.2
}

fitting "knob" {
  label = "knob, 30 mm"
  price = 2.8
}

fitting "leg" {
  label    = "cabinet leg, 150 mm, adjustable"
  per_pack = 4
  price    = 6.5
}

banding "beech" {
  label     = "beech edge banding, 22 mm"
  thickness = 0.5
  width     = 22
  roll      = "10m"
  price     = 6
}
