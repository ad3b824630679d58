# What the yard has. Thicknesses are measured: they are seldom what the label says.
sheet "birch" {
  size      = ["8ft", "4ft"]
  thickness = "23/32in"
}

sheet "thin" {
  size      = ["8ft", "4ft"]
  thickness = "7/32in"
}
