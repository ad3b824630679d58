# A first bar, to be changed into your own. Lines after # are comments.
# Bare numbers are millimetres, because the build says so.
# A length may also be written as one reads a tape: "3.12m", "45.5cm", "10ft 3in".
build "my bar" {
  unit     = "mm"
  revision = "A" # shown on every drawing
}

# Numbers to play with. They can be changed here, or for one time on the
# command line: --set counter_top=940
given {
  counter_top = 915 # of the finished counter, above the floor
}

# The room, as it was measured.
room {
  wall "back" {
    length  = 3120
    backing = "studs"
    studs   = [300, 700, 1100, 1500, 1900, 2300, 2700] # their centres, from the left end
    outlet "coffee" { at = [360, 450] }                # its centre: along the wall, above the floor
  }
}

# How the boxes are made.
carcass "base" {
  height   = given.counter_top - counter.top.thickness
  depth    = 590        # over the back, without a door
  board    = sheet.side # from stock.hcl
  back     = { board = sheet.back }
  toe_kick = { height = 100, setback = 75 } # the recess for the feet
  screws   = screw.box                      # that hold a box together
}

# Boxes in a row, left to right as one stands facing them.
run "back" {
  along        = wall.back
  carcass      = carcass.base
  joint_screws = screw.joint # from box to box
  wall_screws  = screw.wall  # from the boxes into the studs

  # The outlet is behind this box: its back gets an opening in the right place.
  cabinet "coffee" { width = 750 }

  # An open place for a fridge. The gaps are what its maker asks for.
  bay "fridge" {
    appliance = { width = 595, height = 834, depth = 560 }
    gap       = 5           # on each side
    top_gap   = 6           # above
    blocks    = stick.block # lumber under it, to bring its top to the line
  }

  # These two share what is left of the wall.
  cabinet "glasses" { width = rest }
  cabinet "bottles" { width = rest }
  filler "corner" { width = 40 } # a strip to be cut to the wall
}

# The slab on the boxes.
counter "top" {
  over     = run.back
  slab     = slab.top
  overhang = { front = 25 }
}
