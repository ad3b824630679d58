# A first bar, to be changed into your own. Lines after # are comments.
# Bare numbers are inches, because the build says so.
# A length may also be written as one reads a tape: "10ft 3in", "19 1/2in", "490mm".
build "my bar" {
  unit     = "in"
  revision = "A" # shown on every drawing
}

# Numbers to play with. They can be changed here, or for one time on the
# command line: --set counter_top=37
given {
  counter_top = 36 # of the finished counter, above the floor
}

# The room, as it was measured.
room {
  wall "back" {
    length  = "10ft 3in"
    backing = "studs"
    studs   = [12, 28, 44, 60, 76, 92, 108] # their centres, from the left end

    extenders = true                  # rings bring its boxes out to the faces of the cabinets' backs
    outlet "coffee" { at = [14, 18] } # its centre: along the wall, above the floor
  }
}

# How the boxes are made.
carcass "base" {
  height   = given.counter_top - counter.top.thickness
  depth    = 23.5       # over the back, without a door
  board    = sheet.side # from stock.hcl
  back     = { board = sheet.back }
  toe_kick = { height = 4, setback = 3 } # the recess for the feet
  screws   = screw.box                   # that hold a box together
}

# Boxes in a row, left to right as one stands facing them.
run "back" {
  along        = wall.back
  carcass      = carcass.base
  joint_screws = screw.joint # from box to box
  wall_screws  = screw.wall  # from the boxes into the studs

  # The outlet is behind this box: its back gets an opening in the right place.
  cabinet "coffee" { width = 30 }

  # An open place for a fridge. The gaps are what its maker asks for.
  bay "fridge" {
    appliance = { width = 23.5, height = 32.75, depth = 22 }
    gap       = "3/8in"     # on each side
    top_gap   = "1/4in"     # above
    blocks    = stick.block # lumber under it, to bring its top to the line
  }

  # These two share what is left of the wall.
  cabinet "glasses" { width = rest }
  cabinet "bottles" { width = rest }
  filler "corner" { width = 1.5 } # a strip to be cut to the wall
}

# The slab on the boxes.
counter "top" {
  over     = run.back
  slab     = slab.top
  overhang = { front = 1 }
}
