# The machines at hand.
saw {
  kerf = "1/8in" # what a cut takes away
  trim = "1/4in" # what is cut off each factory edge of a sheet
}

# Used once a bar has steel supports, let in flush: see the step by step
# examples. Feeds and speeds are for your machine's manual to say.
router "bench" {
  bit      = "1/4in" # its diameter, as measured
  feed     = 150     # in a minute
  plunge   = 50      # the same, on the way down
  stepdown = "1/8in" # the deepest bite
  unit     = "in"    # of the programs
}

# How the shop's cutting table wants its files. Without this block they are in
# millimetres, one for each piece. Take the # away from what holds for yours.
# table "shop" {
#   unit     = "in"       # of the files
#   files    = "distinct" # one for all pieces that are the same, with how many
#   mirrored = true       # the drawn face lies down
#   bit      = "1/4in"    # diameter of its bit
#   relief   = "diagonal" # inside corners are cleared for that bit
# }
